using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>
/// The readings before and after a session: one that says so within an hour, else an unmarked one within fifteen minutes;
/// of several the nearest.
/// </summary>
internal sealed class NearbyReadings
{
    private static readonly Duration Marked = Duration.FromHours(1);
    private static readonly Duration Unmarked = Duration.FromMinutes(15);

    private readonly ChildRecords _records;
    private readonly TimeIndex<(Instant At, Check Check)> _checks;

    public NearbyReadings(ChildRecords records)
    {
        _records = records;
        _checks = new(records.Checks.Where(c => c.SpO2 is not null && c.When.Precision is not (TimePrecision.PartOfDay or TimePrecision.DayOnly))
            .Select(c => (records.Placed(c), c)).Select(p => (InstantRange.At(p.Item1), p)));
    }

    public (SaturationReading? Before, SaturationReading? After) Around(Session session)
    {
        var start = _records.Placed(session);
        var end = SessionSpan.Place(session, _records.Clock).Ends.Latest;
        end = session.End is { } written ? _records.Clock.Stated(written.Stated) : session.TotalMinutes is { } m ? start + Duration.FromMinutes(m) : end;
        var near = _checks.Touching(start - Marked, end + Marked).ToList();
        return (
            Nearest(near.Where(c => c.Check.Phase == CheckPhase.Before ? c.At <= end : c.Check.Phase == CheckPhase.None && c.At <= start && c.At >= start - Unmarked), start),
            Nearest(near.Where(c => c.Check.Phase == CheckPhase.After ? c.At >= start : c.Check.Phase == CheckPhase.None && c.At >= end && c.At <= end + Unmarked), end));
    }

    private static SaturationReading? Nearest(IEnumerable<(Instant At, Check Check)> checks, Instant to)
    {
        var found = checks.OrderBy(c => c.Check.Phase == CheckPhase.None).ThenBy(c => Math.Abs((c.At - to).TotalMinutes)).Select(c => c.Check).FirstOrDefault();
        return found?.SpO2 is { } spO2 ? new(spO2, found.OxygenLitresPerMinute) : null;
    }
}
