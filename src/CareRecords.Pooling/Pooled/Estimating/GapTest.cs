using CareRecords.Statistics;

namespace CareRecords.Pooling;

/// <summary>
/// Compares a share between groups of children: the weighted spread of the groups' mean logits (Cochran's between-groups Q with random-effects
/// weights), and whole children dealt out among the groups again.
/// </summary>
internal static class GapTest
{
    public const string Method = "spread of the groups' mean logits, children weighted by 1/(smoothed variance + variance between children); children permuted among groups";

    public static double PValue(IReadOnlyList<GapTally> children, int[] groups, double tau2, PoolOptions options)
    {
        var logits = ShareModels.Logits(children);
        var weights = logits.Select(l => 1 / (l.Variance + tau2)).ToArray();
        var count = groups.Max() + 1;
        return ChildPermutation.OfLabels(groups, dealt => Spread(dealt, logits, weights, count), options.Permutations, options.Seed);
    }

    private static double Spread(int[] groups, StudyEffect[] logits, double[] weights, int count)
    {
        var (sums, totals) = (new double[count], new double[count]);
        for (var i = 0; i < groups.Length; i++)
        {
            sums[groups[i]] += weights[i] * logits[i].Value;
            totals[groups[i]] += weights[i];
        }

        var mean = sums.Sum() / totals.Sum();
        return Enumerable.Range(0, count).Sum(g => totals[g] * Math.Pow((sums[g] / totals[g]) - mean, 2));
    }
}
