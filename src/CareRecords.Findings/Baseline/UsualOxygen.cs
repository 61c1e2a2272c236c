using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>
/// Usual oxygen by care day: the plan's; without one, the flow written on most of the days without a noted sign (the lowest
/// of several), or air where flows were written on under a third of the days with readings, as families do who write only
/// the exception. Null throughout when no flow was ever written and no plan states one.
/// </summary>
internal sealed class UsualOxygen
{
    private const double SameFlow = 0.005;
    private readonly ChildRecords _records;
    private readonly HashSet<LocalDate> _daysOffUsual;

    public UsualOxygen(ChildRecords records, Func<LocalDate, bool> isWell)
    {
        _records = records;
        var flows = records.Checks.Where(c => c.OxygenLitresPerMinute is not null)
            .Select(c => (Day: records.DayOf(c), Flow: c.OxygenLitresPerMinute!.Value)).ToList();
        var daysRead = records.Checks.Where(c => c.SpO2 is not null).Select(records.DayOf).Distinct().Count();
        var daysWritten = flows.Select(f => f.Day).Distinct().Count();
        IsEverWritten = daysWritten > 0;
        WritesOnlyExceptions = 3 * daysWritten < daysRead;
        MostWritten = !IsEverWritten ? null : WritesOnlyExceptions ? 0 : Mode(flows.Where(f => isWell(f.Day))) ?? Mode(flows);
        _daysOffUsual = [.. flows.Where(f => On(f.Day) is not { } usual || Math.Abs(f.Flow - usual) > SameFlow).Select(f => f.Day)];
        Main = records.Checks.Where(c => c.SpO2 is not null).Select(records.DayOf).Distinct().Select(On)
            .GroupBy(f => f).OrderByDescending(g => g.Count()).Select(g => g.Key).FirstOrDefault();
    }

    public double? MostWritten { get; }

    public bool IsEverWritten { get; }

    /// <summary>Flows were written on under a third of the days with readings.</summary>
    public bool WritesOnlyExceptions { get; }

    /// <summary>The usual flow on most days with readings, L/min, at which the baseline is taken; null when never written.</summary>
    public double? Main { get; }

    /// <summary>True when readings without a flow are taken as usual oxygen on days without another flow.</summary>
    public bool TakesUnwrittenAsUsual => WritesOnlyExceptions || _daysOffUsual.Count == 0;

    public double? On(LocalDate day) => _records.Plan.Number(PlanItem.UsualOxygen, day) ?? MostWritten;

    public bool IsFromPlan(LocalDate day) => _records.Plan.Number(PlanItem.UsualOxygen, day) is not null;

    public FlowState StateOf(double? flow, LocalDate day)
    {
        if (flow is not { } written) return TakesUnwrittenAsUsual && !_daysOffUsual.Contains(day) ? FlowState.Usual : FlowState.Unknown;
        if (On(day) is not { } usual) return FlowState.Unknown;
        return written > usual + SameFlow ? FlowState.Above : written < usual - SameFlow ? FlowState.Below : FlowState.Usual;
    }

    /// <summary>Readings at rest: not marked as during or after a session; the middle of a range.</summary>
    public IReadOnlyList<RestingReading> RestingReadings() =>
    [
        .. _records.Checks.Where(c => c.Phase is CheckPhase.None or CheckPhase.Before).SelectMany(Resting).OrderBy(r => r.At),
    ];

    private IEnumerable<RestingReading> Resting(Check check)
    {
        if (check.SpO2 is not { } spO2) yield break;
        var day = _records.DayOf(check);
        yield return new(_records.Placed(check), day, (spO2 + (check.SpO2High ?? spO2)) / 2, StateOf(check.OxygenLitresPerMinute, day), check);
    }

    private static double? Mode(IEnumerable<(LocalDate Day, double Flow)> flows) =>
        flows.Distinct().GroupBy(f => f.Flow).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).Select(g => (double?)g.Key).FirstOrDefault();
}
