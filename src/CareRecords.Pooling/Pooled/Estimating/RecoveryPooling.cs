using System.Globalization;
using CareRecords.Findings;
using CareRecords.Statistics;

namespace CareRecords.Pooling;

/// <summary>
/// Pooled recovery: Turnbull's estimate over episodes, with percentile limits from drawing whole children again (Efron B, Tibshirani RJ 1993,
/// chapter 8), and a Weibull model beside it. Episodes of one child are alike; drawing children and not episodes keeps the limits honest.
/// </summary>
internal static class RecoveryPooling
{
    private const double Tail = 0.025;
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
        var weibull = WeibullOf(withEpisodes, samples);
        var median = curve.Median;
        return new()
        {
            Label = label,
            Children = withEpisodes.Count,
            Episodes = withEpisodes.Sum(c => c.Recoveries.Count),
            Censored = CensoredShown(withEpisodes, options.SmallestGroup),
            Curve = [.. DaysShown(withEpisodes, options.SmallestGroup).Select(day => PointAt(day, curve, samples))],
            Median = double.IsFinite(median.Right) ? (median.Left + median.Right) / 2 : null,
            MedianLow = Limit(samples, s => s.Curve.Median.Left, Tail),
            MedianHigh = Limit(samples, s => s.Curve.Median.Right, 1 - Tail),
            Weibull = weibull,
            Method = samples.Count == 0 ? Method + "; no limits: one child" : string.Create(CultureInfo.InvariantCulture, $"{Method} ({samples.Count} samples)"),
        };
    }

    private static TurnbullCurve Fit(IEnumerable<ChildSummary> children) => Turnbull.Fit([.. children.SelectMany(c => c.Recoveries)]).Value;

    private sealed record Sample(TurnbullCurve Curve, double? WeibullMedian);

    private static List<Sample> Samples(List<ChildSummary> children, PoolOptions options)
    {
        // All draws first, in the order of the seed; then the fits, which know nothing of one another, on every processor.
        var random = new SeededRandom(options.Seed);
        var draws = Enumerable.Range(0, options.BootstrapSamples).Select(_ => Enumerable.Range(0, children.Count).Select(_ => random.Below(children.Count)).ToArray()).ToArray();
        return [.. draws.AsParallel().AsOrdered().Select(draw => Array.ConvertAll(draw, i => children[i])).Select(drawn => new Sample(Fit(drawn), Weibull(drawn)?.Median().Value))];
    }

    private static ParametricFit? Weibull(IEnumerable<ChildSummary> children) =>
        ParametricSurvival.Fit([.. children.SelectMany(c => c.Recoveries)], SurvivalFamily.Weibull).TryGet(out var fit) ? fit : null;

    private static WeibullRecovery? WeibullOf(List<ChildSummary> children, List<Sample> samples)
    {
        if (Weibull(children) is not { } fit) return null;
        double[] medians = [.. samples.Select(s => s.WeibullMedian).OfType<double>()];

        // Where many samples gave no fit, the rest are a selection and no limits.
        var limits = medians.Length > 0 && medians.Length >= 0.9 * samples.Count;
        return new(1 / fit.Scale, Math.Exp(fit.Location), fit.Median().Value,
            limits ? Quantiles.At(medians, Tail).Value : null, limits ? Quantiles.At(medians, 1 - Tail).Value : null);
    }

    private static CurvePoint PointAt(int day, TurnbullCurve curve, List<Sample> samples)
    {
        var bounds = curve.SurvivalAt(day);
        var value = (bounds.Low + bounds.High) / 2;
        return new(day, value, Limit(samples, s => s.Curve.SurvivalAt(day).Low, Tail), Limit(samples, s => s.Curve.SurvivalAt(day).High, 1 - Tail));
    }

    private static double? Limit(List<Sample> samples, Func<Sample, double> figure, double share)
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
