using MathNet.Numerics.Statistics;

namespace CareRecords.Statistics;

/// <summary>
/// Sample quantiles, and the spread measures made of them.
/// Source of the types: Hyndman RJ, Fan Y (1996), Am Stat 50:361-365; type 7 (interpolation of ranks (n−1)p+1) is the
/// usual default, type 8 is nearly median-unbiased. Computed by MathNet.Numerics. Smallest data: one value.
/// </summary>
public static class Quantiles
{
    /// <summary>The value below which a share <paramref name="probability"/> of the data lies, in the unit of the data.</summary>
    /// <param name="values">Finite values in any order.</param>
    /// <param name="probability">0 (the smallest value) to 1 (the largest).</param>
    /// <param name="type">Hyndman and Fan's type, 1 to 9.</param>
    public static Outcome<double> At(IReadOnlyCollection<double> values, double probability, int type = 7)
    {
        if (!(probability >= 0 && probability <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A quantile's probability lies between 0 and 1.");
        }

        if (type is < 1 or > 9)
        {
            throw new ArgumentOutOfRangeException(nameof(type), type, "Hyndman and Fan's types are 1 to 9.");
        }

        var sorted = Require.SortedFinite(values);
        return sorted.Length == 0
            ? new TooLittleData("quantile", 0, 1, "no values")
            : SortedArrayStatistics.QuantileCustom(sorted, probability, QuantileDefinition.R1 + (type - 1));
    }

    /// <summary>The median: the middle value, or the mean of the two middle ones.</summary>
    /// <param name="values">Finite values in any order.</param>
    public static Outcome<double> Median(IReadOnlyCollection<double> values)
    {
        var sorted = Require.SortedFinite(values);
        return sorted.Length == 0 ? new TooLittleData("median", 0, 1, "no values") : OfSorted(sorted);
    }

    /// <summary>The median absolute deviation from the median, times a constant.</summary>
    /// <param name="values">Finite values in any order.</param>
    /// <param name="constant">1.4826 makes it estimate the standard deviation of normal data; 1 leaves it raw.</param>
    public static Outcome<double> MedianAbsoluteDeviation(IReadOnlyCollection<double> values, double constant = 1.4826)
    {
        var sorted = Require.SortedFinite(values);
        if (sorted.Length == 0)
        {
            return new TooLittleData("median absolute deviation", 0, 1, "no values");
        }

        var centre = OfSorted(sorted);
        var distances = Array.ConvertAll(sorted, x => Math.Abs(x - centre));
        Array.Sort(distances);
        return constant * OfSorted(distances);
    }

    /// <summary>Third quartile minus first.</summary>
    /// <param name="values">Finite values in any order.</param>
    /// <param name="type">Hyndman and Fan's type, 1 to 9.</param>
    public static Outcome<double> InterquartileRange(IReadOnlyCollection<double> values, int type = 7)
    {
        var low = At(values, 0.25, type);
        return low.Then(l => At(values, 0.75, type).Value - l);
    }

    internal static double OfSorted(ReadOnlySpan<double> sorted)
    {
        var half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : 0.5 * (sorted[half - 1] + sorted[half]);
    }
}
