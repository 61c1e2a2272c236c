using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>How long before a moment the child had been stable, what the hours are counted from, and the oxygen at that moment.</summary>
/// <param name="Hours">Hours, counted from the last break or else from the first reading.</param>
/// <param name="InWords">From what, and whether oxygen was above usual.</param>
internal readonly record struct StableTime(double Hours, string InWords);

/// <summary>
/// Hours stable before a moment: in band, on usual or unchanged oxygen, without a sign. A noted sign, saturation clearly
/// below usual at usual oxygen, and a change of oxygen to another flow than the usual each break it.
/// </summary>
internal sealed class Stability
{
    private static readonly Duration TellsFor = Duration.FromHours(48);

    private readonly ChildRecords _records;
    private readonly UsualOxygen _oxygen;
    private readonly List<(Instant At, string What)> _breaks;
    private readonly List<(Instant At, string What)> _backToUsual;
    private readonly List<Instant> _telling;

    public Stability(ChildRecords records, IllnessByRecord illness)
    {
        (_records, _oxygen) = (records, illness.Oxygen);
        _telling = [.. records.Checks.Where(c => c.SpO2 is not null || c.OxygenLitresPerMinute is not null).Select(records.Placed).Concat(illness.Signs.Select(s => s.At)).Order()];
        var signs = illness.Signs.Select(s => (s.At, $"{s.What}, {When(s.At, exact: false)}"));
        var low = illness.Smoothed.Where(s => s.IsBelow).Select(s => (s.At, $"saturation below usual, {When(s.At, exact: false)}"));
        var changes = Changes().ToList();
        _breaks = [.. signs.Concat(low).Concat(changes.Where(c => !c.ToUsual).Select(c => (c.At, c.What))).OrderBy(b => b.At)];
        _backToUsual = [.. changes.Where(c => c.ToUsual).Select(c => (c.At, c.What))];
    }

    /// <summary>Null when nothing was written in the 48 hours before.</summary>
    public StableTime? Before(Instant moment)
    {
        var before = _telling.FindLastIndex(t => t < moment);
        if (before < 0 || moment - _telling[before] > TellsFor) return null;
        var broken = _breaks.FindLastIndex(b => b.At < moment);
        var (from, what) = broken < 0 ? (_telling[0], "the first reading, " + When(_telling[0], exact: false)) : _breaks[broken];
        return new((moment - from).TotalHours, $"from {what}; {BackToUsual(from, moment) ?? OxygenAt(moment)}");
    }

    /// <summary>A reader who sees oxygen change after the hours begin is told why they run on; null when it did not come back to usual in them.</summary>
    private string? BackToUsual(Instant from, Instant moment)
    {
        var last = _backToUsual.FindLastIndex(b => b.At > from && b.At < moment);
        return last < 0 ? null : $"coming back to usual does not break them ({_backToUsual[last].What})";
    }

    private string OxygenAt(Instant moment)
    {
        if (_records.Checks.LastOrDefault(c => c.OxygenLitresPerMinute is not null && _records.Placed(c) < moment) is not { OxygenLitresPerMinute: { } flow } last)
            return "oxygen not written";
        var state = _oxygen.StateOf(flow, _records.DayOf(last)) switch { FlowState.Above => ", above usual", FlowState.Usual => ", the usual", _ => "" };
        return $"last written on {Words.Flow(flow)}{state}";
    }

    private IEnumerable<(Instant At, string What, bool ToUsual)> Changes()
    {
        double? previous = null;
        var clocked = _records.Checks.Where(c => c.OxygenLitresPerMinute is not null && c.When.Precision != TimePrecision.DayOnly).Select(_records.DayOf).ToHashSet();
        foreach (var check in _records.Checks)
        {
            // A flow for the whole day has no place among flows with a clock.
            if (check.OxygenLitresPerMinute is not { } flow || (check.When.Precision == TimePrecision.DayOnly && clocked.Contains(_records.DayOf(check)))) continue;
            if (flow != (previous ?? _oxygen.On(_records.DayOf(check))))
            {
                var toUsual = _oxygen.StateOf(flow, _records.DayOf(check)) == FlowState.Usual;
                yield return (_records.Placed(check), $"{(toUsual ? "" : "oxygen ")}{Words.Flow(flow)}, {When(_records.Placed(check), check.When.IsExact)}", toUsual);
            }

            previous = flow;
        }
    }

    /// <summary>The day, with its clock only where one was written.</summary>
    private string When(Instant at, bool exact)
    {
        var local = at.InZone(_records.Clock.Zone).LocalDateTime;
        return exact ? $"{Words.ShortDay(local.Date)} {Words.Clock(local)}" : Words.ShortDay(local.Date);
    }
}
