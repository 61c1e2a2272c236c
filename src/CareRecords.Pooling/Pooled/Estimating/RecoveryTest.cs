using CareRecords.Statistics;

namespace CareRecords.Pooling;

/// <summary>
/// Compares recovery between groups of children: log-rank scores for interval-censored times under one common curve (Finkelstein DM 1986,
/// Biometrics 42:845; Fay MP, Shaw PA 2010, J Stat Softw 36(2)), added up by child, and whole children dealt out among the groups again.
/// </summary>
internal static class RecoveryTest
{
    public const string Method = "log-rank scores for interval-censored times, added up by child; children permuted among groups";

    /// <summary>The p value.</summary>
    /// <param name="children">Children with an episode, of all groups.</param>
    /// <param name="groups">The group of each, from 0.</param>
    /// <param name="options">How many permutations, and the seed.</param>
    public static double PValue(IReadOnlyList<ChildSummary> children, int[] groups, PoolOptions options)
    {
        var curve = Turnbull.Fit([.. children.SelectMany(c => c.Recoveries)]).Value;
        var scores = children.Select(c => c.Recoveries.Sum(r => Score(curve, r))).ToArray();
        var count = groups.Max() + 1;
        return ChildPermutation.OfLabels(groups, dealt => Spread(dealt, scores, count), options.Permutations, options.Seed);
    }

    /// <summary>Negative for early recovery, positive for late; the scores of all episodes add up to 0 up to what the curve leaves open.</summary>
    internal static double Score(TurnbullCurve curve, CensoredInterval recovery)
    {
        var left = recovery.Left <= 0 ? 1 : curve.SurvivalAt(recovery.Left).High;
        var right = recovery.IsRightCensored ? 0 : curve.SurvivalAt(recovery.Right).Low;
        return left - right > 1e-12 ? (XLogX(right) - XLogX(left)) / (left - right) : -Math.Log(Math.Max(left, 1e-12)) - 1;
    }

    private static double Spread(int[] groups, double[] scores, int count)
    {
        var (sums, sizes) = (new double[count], new int[count]);
        for (var i = 0; i < groups.Length; i++)
        {
            sums[groups[i]] += scores[i];
            sizes[groups[i]]++;
        }

        var mean = scores.Average();
        return Enumerable.Range(0, count).Sum(g => sizes[g] == 0 ? 0 : Math.Pow(sums[g] - (sizes[g] * mean), 2) / sizes[g]);
    }

    private static double XLogX(double x) => x <= 0 ? 0 : x * Math.Log(x);
}
