using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>What was written around each episode, from three days before the earliest first day to the recovery: signs, medicines begun, oxygen, plan, hospital.</summary>
internal static class IllnessCourse
{
    private const int DaysBefore = 3;
    private const int NewCourseDays = 7;
    private const int WidestClock = 120;

    public static IReadOnlyList<CourseEvent> Of(ChildRecords records, UsualOxygen oxygen, IReadOnlyList<EpisodeFinding> episodes) =>
    [
        .. episodes.SelectMany((e, i) => Of(records, oxygen, e.Id, e.OnsetLow.PlusDays(-DaysBefore), End(records, e, episodes.ElementAtOrDefault(i + 1))))
    ];

    private static LocalDate End(ChildRecords records, EpisodeFinding episode, EpisodeFinding? next)
    {
        var end = episode.Recovery.DaysHigh is { } days ? episode.Onset.PlusDays((int)Math.Ceiling(days)) : records.To;
        return next is not null && next.OnsetLow.PlusDays(-DaysBefore) <= end ? LocalDate.Max(episode.Onset, next.OnsetLow.PlusDays(-DaysBefore - 1)) : end;
    }

    private static IEnumerable<CourseEvent> Of(ChildRecords records, UsualOxygen oxygen, string id, LocalDate from, LocalDate to)
    {
        bool In(LocalDate day) => from <= day && day <= to;
        Dated Event(CareEntry entry, CourseKind kind, string what)
        {
            var (day, clock) = (records.DayOf(entry), ClockOf(entry.When));
            // What is written for the whole day comes before what has a clock.
            var at = entry.When.Precision == TimePrecision.DayOnly ? day.At(records.Plan.DayStarts) : entry.When.Stated;
            return new(at, new(id, day, clock, kind, what, entry.Sources) { Date = clock is null ? day : entry.When.Stated.Date, IsAbout = !entry.When.IsExact });
        }

        List<Dated> medicines = [.. Begun(records).Where(d => In(records.DayOf(d))).Select(d => Event(d, CourseKind.Medicine, $"{d.Medicine} begun"))];
        // An antibiotic that was noticed as well as given is one beginning.
        var signs = records.Signs.Where(s => In(records.DayOf(s)) && !(s.Kind == SignKind.Antibiotic && medicines.Exists(m => m.Event.Day == records.DayOf(s))))
            .Select(s => Event(s, KindOf(s), InWords(s)));
        var cutShort = records.Sessions.Where(s => In(records.DayOf(s)) && (!string.IsNullOrWhiteSpace(s.StoppedEarly) || s.Vomited == true))
            .Select(s => Event(s, CourseKind.Session, s.Vomited == true ? "vomited during the session" : $"session stopped early: {s.StoppedEarly!.Trim()}"));
        var low = records.Checks.Where(c => In(records.DayOf(c)) && c.SpO2 < records.Plan.Number(PlanItem.StopSaturation, records.DayOf(c)))
            .Select(c => Event(c, CourseKind.LowReading, $"SpO2 {Words.Number(c.SpO2!.Value)} %, under the plan's stop value"));
        var plan = records.Log.Plan.Rows.Where(r => r.Item == PlanItem.SessionsPerDay && r.From is { } day && In(day))
            .Select(r => new Dated(r.From!.Value.At(records.Plan.DayStarts), new(id, r.From!.Value, null, CourseKind.Plan, $"plan: {r.Value} sessions a day", r.Source is { } source ? [source] : [])));
        var raised = Raised(records, oxygen, from, to).Select(c => Event(c, CourseKind.Oxygen, $"oxygen {Words.Flow(c.OxygenLitresPerMinute!.Value)}"));
        var team = TeamLines.Of(records).Where(t => In(t.Day)).Select(t => new Dated(t.After, new(id, t.Day, null, CourseKind.Team, t.Line.Text.Trim(), [t.Line])));
        return signs.Concat(cutShort).Concat(low).Concat(plan).Concat(medicines).Concat(team).Concat(raised).OrderBy(e => e.At).Select(e => e.Event)
            .GroupBy(e => (e.Day, e.Kind, e.What)).Select(g => g.First() with { Sources = [.. g.SelectMany(e => e.Sources).Distinct()] });
    }

    private readonly record struct Dated(LocalDateTime At, CourseEvent Event);

    private static LocalTime? ClockOf(UncertainTime when) =>
        when.IsExact || Period.Between(when.Earliest, when.Latest, PeriodUnits.Minutes).Minutes <= WidestClock ? when.Stated.TimeOfDay : null;

    private static CourseKind KindOf(Sign sign) => sign.Kind is SignKind.Admitted or SignKind.Discharged ? CourseKind.Hospital
        : sign.Kind == SignKind.Better ? CourseKind.Better
        : sign.Kind == SignKind.Antibiotic ? CourseKind.Medicine : CourseKind.Sign;

    private static string InWords(Sign sign) => sign switch
    {
        { Kind: SignKind.Temperature, Number: { } celsius } => $"temperature {Words.Number(celsius)} °C",
        { Kind: SignKind.Other, Value: { Length: > 0 } value } => value,
        { Value: { Length: > 0 } value } => $"{sign.What}: {value}",
        _ => sign.What,
    };

    /// <summary>Doses of medicines for an illness that were not written in the week before.</summary>
    private static IEnumerable<Dose> Begun(ChildRecords records) =>
        records.AllDoses.Where(d => d.Class is MedicineClass.SystemicAntibiotic or MedicineClass.SystemicSteroid or MedicineClass.Antipyretic)
            .GroupBy(d => d.Medicine)
            .SelectMany(g => g.Where((d, i) => i == 0 || Period.DaysBetween(records.DayOf(g.ElementAt(i - 1)), records.DayOf(d)) > NewCourseDays));

    private static IEnumerable<Check> Raised(ChildRecords records, UsualOxygen oxygen, LocalDate from, LocalDate to)
    {
        // Within a day, what has a clock tells when; what was written for the whole day comes last.
        var highest = 0d;
        foreach (var check in records.Checks.OrderBy(records.DayOf).ThenBy(c => c.When.Precision == TimePrecision.DayOnly).ThenBy(c => c.When.Stated))
        {
            var day = records.DayOf(check);
            if (day < from || day > to || oxygen.StateOf(check.OxygenLitresPerMinute, day) != FlowState.Above || check.OxygenLitresPerMinute <= highest) continue;
            highest = check.OxygenLitresPerMinute!.Value;
            yield return check;
        }
    }
}
