using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Each care day of the span, whether or not anything was written for it.</summary>
internal static class DayFindings
{
    /// <summary>The days; <paramref name="medianAtUsualOxygen"/> gives a day's median resting saturation at usual oxygen.</summary>
    public static IReadOnlyList<DayFinding> Of(ChildRecords records, IReadOnlyList<SessionFinding> sessions, ChestMinutes chest, Func<LocalDate, double?> medianAtUsualOxygen)
    {
        var byDay = sessions.ToLookup(s => s.CareDay);
        var omitted = records.Omitted.ToLookup(o => records.Plan.DayOf(o.When));
        return [.. records.Days.Select(day => One(records, day, [.. byDay[day]], [.. omitted[day]], chest.PlannedPerArea(day), medianAtUsualOxygen(day)))];
    }

    private static DayFinding One(
        ChildRecords records, LocalDate day, IReadOnlyList<SessionFinding> sessions, IReadOnlyList<OmittedSession> omitted, double? minutesPlanned, double? median)
    {
        var entries = records.On(day);
        var checks = entries.OfType<Check>().ToList();
        var known = sessions.Where(s => s.Minutes is not null).ToList();
        return new()
        {
            Day = day,
            HasRecords = entries.Count > 0,
            SessionsDone = sessions.Count,
            SessionsPlanned = records.Plan.Number(PlanItem.SessionsPerDay, day),
            SessionsOmittedWithReason = omitted.Count(o => o.Reason is not null),
            SessionsOmittedWithoutReason = omitted.Count(o => o.Reason is null),
            Minutes = known.Count == 0 ? null : known.Sum(s => s.Minutes!.Value),
            SessionsWithoutMinutes = sessions.Count - known.Count,
            MinutesPerArea = ChestMinutes.PerArea(sessions.Select(s => s.Session)),
            MinutesPerAreaPlanned = minutesPlanned,
            Readings = checks.Count(c => c.SpO2 is not null),
            MedianSpO2AtUsualOxygen = median,
            LowestSpO2 = checks.Min(c => c.SpO2),
            HighestOxygen = checks.Max(c => c.OxygenLitresPerMinute),
            Feeds = entries.OfType<Feed>().Count(),
            Doses = entries.OfType<Dose>().Count(),
            Signs = [.. entries.OfType<Sign>().Select(s => s.Value is { Length: > 0 } value ? $"{s.What} {value}" : s.What)],
            FeedGaps = Count(sessions.Select(s => s.FeedGap.Verdict)),
            InhalerGaps = Count(sessions.Select(s => s.InhalerGap.Verdict)),
        };
    }

    internal static VerdictCount Count(IEnumerable<GapVerdict> verdicts)
    {
        var (kept, not, unknown) = (0, 0, 0);
        foreach (var verdict in verdicts)
            _ = verdict switch { GapVerdict.Kept => kept++, GapVerdict.Unknown => unknown++, _ => not++ };
        return new(kept, not, unknown);
    }
}
