using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Modelling;

/// <summary>A care log as the illness model sees it.</summary>
internal static class DailySignals
{
    /// <summary>Degrees Celsius from which a temperature is a sign of illness (definitions: "temperature ≥ 38.0 °C").</summary>
    private const double Fever = 38.0;

    /// <summary>
    /// Readings at rest, flows and signs between two care days, both included. Checks made during a session are left out: they are not
    /// at rest. A range of saturations counts as its middle; readings after a session are set back by
    /// <see cref="SessionShift"/>. Times are local: a care day is always 24 hours, whatever the clocks do.
    /// </summary>
    public static IReadOnlyList<Observation> Of(CareLog log, LocalDate first, LocalDate last)
    {
        var dayStarts = log.Plan.DayStarts;
        var origin = first.At(dayStarts);
        var end = last.PlusDays(1).At(dayStarts);
        var entries = log.Entries.Where(e => e.When.Stated >= origin && e.When.Stated < end).OrderBy(e => e.When.Stated).ToList();
        var shift = SessionShift.Of(entries);
        return [.. entries
            .Select(e => ObservationOf(e, shift, Period.Between(origin, e.When.Stated, PeriodUnits.Minutes).Minutes / 60.0))
            .OfType<Observation>()
            .OrderBy(o => o.Hours)];
    }

    /// <summary>The usual oxygen of the plan by care day; null when the plan states none on any of them.</summary>
    public static IReadOnlyList<double>? UsualOxygen(CarePlan plan, LocalDate first, LocalDate last)
    {
        if (plan.Rows.All(r => r.Item != PlanItem.UsualOxygen)) return null;
        var days = Period.DaysBetween(first, last) + 1;
        var stated = Enumerable.Range(0, days).Select(d => plan.NumberFor(PlanItem.UsualOxygen, first.PlusDays(d))).ToArray();
        if (stated.FirstOrDefault(s => s is not null) is not { } start) return null;
        var usual = new double[days];
        for (var d = 0; d < days; d++) usual[d] = stated[d] ?? (d > 0 ? usual[d - 1] : start);
        return usual;
    }

    private static Observation? ObservationOf(CareEntry entry, double shift, double hours) => entry switch
    {
        Check { Phase: CheckPhase.During } => null,
        Check { SpO2: null, OxygenLitresPerMinute: null } => null,
        Check check => new Observation(hours, SpO2Of(check) - (check.Phase == CheckPhase.After ? shift : 0), check.OxygenLitresPerMinute, Sign: false),
        Sign sign when IsIllness(sign) => new Observation(hours, null, null, Sign: true),
        _ => null,
    };

    private static double? SpO2Of(Check check) => check.SpO2High is { } high ? (check.SpO2 + high) / 2 : check.SpO2;

    private static bool IsIllness(Sign sign) => sign.Kind switch
    {
        SignKind.Unwell or SignKind.Distress or SignKind.ColourChange or SignKind.Antibiotic or SignKind.Admitted => true,
        SignKind.Temperature => sign.Number >= Fever,
        _ => false,
    };
}
