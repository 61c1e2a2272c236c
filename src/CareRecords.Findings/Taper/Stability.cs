using NodaTime;

namespace CareRecords.Findings;

/// <summary>
/// Hours stable before a moment: in band, on usual or unchanged oxygen, without a sign. A noted sign, saturation clearly
/// below usual at usual oxygen, and a change of oxygen to another flow than the usual each break it.
/// </summary>
internal sealed class Stability
{
    private static readonly Duration TellsFor = Duration.FromHours(48);

    private readonly List<Instant> _breaks;
    private readonly List<Instant> _telling;

    public Stability(ChildRecords records, IllnessByRecord illness)
    {
        _telling = [.. records.Checks.Where(c => c.SpO2 is not null || c.OxygenLitresPerMinute is not null).Select(records.Placed).Concat(illness.Signs.Select(s => s.At)).Order()];
        _breaks = [.. illness.Signs.Select(s => s.At).Concat(illness.Smoothed.Where(s => s.IsBelow).Select(s => s.At)).Concat(Changes(records, illness.Oxygen)).Order()];
    }

    /// <summary>The hours, counted from the last break or else from the first reading; null when nothing was written in the 48 hours before.</summary>
    public double? HoursBefore(Instant moment)
    {
        var before = _telling.FindLastIndex(t => t < moment);
        if (before < 0 || moment - _telling[before] > TellsFor) return null;
        var broken = _breaks.FindLastIndex(t => t < moment);
        return (moment - (broken < 0 ? _telling[0] : _breaks[broken])).TotalHours;
    }

    private static IEnumerable<Instant> Changes(ChildRecords records, UsualOxygen oxygen)
    {
        double? previous = null;
        foreach (var check in records.Checks)
        {
            if (check.OxygenLitresPerMinute is not { } flow) continue;
            if (flow != (previous ?? oxygen.On(records.DayOf(check))) && oxygen.StateOf(flow, records.DayOf(check)) != FlowState.Usual)
                yield return records.Placed(check);
            previous = flow;
        }
    }
}
