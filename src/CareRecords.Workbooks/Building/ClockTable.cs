using CareRecords.Records;
using NodaTime;

namespace CareRecords.Workbooks.Building;

/// <summary>
/// A stretch of local time with one offset. A local time that happens twice (clocks going back) belongs to the earlier stretch when the earliest
/// moment is meant and to the later stretch when the latest is meant, so that the interval stays honest.
/// </summary>
/// <param name="EarliestFrom">From which local time on the offset holds for an earliest moment.</param>
/// <param name="LatestFrom">From which local time on it holds for a latest moment.</param>
/// <param name="OffsetMinutes">Minutes ahead of universal time.</param>
/// <param name="Until">The last local time of the stretch by its own offset: a skipped local time after it is taken as this moment.</param>
internal sealed record ClockStretch(LocalDateTime EarliestFrom, LocalDateTime LatestFrom, double OffsetMinutes, LocalDateTime Until);

/// <summary>The zone's stretches over the records, for the formulas.</summary>
internal static class ClockTable
{
    public static IReadOnlyList<ClockStretch> For(DateTimeZone zone, LocalDate from, LocalDate to)
    {
        var start = from.PlusDays(-3).AtMidnight().InZoneLeniently(zone).ToInstant();
        var end = to.PlusDays(4).AtMidnight().InZoneLeniently(zone).ToInstant();
        List<ClockStretch> stretches = [];
        foreach (var interval in zone.GetZoneIntervals(start, end))
        {
            var offset = interval.WallOffset.Seconds / 60.0;
            var until = interval.HasEnd && interval.End < end ? interval.IsoLocalEnd : to.PlusDays(5).AtMidnight();
            if (stretches.Count == 0 || !interval.HasStart)
            {
                var first = from.PlusDays(-3).AtMidnight();
                stretches.Add(new ClockStretch(first, first, offset, until));
                continue;
            }

            // Clocks go back: wall time before is later than wall time after. A local time in between is the earlier moment by the old offset.
            var after = interval.IsoLocalStart;
            var before = interval.Start.InZone(zone).LocalDateTime.PlusSeconds((long)(stretches[^1].OffsetMinutes * 60) - interval.WallOffset.Seconds);
            stretches.Add(new ClockStretch(LocalDateTime.Max(after, before), after, offset, until));
        }

        return stretches;
    }

    /// <summary>The first and the last day that any record touches.</summary>
    public static (LocalDate From, LocalDate To) DaysTouched(CareLog log, LocalDate from, LocalDate to)
    {
        foreach (var time in log.Entries.SelectMany(e => new[] { e.Start, e.End }).OfType<UncertainTime>())
        {
            from = LocalDate.Min(from, time.Earliest.Date);
            to = LocalDate.Max(to, time.Latest.Date);
        }

        return (from, to);
    }
}
