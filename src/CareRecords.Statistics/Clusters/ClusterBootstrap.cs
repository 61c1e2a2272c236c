using MathNet.Numerics.Statistics;

namespace CareRecords.Statistics;

/// <summary>A bootstrap of whole clusters.</summary>
/// <param name="Estimate">The statistic of the data with its interval.</param>
/// <param name="StandardError">The standard deviation of the statistic over bootstrap samples.</param>
/// <param name="Draws">How many samples were drawn.</param>
/// <param name="Undefined">In how many of them the statistic had no value; they are left out.</param>
public sealed record ClusterBootstrapResult(Estimate Estimate, double StandardError, int Draws, int Undefined);

/// <summary>
/// The bootstrap for observations that hang together within clusters (days, families): whole clusters are drawn again with
/// replacement, as many as there are. The interval is Efron's BCa: percentiles corrected for bias and for acceleration, the
/// latter from leaving out one cluster at a time.
/// Source: Efron B (1987), J Am Stat Assoc 82:171-185; Davison AC, Hinkley DV (1997), Bootstrap Methods and their
/// Application, section 3.8. Assumes independent clusters and a smooth statistic; with fewer than about 20 clusters the
/// interval is too narrow. Smallest data: 8 clusters (a rule of ours) and a statistic defined in 90 % of samples.
/// </summary>
public static class ClusterBootstrap
{
    /// <summary>The fewest clusters.</summary>
    public const int SmallestClusters = 8;

    private const string Method = "cluster bootstrap, BCa interval";

    /// <summary>The interval of a statistic.</summary>
    /// <param name="clusters">The observations of each cluster.</param>
    /// <param name="statistic">The statistic of the clusters drawn; null where it has no value.</param>
    /// <param name="level">The confidence level.</param>
    /// <param name="draws">How many samples, at least 100.</param>
    /// <param name="seed">The seed; the same seed gives the same interval everywhere.</param>
    /// <typeparam name="T">What is known of one cluster.</typeparam>
    public static Outcome<ClusterBootstrapResult> Interval<T>(
        IReadOnlyList<T> clusters, Func<IReadOnlyList<T>, double?> statistic, double level = 0.95, int draws = 2000, int seed = 1)
    {
        ArgumentNullException.ThrowIfNull(clusters);
        ArgumentNullException.ThrowIfNull(statistic);
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 100);
        Require.Level(level);
        var n = clusters.Count;
        if (n < SmallestClusters)
        {
            return new TooLittleData(Method, n, SmallestClusters, "too few clusters to draw from");
        }

        if (statistic(clusters) is not { } seen)
        {
            return new TooLittleData(Method, n, SmallestClusters, "the statistic has no value");
        }

        var random = new SeededRandom(seed);
        double[] values =
        [
            .. Enumerable.Range(0, draws).Select(_ => statistic(Drawn(clusters, random))).Where(v => v is not null).Select(v => v!.Value).Order(),
        ];
        if (values.Length < 0.9 * draws)
        {
            return new TooLittleData(Method, n, SmallestClusters, "the statistic has no value in more than a tenth of the samples");
        }

        var tail = (1 - level) / 2;
        var (bias, acceleration) = (Bias(values, seen), Acceleration(clusters, statistic));
        double Limit(double probability)
        {
            var z = bias + Gaussian.Quantile(probability);
            var corrected = Gaussian.Lower(bias + (z / (1 - (acceleration * z))));
            return SortedArrayStatistics.QuantileCustom(values, corrected, QuantileDefinition.R6);
        }

        var (low, high) = (Limit(tail), Limit(1 - tail));
        var estimate = new Estimate(seen, Math.Min(low, high), Math.Max(low, high), level, n, Method);
        return new ClusterBootstrapResult(estimate, values.StandardDeviation(), draws, draws - values.Length);
    }

    private static T[] Drawn<T>(IReadOnlyList<T> clusters, SeededRandom random) =>
        [.. Enumerable.Range(0, clusters.Count).Select(_ => clusters[random.Below(clusters.Count)])];

    /// <summary>How far the median of the samples lies from the statistic, in normal deviates; ties count half.</summary>
    private static double Bias(double[] values, double seen)
    {
        var below = (values.Count(v => v < seen) + (0.5 * values.Count(v => v == seen))) / values.Length;
        return Gaussian.Quantile(Math.Clamp(below, 0.5 / values.Length, 1 - (0.5 / values.Length)));
    }

    private static double Acceleration<T>(IReadOnlyList<T> clusters, Func<IReadOnlyList<T>, double?> statistic)
    {
        double[] without =
        [
            .. Enumerable.Range(0, clusters.Count).Select(k => statistic([.. clusters.Where((_, i) => i != k)])).Where(v => v is not null).Select(v => v!.Value),
        ];
        var mean = without.Length == 0 ? 0 : without.Average();
        var squares = without.Sum(v => (mean - v) * (mean - v));
        return squares > 0 ? without.Sum(v => Math.Pow(mean - v, 3)) / (6 * Math.Pow(squares, 1.5)) : 0;
    }
}
