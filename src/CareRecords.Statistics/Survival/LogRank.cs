using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>A log-rank comparison of groups.</summary>
/// <param name="ChiSquare">The test statistic.</param>
/// <param name="Freedom">Its degrees of freedom: groups at risk less one.</param>
/// <param name="PValue">Its P value.</param>
/// <param name="Observed">Weighted events seen, by group.</param>
/// <param name="Expected">Weighted events expected were the curves equal, by group.</param>
/// <param name="Variance">Covariance matrix of observed minus expected.</param>
/// <param name="Count">How many subjects.</param>
public sealed record LogRankResult(
    double ChiSquare,
    int Freedom,
    double PValue,
    IReadOnlyList<double> Observed,
    IReadOnlyList<double> Expected,
    IReadOnlyList<IReadOnlyList<double>> Variance,
    int Count);

/// <summary>
/// The log-rank test (and its weighting by S(t−)^rho) that groups share one survival curve: at each event time the events
/// of a group are compared with their hypergeometric expectation; the quadratic form of the sums is chi-square.
/// Source: Mantel N (1966), Cancer Chemother Rep 50:163-170; Harrington DP, Fleming TR (1982), Biometrika 69:553-566 (rho = 1
/// is the Peto-Prentice test). Strata are added before the quadratic form is taken.
/// Assumes censoring unrelated to the event. Smallest data: two groups, one event while both are at risk.
/// </summary>
public static class LogRank
{
    /// <summary>Compares groups.</summary>
    /// <param name="groups">The subjects of each group.</param>
    /// <param name="rho">0 for the log-rank test, 1 for Peto-Prentice.</param>
    public static Outcome<LogRankResult> Test(IReadOnlyList<IReadOnlyCollection<FollowUp>> groups, double rho = 0) =>
        Stratified([groups], rho);

    /// <summary>Compares groups within strata.</summary>
    /// <param name="strata">For each stratum, the subjects of each group; every stratum lists the same groups.</param>
    /// <param name="rho">0 for the log-rank test, 1 for Peto-Prentice.</param>
    public static Outcome<LogRankResult> Stratified(IReadOnlyList<IReadOnlyList<IReadOnlyCollection<FollowUp>>> strata, double rho = 0)
    {
        ArgumentNullException.ThrowIfNull(strata);
        var groups = strata.Count == 0 ? 0 : strata[0].Count;
        if (strata.Any(s => s.Count != groups))
        {
            throw new ArgumentException("Every stratum lists the same groups.", nameof(strata));
        }

        var (observed, expected, variance) = (new double[groups], new double[groups], new double[groups, groups]);
        foreach (var stratum in strata)
        {
            Accumulate(stratum, rho, observed, expected, variance);
        }

        var count = strata.Sum(s => s.Sum(g => g.Count));
        int[] informative = [.. Enumerable.Range(0, groups).Where(g => variance[g, g] > 1e-12)];
        if (informative.Length < 2)
        {
            return new TooLittleData("log-rank test", count, 2, "no event while two groups were at risk");
        }

        // The covariance matrix has rank one less than the groups: leave the last one out.
        int[] kept = informative[..^1];
        var difference = Vector<double>.Build.Dense(kept.Length, i => observed[kept[i]] - expected[kept[i]]);
        var matrix = Matrix<double>.Build.Dense(kept.Length, kept.Length, (i, j) => variance[kept[i], kept[j]]);
        var chiSquare = difference * matrix.Solve(difference);
        IReadOnlyList<double>[] rows = [.. Enumerable.Range(0, groups).Select(i => (double[])[.. Enumerable.Range(0, groups).Select(j => variance[i, j])])];
        return new LogRankResult(
            chiSquare, kept.Length, Statistics.ChiSquare.Upper(chiSquare, kept.Length), observed, expected, rows, count);
    }

    private static void Accumulate(
        IReadOnlyList<IReadOnlyCollection<FollowUp>> groups, double rho, double[] observed, double[] expected, double[,] variance)
    {
        foreach (var group in groups)
        {
            RiskTable.Validate(group);
        }

        var pooled = 1.0;
        foreach (var time in groups.SelectMany(g => g).Where(s => s.Happened).Select(s => s.Time).Distinct().Order().ToArray())
        {
            double[] atRisk = [.. groups.Select(g => (double)g.Count(s => s.Time >= time))];
            double[] events = [.. groups.Select(g => (double)g.Count(s => s.Time == time && s.Happened))];
            var (n, d) = (atRisk.Sum(), events.Sum());
            var weight = rho == 0 ? 1 : Math.Pow(pooled, rho);
            for (var i = 0; i < groups.Count; i++)
            {
                observed[i] += weight * events[i];
                expected[i] += weight * d * atRisk[i] / n;
                for (var j = 0; n > 1 && j < groups.Count; j++)
                {
                    var spread = (i == j ? atRisk[i] / n : 0) - (atRisk[i] * atRisk[j] / (n * n));
                    variance[i, j] += weight * weight * d * (n - d) / (n - 1) * spread;
                }
            }

            pooled *= (n - d) / n;
        }
    }
}
