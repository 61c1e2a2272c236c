using CareRecords.Statistics;

namespace CareRecords.Findings;

/// <summary>
/// Recovery over all episodes: Turnbull's estimate of the time from onset to recovery, brackets and censoring kept.
/// Bootstrap limits need five episodes; with fewer there is a curve and no limits. Percentiles of samples of few episodes are too narrow and are read
/// further out (<see cref="ExpandedPercentile"/>).
/// </summary>
internal static class RecoveryCurve
{
    private const double Level = 0.95;

    public static RecoveryOverEpisodes Of(IReadOnlyList<EpisodeFinding> episodes, ReviewOptions options)
    {
        var censored = episodes.Count(e => e.Recovery.Censored);
        if (episodes.Count == 0) return new([], null, null, null, 0, 0, "no episode");
        List<CensoredInterval> times = [.. episodes.Select(e => new CensoredInterval(e.Recovery.DaysLow, e.Recovery.DaysHigh ?? double.PositiveInfinity))];
        var curve = Turnbull.Fit(times).Value;
        List<double> at = [.. curve.Masses.SelectMany(m => new[] { m.Left, m.Right }).Where(double.IsFinite).Prepend(0).Distinct().Order()];
        var level = times.Count < TurnbullBootstrap.Smallest ? Level : 1 - (2 * ExpandedPercentile.Tail(Level, times.Count));
        var limits = TurnbullBootstrap.Limits(times, at, level, Draws(episodes.Count), options.Seed);
        var known = limits.IsKnown ? limits.Value : null;
        var points = at.Select((t, i) =>
        {
            var survival = curve.SurvivalAt(t);
            return new CurvePoint(t, (survival.Low + survival.High) / 2, known?[i].Limits.Low, known?[i].Limits.High);
        });
        var median = curve.Median;
        var middle = double.IsFinite(median.Right) ? (median.Left + median.Right) / 2 : (double?)null;
        var (low, high) = MedianLimits(known);
        return new([.. points], middle, low, high, episodes.Count, censored,
            "Turnbull's estimate for interval- and right-censored times; " + (known is null
                ? $"no limits: {limits.Missing}"
                : "bootstrap limits, 95 %, read further out for few episodes"));
    }

    /// <summary>Fewer draws for very many episodes: the work of one grows faster than their number.</summary>
    private static int Draws(int episodes) => Math.Clamp(8000 / episodes, 100, 500);

    /// <summary>The median's limits: where the limits of the curve pass one half.</summary>
    private static (double? Low, double? High) MedianLimits(IReadOnlyList<TurnbullLimits>? limits)
    {
        if (limits is null) return (null, null);
        var low = limits.Where(l => l.Limits.Low <= 0.5).Select(l => (double?)l.Time).FirstOrDefault();
        var high = limits.Where(l => l.Limits.High <= 0.5).Select(l => (double?)l.Time).FirstOrDefault();
        return (low, high);
    }
}
