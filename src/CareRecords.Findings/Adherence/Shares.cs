using CareRecords.Statistics;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>
/// Kept over judged with the unknown beside it. The interval shown is the wider of Wilson's (sessions taken as independent)
/// and the day-cluster bootstrap's (sessions of a day together).
/// </summary>
internal static class Shares
{
    public const double Level = 0.95;

    /// <summary>The share of some verdicts; only kept counts as kept, and unknown is not judged.</summary>
    public static ShareKept Of(IEnumerable<(LocalDate Day, GapVerdict Verdict)> verdicts, ReviewOptions options)
    {
        var all = verdicts.ToList();
        var count = DayFindings.Count(all.Select(v => v.Verdict));
        var days = all.Where(v => v.Verdict != GapVerdict.Unknown).GroupBy(v => v.Day)
            .Select(d => (Kept: d.Count(v => v.Verdict == GapVerdict.Kept), Judged: d.Count())).ToList();
        return Of(count.Kept, count.Kept + count.NotKept, count.Unknown, DayClusters.Of(days, options, Level));
    }

    /// <summary>A share whose cases are whole days: Wilson's interval alone.</summary>
    public static ShareKept OfDays(int kept, int judged, int unknown) => Of(kept, judged, unknown, null);

    private static ShareKept Of(int kept, int judged, int unknown, Statistics.Interval? clusters)
    {
        var all = judged + unknown;
        double? worst = all == 0 ? null : (double)kept / all;
        double? best = all == 0 ? null : (double)(kept + unknown) / all;
        if (!Wilson.Interval(kept, judged, Level).TryGet(out var plain))
            return new(kept, judged, unknown, null, null, null, Level, "no case could be judged", null, null, worst, best, null);

        var wider = clusters is not null && clusters.Width > plain.Width;
        var (low, high) = wider ? (clusters!.Low, clusters.High) : (plain.Low, plain.High);
        var method = wider ? "day-cluster bootstrap, percentile limits (wider than Wilson's)"
            : clusters is null ? "Wilson score interval" : "Wilson score interval (not narrower than the day-cluster bootstrap)";
        return new(kept, judged, unknown, plain.Value, low, high, Level, method, plain.Low, plain.High, worst, best,
            clusters is null ? null : clusters.Width / plain.Width);
    }
}
