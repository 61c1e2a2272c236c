using NodaTime;

namespace CareRecords.Findings;

/// <summary>Count, daily and timing measures side by side, for all and by week, state, part of the day and writer.</summary>
internal sealed class AdherenceGroups(ChildRecords records, IReadOnlyList<SessionFinding> sessions, IReadOnlyList<DayFinding> days)
{
    private static readonly (int From, string Label)[] Parts = [(4, "04:00–10:00"), (10, "10:00–16:00"), (16, "16:00–22:00"), (22, "22:00–04:00")];

    public AdherenceGroup Overall() => OverDays("all", null, null, days, sessions);

    public IReadOnlyList<AdherenceGroup> ByWeek()
    {
        var sessionsByWeek = sessions.ToLookup(s => Monday(s.CareDay));
        return
        [
            .. days.GroupBy(d => Monday(d.Day)).OrderBy(g => g.Key)
                .Select(g => OverDays($"week from {Words.Day(g.Key)}", g.Min(d => d.Day), g.Max(d => d.Day), [.. g], [.. sessionsByWeek[g.Key]])),
        ];
    }

    public IReadOnlyList<AdherenceGroup> ByState() =>
    [
        OverDays("well days", null, null, [.. days.Where(d => d.Episode is null)], [.. sessions.Where(s => s.Episode is null)]),
        OverDays("illness days", null, null, [.. days.Where(d => d.Episode is not null)], [.. sessions.Where(s => s.Episode is not null)]),
    ];

    public IReadOnlyList<AdherenceGroup> ByTimeOfDay() =>
        [.. sessions.GroupBy(s => Part(s.Start.Hour)).OrderBy(g => g.Key).Select(g => OverSessions(Parts[g.Key].Label, [.. g]))];

    public IReadOnlyList<AdherenceGroup> ByWriter() => sessions.All(s => s.Session.By is null)
        ? []
        : [.. sessions.GroupBy(s => s.Session.By?.Trim() ?? "not said").OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Select(g => OverSessions(g.Key, [.. g]))];

    private AdherenceGroup OverDays(string label, LocalDate? from, LocalDate? to, IReadOnlyList<DayFinding> some, IReadOnlyList<SessionFinding> theirs) =>
        OverSessions(label, theirs) with { From = from, To = to, Sessions = SessionsDone(some), DaysAllDone = AllDone(some), Minutes = MinutesDone(theirs) };

    private AdherenceGroup OverSessions(string label, IReadOnlyList<SessionFinding> theirs) => new(
        label, null, null,
        Shares.Of(theirs.Select(s => (s.CareDay, s.FeedGap.Verdict)), records.Options),
        Shares.Of(theirs.Select(s => (s.CareDay, s.InhalerGap.Verdict)), records.Options),
        null, null, null);

    private static DoneOfPlanned SessionsDone(IReadOnlyList<DayFinding> some)
    {
        var counted = some.Where(d => d.HasRecords && d.SessionsPlanned is > 0).ToList();
        return counted.Count == 0
            ? new(some.Sum(d => d.SessionsDone), null, null, 0)
            : Of(counted.Sum(d => d.SessionsDone), counted.Sum(d => d.SessionsPlanned!.Value), counted.Count);
    }

    /// <summary>A day without a record is unknown: not written is not "not done".</summary>
    private static ShareKept? AllDone(IReadOnlyList<DayFinding> some)
    {
        var planned = some.Where(d => d.SessionsPlanned is > 0).ToList();
        if (planned.Count == 0) return null;
        var judged = planned.Where(d => d.HasRecords).ToList();
        return Shares.OfDays(judged.Count(d => d.SessionsDone >= d.SessionsPlanned), judged.Count, planned.Count - judged.Count);
    }

    /// <summary>Minutes over the parts whose minutes are written, against the plan for them; what the plan sets for the others stands beside.</summary>
    private static DoneOfPlanned? MinutesDone(IReadOnlyList<SessionFinding> theirs)
    {
        var compared = theirs.Where(s => s.AgainstPlan is not null).ToList();
        var counted = compared.Where(s => s.AgainstPlan!.Done is not null).ToList();
        if (counted.Count == 0) return null;
        var minutes = Of(counted.Sum(s => s.AgainstPlan!.Done!.Value), counted.Sum(s => s.AgainstPlan!.Planned), counted.Select(s => s.CareDay).Distinct().Count());
        return minutes with { NotWritten = compared.Sum(s => s.AgainstPlan!.NotWritten) };
    }

    private static DoneOfPlanned Of(double done, double planned, int daysCounted) => new(done, planned, done / planned, daysCounted);

    private static LocalDate Monday(LocalDate day) => day.PlusDays(-((int)day.DayOfWeek - 1));

    private static int Part(int hour) => hour < 4 ? 3 : Array.FindLastIndex(Parts, p => hour >= p.From);
}
