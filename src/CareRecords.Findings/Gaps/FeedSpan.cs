using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>A feed on the time line. A missing end or start is bounded by how long a feed may take.</summary>
/// <param name="Begins">When it began.</param>
/// <param name="Ends">When it ended.</param>
/// <param name="Feed">The feed as written.</param>
internal sealed record FeedSpan(InstantRange Begins, InstantRange Ends, Feed Feed)
{
    public InstantRange Whole => new(Begins.Earliest, Ends.Latest);

    /// <summary>
    /// Places a feed. Only a start: it ends between that start and the longest it may take later; only an end: it began as
    /// long before. The longest is the plan's usual feed minutes, or volume over rate where that is longer; a rate without
    /// a volume and without an end may run for the whole search window.
    /// </summary>
    /// <param name="feed">The feed.</param>
    /// <param name="clock">The child's time line.</param>
    /// <param name="usualMinutes">Usual feed minutes.</param>
    /// <param name="spread">Room given to every written time, for the rounding check; zero for the verdicts.</param>
    public static FeedSpan Place(Feed feed, ElapsedTime clock, double usualMinutes, Duration spread)
    {
        var longest = Duration.FromMinutes(LongestMinutes(feed, usualMinutes));
        InstantRange? start = feed.Start is { } s ? clock.Of(s).WidenedBy(spread) : null;
        InstantRange? end = feed.End is { } e ? clock.Of(e).WidenedBy(spread) : null;
        return (start, end) switch
        {
            ({ } a, { } b) when b.Latest >= a.Earliest => new(a.UpTo(b.Latest), b.From(a.Earliest), feed),
            ({ } a, _) => new(a, new(a.Earliest, a.Latest + longest), feed),
            (null, { } b) => new(new(b.Earliest - longest, b.Latest), b, feed),
            _ => throw new ArgumentException("A feed has a start or an end.", nameof(feed)),
        };
    }

    private static double LongestMinutes(Feed feed, double usualMinutes) => feed switch
    {
        { MillilitresPerHour: > 0 and { } rate, Millilitres: { } ml } => Math.Max(usualMinutes, 60 * ml / rate),
        { MillilitresPerHour: > 0, End: null } => Math.Max(usualMinutes, FeedGapBounds.SearchMinutes),
        _ => usualMinutes,
    };
}
