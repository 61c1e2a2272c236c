using NodaTime;

namespace CareRecords.Findings;

/// <summary>
/// The least and most minutes from the end of the last feed begun before a session to its start, over every reading of the
/// times: S is the start, and the gap is max(0, S − the latest end of the feeds begun before S). A feed that begins at the
/// session's very minute has not begun before it. A feed that ended more than twelve hours before does not count.
/// </summary>
/// <param name="Low">Least minutes; null when certainly no feed counts.</param>
/// <param name="High">Most minutes; null when possibly no feed counts.</param>
/// <param name="Feed">The feed that may have ended last; null when none counts.</param>
/// <param name="Running">A feed certainly ran at the start.</param>
internal sealed record FeedGapBounds(double? Low, double? High, FeedSpan? Feed, bool Running)
{
    /// <summary>Feeds further back than this do not count (definitions, feed gap).</summary>
    public const double SearchMinutes = 720;

    public static FeedGapBounds Of(InstantRange start, IReadOnlyList<FeedSpan> feeds)
    {
        var possible = feeds.Where(f => f.Begins.Earliest < start.Latest).ToList();
        var last = possible.MaxBy(f => f.Ends.Latest);
        if (last is null) return new(null, null, null, false);
        var low = Math.Max(0, (start.Earliest - last.Ends.Latest).TotalMinutes);
        if (low > SearchMinutes) return new(null, null, null, false);
        var running = possible.Exists(f => f.Begins.Latest < start.Earliest && f.Ends.Earliest > start.Latest);
        return new(low, Most(start, possible), last, running);
    }

    /// <summary>
    /// The longest gap: a late start after feeds that ended early, leaving out those that need not have begun. It is reached
    /// at the latest start or just as a feed must have begun.
    /// </summary>
    private static double? Most(InstantRange start, List<FeedSpan> possible)
    {
        var starts = possible.Select(f => f.Begins.Latest).Where(b => b >= start.Earliest && b < start.Latest).Append(start.Latest);
        var most = 0.0;
        foreach (var at in starts)
        {
            var ended = possible.Where(f => f.Begins.Latest < at).Select(f => f.Ends.Earliest).DefaultIfEmpty(Instant.MinValue).Max();
            if (ended == Instant.MinValue) return null;
            most = Math.Max(most, (at - ended).TotalMinutes);
        }

        return most > SearchMinutes ? null : most;
    }

    public GapVerdict Against(double limitMinutes) =>
        Low is not { } low || High is not { } high ? GapVerdict.Unknown
        : low >= limitMinutes ? GapVerdict.Kept
        : high < limitMinutes ? GapVerdict.Short
        : GapVerdict.Unknown;
}
