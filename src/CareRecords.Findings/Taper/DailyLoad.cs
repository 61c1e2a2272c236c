using CareRecords.Statistics;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>What was done on a care day with at least one session.</summary>
/// <param name="Day">The care day.</param>
/// <param name="Sessions">Sessions.</param>
/// <param name="MinutesPerArea">Median minutes per area; null when not known.</param>
internal readonly record struct DailyLoad(LocalDate Day, int Sessions, double? MinutesPerArea);

/// <summary>
/// Daily sessions and minutes cut into steps: a segmentation with one level of each a step, a penalty of 3·log n for each
/// change, and steps of two days or more; exact within windows of <see cref="WindowDays"/> days, so that the work grows
/// with the length of the record. The error variance is a robust one of days about
/// their neighbours, at least 0.07: one session fewer on one
/// day or two is no step, one fewer from one three-day step to the next is.
/// Days without a session are passed over: not written is not "not done".
/// </summary>
internal static class LoadSegments
{
    private const int WindowDays = 400;
    private const int SettledDays = 60;
    private const double LeastVariance = 0.07;
    private const int SmallestDays = 2;

    /// <summary>The segments as index ranges of <paramref name="days"/>; one when there are too few days to cut.</summary>
    public static IReadOnlyList<(int First, int End)> Of(IReadOnlyList<DailyLoad> days)
    {
        if (days.Count < SmallestDays) return days.Count == 0 ? [] : [(0, days.Count)];
        var (penalty, variances) = (3 * Math.Log(days.Count), Variances(days));
        var found = new List<(int First, int End)>();
        for (var from = 0; from < days.Count;)
        {
            var end = Math.Min(days.Count, from + WindowDays);
            var segments = Cut([.. days.Skip(from).Take(end - from)], penalty, variances).Select(s => (First: from + s.First, End: from + s.End)).ToList();

            // What lies near the window's end may still change with what follows: it is cut again with the next window.
            if (end < days.Count) segments.RemoveAll(s => s.End > end - SettledDays);
            if (segments.Count == 0) segments.Add((from, end - SettledDays));
            found.AddRange(segments);
            from = found[^1].End;
        }

        return Joined(days, found);
    }

    private static IReadOnlyList<(int First, int End)> Cut(List<DailyLoad> days, double penalty, (double Sessions, double Minutes) variances)
    {
        var sessions = SegmentCost.Gaussian([.. days.Select(d => (double)d.Sessions)], variances.Sessions);
        var minutes = SegmentCost.Gaussian(Minutes(days), variances.Minutes);
        var known = new int[days.Count + 1];
        for (var i = 0; i < days.Count; i++) known[i + 1] = known[i] + (days[i].MinutesPerArea is null ? 0 : 1);
        var cost = SegmentCost.Custom(days.Count, (a, b) =>
            sessions.Of(a, b) + (known[b] > known[a] ? minutes.Of(known[a], known[b]) : 0));
        return Segmentation.Penalized(cost, penalty, SmallestDays).TryGet(out var cut)
            ? [.. cut.Segments.Select(s => (s.First, s.End))]
            : [(0, days.Count)];
    }

    private static (double Sessions, double Minutes) Variances(IReadOnlyList<DailyLoad> days) =>
        (Variance([.. days.Select(d => (double)d.Sessions)]), Variance(Minutes(days)));

    /// <summary>How days stray from the middle of themselves and their two neighbours: a step from one level to another does not enter, however many there are.</summary>
    private static double Variance(double[] values)
    {
        if (values.Length < 3) return LeastVariance;
        var strays = Enumerable.Range(1, values.Length - 2).Select(i => values[i] - Quantiles.Median([values[i - 1], values[i], values[i + 1]]).Value);
        var spread = Quantiles.MedianAbsoluteDeviation([.. strays]).Value;
        return Math.Max(LeastVariance, spread * spread);
    }

    private static double[] Minutes(IEnumerable<DailyLoad> days) => [.. days.Select(d => d.MinutesPerArea).OfType<double>()];

    /// <summary>Neighbours on one level are one step: a window's edge is no change.</summary>
    private static List<(int First, int End)> Joined(IReadOnlyList<DailyLoad> days, List<(int First, int End)> segments)
    {
        var joined = new List<(int First, int End)>();
        (double, double?) previous = default;
        foreach (var segment in segments)
        {
            var theirs = days.Skip(segment.First).Take(segment.End - segment.First).ToList();
            var level = (Quantiles.Median([.. theirs.Select(d => (double)d.Sessions)]).Value, Quantiles.Median(Minutes(theirs)) is { IsKnown: true } m ? m.Value : (double?)null);
            if (joined.Count > 0 && level == previous) joined[^1] = (joined[^1].First, segment.End);
            else joined.Add(segment);
            previous = level;
        }

        return joined;
    }
}
