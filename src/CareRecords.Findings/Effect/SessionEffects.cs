using CareRecords.Statistics;

namespace CareRecords.Findings;

/// <summary>
/// Saturation after less before the same session at the same written oxygen: Hodges-Lehmann with its signed-rank interval;
/// beyond <see cref="MostForPairs"/> sessions, whose pairwise means no longer fit, the median with its sign-test interval.
/// Pairs without a flow on both sides count only in families that take unwritten oxygen as usual.
/// </summary>
internal static class SessionEffects
{
    private const int MostForPairs = 2000;

    private const string Note =
        "One reading of an oximeter may be 2 to 4 points off (ISO 80601-2-61: Arms up to 4 %), and sessions are often done when a reading is low: "
        + "a low reading tends to be followed by a higher one whatever is done between.";

    public static SessionEffect Of(IReadOnlyList<SessionFinding> sessions, UsualOxygen oxygen)
    {
        var (pairs, leftOut) = (new List<(double? Flow, double Change)>(), 0);
        foreach (var session in sessions)
        {
            if (session.Before is not { } before || session.After is not { } after) continue;
            if (FlowOf(session, before, oxygen) is { Known: true } b && FlowOf(session, after, oxygen) is { Known: true } a && b.Flow == a.Flow)
                pairs.Add((b.Flow, after.SpO2 - before.SpO2));
            else leftOut++;
        }

        var all = Change([.. pairs.Select(p => p.Change)]);
        var byFlow = pairs.Where(p => p.Flow is not null).GroupBy(p => p.Flow!.Value).OrderBy(g => g.Key).Select(g =>
        {
            var change = Change([.. g.Select(p => p.Change)]);
            return change.TryGet(out var c) ? new SessionEffectAtFlow(g.Key, g.Count(), c.Value, c.Low, c.High) : new(g.Key, g.Count(), null, null, null);
        });
        return all.TryGet(out var change)
            ? new(pairs.Count, leftOut, change.Value, change.Low, change.High, change.Level, change.Method, Note, [.. byFlow])
            : new(pairs.Count, leftOut, null, null, null, null, all.Missing!.ToString(), Note, [.. byFlow]);
    }

    private static Outcome<Estimate> Change(IReadOnlyCollection<double> changes) =>
        changes.Count > MostForPairs ? MedianInterval.Of(changes) : SignedRank.Interval(changes);

    /// <summary>The flow of a reading; null and known where oxygen was never written at all.</summary>
    private static (bool Known, double? Flow) FlowOf(SessionFinding session, SaturationReading reading, UsualOxygen oxygen) =>
        reading.OxygenLitresPerMinute is { } flow ? (true, flow)
        : oxygen.StateOf(null, session.CareDay) == FlowState.Usual ? (true, oxygen.On(session.CareDay))
        : (false, null);
}
