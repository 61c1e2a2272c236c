using CareRecords.Records;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Import;

/// <summary>Finds local times that a clock change skipped: they never happened, so they are refused.</summary>
internal static class ClockChanges
{
    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");

    /// <summary>A problem for each entry whose exact start or end was skipped in the zone; an uncertain time that only touches the gap stands.</summary>
    public static IReadOnlyList<(CareEntry Entry, ImportProblem Problem)> Skipped(IReadOnlyList<CareEntry> entries, DateTimeZone zone)
    {
        var gaps = Gaps(entries, zone);
        if (gaps.Count == 0) return [];
        var found = new List<(CareEntry, ImportProblem)>();
        foreach (var entry in entries)
            if ((At(entry.Start, gaps) ?? At(entry.End, gaps)) is { } at)
                found.Add((entry, new ImportProblem(entry.Sources[0],
                    $"{Minute.Format(at)} did not exist in {zone.Id}: the clocks went forward over it.",
                    "Correct the time, or give the zone that the clock was set to with --zone.", ProblemSeverity.Refused)));
        return found;
    }

    private static LocalDateTime? At(UncertainTime? time, List<(LocalDateTime From, LocalDateTime To)> gaps)
    {
        if (time is not { IsExact: true }) return null;
        foreach (var (from, to) in gaps)
            if (time.Stated >= from && time.Stated < to)
                return time.Stated;
        return null;
    }

    private static List<(LocalDateTime From, LocalDateTime To)> Gaps(IReadOnlyList<CareEntry> entries, DateTimeZone zone)
    {
        if (entries.Count == 0) return [];
        var (first, last) = (entries[0].When.Earliest, entries[0].When.Latest);
        foreach (var entry in entries)
        {
            if (entry.When.Earliest < first) first = entry.When.Earliest;
            if ((entry.End ?? entry.When).Latest > last) last = (entry.End ?? entry.When).Latest;
        }

        var span = new Interval(first.PlusDays(-2).InUtc().ToInstant(), last.PlusDays(2).InUtc().ToInstant());
        return
        [
            .. zone.GetZoneIntervals(span).Where(i => i.HasStart).Select(i => (Before: zone.GetZoneInterval(i.Start - Duration.Epsilon), After: i))
                .Where(p => p.After.WallOffset > p.Before.WallOffset)
                .Select(p => (p.After.Start.WithOffset(p.Before.WallOffset).LocalDateTime, p.After.IsoLocalStart)),
        ];
    }
}
