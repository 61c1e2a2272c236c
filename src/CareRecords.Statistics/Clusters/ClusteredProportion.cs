namespace CareRecords.Statistics;

/// <summary>A proportion whose trials hang together within clusters.</summary>
/// <param name="Estimate">The proportion with its interval; the count is of trials.</param>
/// <param name="DesignEffect">
/// The variance over that of as many independent trials, at least 1: the plain interval is too narrow by about its root.
/// </param>
/// <param name="EffectiveTrials">The number of independent trials that would be worth as much.</param>
/// <param name="Clusters">How many clusters had trials.</param>
public sealed record ClusteredProportionResult(Estimate Estimate, double DesignEffect, double EffectiveTrials, int Clusters);

/// <summary>
/// A proportion over clusters of different size (a ratio estimate) with a Wilson interval for the effective number of
/// trials: n·p(1−p)/(n²·V)·(z/t)², V the linearised variance m/(m−1)·Σ(x−p·n)²/n² over m clusters, t on m − 1 degrees of
/// freedom. The effective number is never taken above the number of trials.
/// Source: Korn EL, Graubard BI (1998), Surv Methodol 24:193-201, with Wilson's interval (Dean N, Pagano M 2015, J Surv Stat
/// Methodol 3:484-503). Assumes independent clusters. Smallest data: 2 clusters with trials.
/// </summary>
public static class ClusteredProportion
{
    private const string Method = "Wilson interval, effective number of trials";

    /// <summary>The proportion with its interval.</summary>
    /// <param name="clusters">Successes and trials of each cluster; one without trials is left out.</param>
    /// <param name="level">The confidence level.</param>
    public static Outcome<ClusteredProportionResult> Interval(IReadOnlyCollection<(int Successes, int Trials)> clusters, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(clusters);
        Require.Level(level);
        foreach (var (successes, trials) in clusters)
        {
            Require.Counts(successes, trials);
        }

        (int X, int N)[] used = [.. clusters.Where(c => c.Trials > 0)];
        if (used.Length < 2)
        {
            return new TooLittleData(Method, used.Length, 2, "clusters that differ are needed to see how trials hang together");
        }

        double n = used.Sum(c => (long)c.N);
        var p = used.Sum(c => (long)c.X) / n;
        var m = used.Length;
        var variance = m / (m - 1.0) * used.Sum(c => Math.Pow(c.X - (p * c.N), 2)) / (n * n);
        var plain = p * (1 - p) / n;

        // With none or all there is no variance to compare; clusters then count as trials that all agreed.
        var effect = plain > 0 ? Math.Max(1, variance / plain) : n / m;
        var shrink = Math.Pow(Gaussian.Critical(level) / StudentT.Critical(level, m - 1), 2);
        var effective = Math.Min(n, n / effect * shrink);
        var (low, high) = Wilson.Limits(p * effective, effective, level);
        var estimate = new Estimate(p, p == 0 ? 0 : Math.Min(low, p), p == 1 ? 1 : Math.Max(high, p), level, (int)n, Method);
        return new ClusteredProportionResult(estimate, effect, effective, m);
    }
}
