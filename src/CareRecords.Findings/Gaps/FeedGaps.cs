using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Feed gaps of sessions: the three-valued verdict, its interval and a sentence.</summary>
internal sealed class FeedGaps
{
    private readonly ElapsedTime _clock;
    private readonly PlanByDay _plan;
    private readonly Duration _spread;
    private readonly TimeIndex<FeedSpan> _feeds;

    public FeedGaps(IEnumerable<Feed> feeds, ElapsedTime clock, PlanByDay plan, Duration spread)
    {
        (_clock, _plan, _spread) = (clock, plan, spread);
        _feeds = new(feeds.Select(f => FeedSpan.Place(f, clock, plan.Number(PlanItem.UsualFeedMinutes, plan.DayOf(f.When)) ?? 60, spread))
            .Select(f => (f.Whole, f)));
    }

    public FeedGapFinding Of(Session session)
    {
        var start = _clock.Of(session.When).WidenedBy(_spread);
        List<FeedSpan> near = [.. _feeds.Touching(start.Earliest - Duration.FromMinutes(FeedGapBounds.SearchMinutes), start.Latest)];
        var bounds = FeedGapBounds.Of(start, near);
        var limit = _plan.Required(PlanItem.FeedGapMinutes, _plan.DayOf(session.When), 30);
        var verdict = bounds.Against(limit.Value);
        return new(bounds.Low, bounds.High, limit.Value, limit.IsDefault, verdict, Why(bounds, verdict, limit.Value, start), bounds.Feed?.Feed, bounds.Running);
    }

    private static string Why(FeedGapBounds bounds, GapVerdict verdict, double limit, InstantRange start)
    {
        if (bounds.Low is not { } low || bounds.Feed is not { } feed) return "no feed was written in the 12 hours before";
        if (bounds.Running) return "a feed was running when the session started";
        if (bounds.High is not { } high) return $"a feed may have ended {Words.Whole(low)} minutes before or more, or there may have been none in the 12 hours before";
        var gap = $"{Words.Minutes(low, high)} from the end of the feed";
        if (verdict == GapVerdict.Kept) return $"{gap}: {Words.Number(limit)} or more";
        if (verdict == GapVerdict.Short) return $"{gap}: under {Words.Number(limit)}";
        var because = feed.Feed.End is null ? "its end was not written"
            : feed.Begins.Latest >= start.Earliest ? "the feed may have begun before or after the session's start"
            : "the times are not exact enough";
        return $"{gap}, on both sides of {Words.Number(limit)}: {because}";
    }
}
