namespace CareRecords.Statistics;

/// <summary>A robust centre with the spread that was used for it.</summary>
/// <param name="Location">The centre, in the unit of the data.</param>
/// <param name="Scale">The median absolute deviation times 1.4826.</param>
/// <param name="Count">How many values.</param>
public sealed record LocationScale(double Location, double Scale, int Count);

/// <summary>
/// Huber's M-estimate of location with the scale held at the MAD: repeat μ ← mean of the data pulled in to μ ± k·s, from
/// the median, until a step is below 1e-6·s.
/// Source: Huber PJ (1981), Robust Statistics, Wiley; Venables WN, Ripley BD (2002), Modern Applied Statistics with S,
/// section 5.5. Assumes a roughly symmetric core with outliers. Smallest data: one value; when more than half of the
/// values are equal the scale is zero, the median is given and the scale of 0 says so.
/// </summary>
public static class HuberLocation
{
    /// <summary>The robust centre of the values.</summary>
    /// <param name="values">Finite values in any order.</param>
    /// <param name="k">How many scales out a value is pulled in from.</param>
    public static Outcome<LocationScale> Of(IReadOnlyCollection<double> values, double k = 1.5)
    {
        if (!(k > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(k), k, "The tuning constant is positive.");
        }

        var sorted = Require.SortedFinite(values);
        if (sorted.Length == 0)
        {
            return new TooLittleData("Huber location", 0, 1, "no values");
        }

        var scale = Quantiles.MedianAbsoluteDeviation(sorted).Value;
        var centre = Quantiles.OfSorted(sorted);
        while (scale > 0)
        {
            var (low, high) = (centre - (k * scale), centre + (k * scale));
            var next = sorted.Average(x => Math.Clamp(x, low, high));
            if (Math.Abs(next - centre) < 1e-6 * scale)
            {
                break;
            }

            centre = next;
        }

        return new LocationScale(centre, scale, sorted.Length);
    }
}
