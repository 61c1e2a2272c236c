using NodaTime;

namespace CareRecords.Findings;

/// <summary>How many verdicts would no longer be certain if every written time carried a rounding error of so many minutes.</summary>
internal static class RoundingCheck
{
    public static RoundingSensitivity Of(ChildRecords records, IReadOnlyList<SessionFinding> sessions, int minutes)
    {
        var spread = Duration.FromMinutes(minutes);
        var feeds = new FeedGaps(records.AllFeeds, records.Clock, records.Plan, spread);
        var inhalers = new InhalerGaps(records.AllDoses, records.Clock, records.Plan, spread);
        return new(minutes,
            sessions.Count(s => s.FeedGap.Verdict != GapVerdict.Unknown && feeds.Of(s.Session).Verdict != s.FeedGap.Verdict),
            sessions.Count(s => s.InhalerGap.Verdict != GapVerdict.Unknown && inhalers.Of(s.Session).Verdict != s.InhalerGap.Verdict));
    }
}
