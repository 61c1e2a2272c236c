namespace CareRecords.Statistics;

/// <summary>
/// Weighted quantile by the inverse of the weighted distribution function: the smallest value whose accumulated weight
/// reaches the share asked for; when the share falls exactly on a step, the mean of the two values it lies between
/// (Hyndman and Fan's type 2, so equal weights give the ordinary median). Source: Edgeworth FY (1888), Phil Mag 25:184-191,
/// for the weighted median. Smallest data: one value of positive weight.
/// </summary>
public static class WeightedQuantile
{
    /// <summary>The weighted median.</summary>
    /// <param name="values">Finite values in any order.</param>
    /// <param name="weights">One weight for each value, none negative.</param>
    public static Outcome<double> Median(IReadOnlyCollection<double> values, IReadOnlyCollection<double> weights) => At(values, weights, 0.5);

    /// <summary>The value below which a share <paramref name="probability"/> of the weight lies.</summary>
    /// <param name="values">Finite values in any order.</param>
    /// <param name="weights">One weight for each value, none negative.</param>
    /// <param name="probability">0 to 1.</param>
    public static Outcome<double> At(IReadOnlyCollection<double> values, IReadOnlyCollection<double> weights, double probability)
    {
        if (!(probability >= 0 && probability <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A quantile's probability lies between 0 and 1.");
        }

        var (x, w) = Require.Pairs(values, weights);
        if (Array.Exists(w, weight => weight < 0))
        {
            throw new ArgumentException("A weight cannot be negative.", nameof(weights));
        }

        var order = Enumerable.Range(0, x.Length).Where(i => w[i] > 0).OrderBy(i => x[i]).ToArray();
        if (order.Length == 0)
        {
            return new TooLittleData("weighted quantile", 0, 1, "no value of positive weight");
        }

        var target = probability * order.Sum(i => w[i]);
        var reached = 0.0;
        for (var k = 0; k < order.Length - 1; k++)
        {
            reached += w[order[k]];
            if (Math.Abs(reached - target) <= 1e-12 * target)
            {
                return 0.5 * (x[order[k]] + x[order[k + 1]]);
            }

            if (reached > target)
            {
                return x[order[k]];
            }
        }

        return x[order[^1]];
    }
}
