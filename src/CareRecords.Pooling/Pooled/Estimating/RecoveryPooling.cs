using System.Globalization;
using CareRecords.Findings;
using CareRecords.Statistics;

namespace CareRecords.Pooling;

/// <summary>
/// Pooled recovery: Turnbull's estimate over episodes, with limits from drawing whole children again (Efron B, Tibshirani RJ 1993, chapter 8), and a
/// Weibull model beside it with standard errors by child. Episodes of one child are alike; taking children and not episodes keeps the limits honest.
/// Percentiles of samples of few children are too narrow, as a normal interval without Student's t is: they are moved outwards until they would be right for
/// a mean of as many children ("expanded percentiles", Hesterberg TC 2015, Am Stat 69:371-386).
/// </summary>
internal static class RecoveryPooling
{
    private const double Level = 0.95;
    private const string Method =
        "Turnbull's nonparametric estimate over episodes, intervals and censoring kept; 95 % limits from drawing whole children again, and they include what the estimate leaves open";

    /// <summary>The curve of a group; its figures are null when it is to be kept back.</summary>
    /// <param name="label">The group.</param>
    /// <param name="children">Its children, with and without episodes.</param>
    /// <param name="keptBack">Why it is kept back; null to show it.</param>
    /// <param name="options">How to pool.</param>
    public static RecoveryCurve Of(string label, IReadOnlyList<ChildSummary> children, string? keptBack, PoolOptions options)
    {
        var withEpisodes = children.Where(c => c.Recoveries.Count > 0).ToList();
        if (keptBack is not null) return new() { Label = label, Method = "kept back: " + keptBack };
        if (withEpisodes.Count == 0) return new() { Label = label, Children = 0, Episodes = 0, Censored = 0, Method = "no episode" };

        var samples = withEpisodes.Count < 2 ? [] : Samples(withEpisodes, options);
        var curve = Fit(withEpisodes);
        var tail = withEpisodes.Count < 2 ? 0 : ExpandedPercentile.Tail(Level, withEpisodes.Count);
        var median = curve.Median;
        return new()
        {
            Label = label,
            Children = withEpisodes.Count,
            Episodes = withEpisodes.Sum(c => c.Recoveries.Count),
            Censored = CensoredShown(withEpisodes, options.SmallestGroup),
            Curve = [.. DaysShown(withEpisodes, options.SmallestGroup).Select(day => PointAt(day, curve, samples, tail))],
            Median = double.IsFinite(median.Right) ? (median.Left + median.Right) / 2 : null,
            MedianLow = Limit(samples, s => s.Median.Left, tail),
            MedianHigh = Limit(samples, s => s.Median.Right, 1 - tail),
            Weibull = WeibullOf(withEpisodes),
            Method = samples.Count == 0 ? Method + "; no limits: one child" : string.Create(CultureInfo.InvariantCulture, $"{Method} ({samples.Count} samples)"),
        };
    }

    private static TurnbullCurve Fit(IEnumerable<ChildSummary> children) => Turnbull.Fit([.. children.SelectMany(c => c.Recoveries)]).Value;

    private static List<TurnbullCurve> Samples(List<ChildSummary> children, PoolOptions options)
    {
        // All draws first, in the order of the seed; then the fits, which know nothing of one another, on every processor.
        var random = new SeededRandom(options.Seed);
        var draws = Enumerable.Range(0, options.BootstrapSamples).Select(_ => Enumerable.Range(0, children.Count).Select(_ => random.Below(children.Count)).ToArray()).ToArray();
        return [.. draws.AsParallel().AsOrdered().Select(draw => Fit(Array.ConvertAll(draw, i => children[i])))];
    }

    /// <summary>Limits by child where there are two children at least; a single child has a fit and no limits.</summary>
    private static WeibullRecovery? WeibullOf(List<ChildSummary> children)
    {
        if (ParametricSurvival.FitClusters([.. children.Select(c => c.Recoveries)], SurvivalFamily.Weibull).TryGet(out var byChild))
        {
            var median = byChild.Median(Level);
            return new(1 / byChild.Scale, Math.Exp(byChild.Location), median.Value, median.Low, median.High);
        }

        return ParametricSurvival.Fit([.. children.SelectMany(c => c.Recoveries)], SurvivalFamily.Weibull).TryGet(out var fit)
            ? new(1 / fit.Scale, Math.Exp(fit.Location), fit.Median().Value, null, null)
            : null;
    }

    private static CurvePoint PointAt(int day, TurnbullCurve curve, List<TurnbullCurve> samples, double tail)
    {
        var bounds = curve.SurvivalAt(day);
        var value = (bounds.Low + bounds.High) / 2;
        return new(day, value, Limit(samples, s => s.SurvivalAt(day).Low, tail), Limit(samples, s => s.SurvivalAt(day).High, 1 - tail));
    }

    private static double? Limit(List<TurnbullCurve> samples, Func<TurnbullCurve, double> figure, double share)
    {
        if (samples.Count == 0) return null;

        // An open upper end is infinite: sorted by hand, for a quantile between two infinities is not a number.
        var sorted = samples.Select(figure).Order().ToList();
        var at = share < 0.5 ? (int)Math.Floor(share * (sorted.Count - 1)) : (int)Math.Ceiling(share * (sorted.Count - 1));
        return double.IsFinite(sorted[at]) ? sorted[at] : null;
    }

    /// <summary>
    /// Whole days to which the curve is shown: as long as enough children are followed, and only after enough children recovered since the day shown
    /// before, so that no step of the curve is one child's.
    /// </summary>
    internal static IReadOnlyList<int> DaysShown(IReadOnlyList<ChildSummary> children, int smallest)
    {
        var days = new List<int> { 0 };
        for (var day = 1; children.Count(c => c.Recoveries.Any(r => IsFollowed(r, day))) >= smallest; day++)
        {
            var recovered = children.Count(c => c.Recoveries.Any(r => r.Right > days[^1] && r.Right <= day));
            if (recovered == 0 || recovered >= smallest) days.Add(day);
        }

        return days;
    }

    private static bool IsFollowed(CensoredInterval recovery, int day) => recovery.Left >= day || (!recovery.IsRightCensored && recovery.Right > day);

    private static int? CensoredShown(IReadOnlyList<ChildSummary> children, int smallest)
    {
        var withCensored = children.Count(c => c.Recoveries.Any(r => r.IsRightCensored));
        return withCensored > 0 && withCensored < smallest ? null : children.Sum(c => c.Recoveries.Count(r => r.IsRightCensored));
    }
}
