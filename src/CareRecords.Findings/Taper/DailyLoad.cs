using CareRecords.Statistics;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>What was done on a care day with at least one session.</summary>
/// <param name="Day">The care day.</param>
/// <param name="Sessions">Sessions.</param>
/// <param name="MinutesPerArea">Median minutes per area; null when not known.</param>
internal readonly record struct DailyLoad(LocalDate Day, int Sessions, double? MinutesPerArea);

/// <summary>
/// Daily sessions and minutes cut into steps: an exact segmentation with one level of each a step, a penalty of 3·log n for
/// each change, and steps of two days or more. The error variance is that of neighbouring days, at least 0.16 (0.4 of a
/// session or minute): one session missed on one day is no step, one more or less on three days is.
/// Days without a session are passed over: not written is not "not done".
/// </summary>
internal static class LoadSegments
{
    private const double LeastVariance = 0.16;
    private const int SmallestDays = 2;

    /// <summary>The segments as index ranges of <paramref name="days"/>; one when there are too few days to cut.</summary>
    public static IReadOnlyList<(int First, int End)> Of(IReadOnlyList<DailyLoad> days)
    {
        if (days.Count == 0) return [];
        var sessions = Gaussian([.. days.Select(d => (double)d.Sessions)]);
        double[] minutes = [.. days.Where(d => d.MinutesPerArea is not null).Select(d => d.MinutesPerArea!.Value)];
        var minutesCost = Gaussian(minutes);
        var known = new int[days.Count + 1];
        for (var i = 0; i < days.Count; i++) known[i + 1] = known[i] + (days[i].MinutesPerArea is null ? 0 : 1);

        var cost = SegmentCost.Custom(days.Count, (a, b) =>
            sessions.Of(a, b) + (known[b] > known[a] ? minutesCost.Of(known[a], known[b]) : 0));
        return Segmentation.Penalized(cost, 3 * Math.Log(Math.Max(2, days.Count)), SmallestDays).TryGet(out var cut)
            ? [.. cut.Segments.Select(s => (s.First, s.End))]
            : [(0, days.Count)];
    }

    private static SegmentCost Gaussian(double[] values) =>
        SegmentCost.Gaussian(values, Math.Max(LeastVariance, NoiseVariance.FromDifferences(values).Or(0)));
}
