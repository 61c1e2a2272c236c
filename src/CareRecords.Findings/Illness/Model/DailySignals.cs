using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Modelling;

/// <summary>A child's records as the illness model sees them.</summary>
internal static class DailySignals
{
    /// <summary>The model's answer on these records; signs and usual oxygen are those of the definition by the record.</summary>
    public static IllnessModelResult Fit(ChildRecords records, IllnessByRecord illness)
    {
        var usual = records.Days.Select(illness.Oxygen.On).ToList();
        return IllnessModel.Fit(Of(records, illness.Signs), new IllnessModelInput
        {
            CareDays = usual.Count,
            UsualOxygen = usual.All(u => u is not null) ? [.. usual.Select(u => u!.Value)] : null,
        });
    }

    /// <summary>
    /// Readings at rest, flows, and one sign a day. Checks made during a session are left out: they are not at rest. A range of saturations counts
    /// as its middle; readings after a session are set back by <see cref="SessionShift"/>. Times are local: a care day is always 24 hours,
    /// whatever the clocks do.
    /// </summary>
    public static IReadOnlyList<Observation> Of(ChildRecords records, IReadOnlyList<IllnessSign> signs)
    {
        var origin = records.From.At(records.Plan.DayStarts);
        double Hours(LocalDateTime at) => Period.Between(origin, at, PeriodUnits.Minutes).Minutes / 60.0;
        var shift = SessionShift.Of(records.Checks);
        var checks = records.Checks
            .Where(c => c.Phase != CheckPhase.During && (c.SpO2 is not null || c.OxygenLitresPerMinute is not null))
            .Select(c => new Observation(Hours(c.When.Stated), SpO2Of(c) - (c.Phase == CheckPhase.After ? shift : 0), c.OxygenLitresPerMinute, Sign: false));
        var noted = signs.GroupBy(s => s.Day).Select(day => day.MinBy(s => s.At)!)
            .Select(s => new Observation(Hours(s.At.InZone(records.Clock.Zone).LocalDateTime), null, null, Sign: true));
        return [.. checks.Concat(noted).OrderBy(o => o.Hours)];
    }

    private static double? SpO2Of(Check check) => check.SpO2High is { } high ? (check.SpO2 + high) / 2 : check.SpO2;
}
