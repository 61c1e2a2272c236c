using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>A session on the time line: its end as written, else its start and minutes, else within an hour of its start.</summary>
/// <param name="Starts">When it started.</param>
/// <param name="Ends">When it ended.</param>
internal readonly record struct SessionSpan(InstantRange Starts, InstantRange Ends)
{
    public InstantRange Whole => new(Starts.Earliest, Ends.Latest);

    public static SessionSpan Place(Session session, ElapsedTime clock)
    {
        var start = clock.Of(session.When);
        if (session.End is { } end && clock.Of(end) is var ends && ends.Latest >= start.Earliest) return new(start.UpTo(ends.Latest), ends.From(start.Earliest));
        if (session.TotalMinutes is { } minutes) return new(start, new(start.Earliest + Duration.FromMinutes(minutes), start.Latest + Duration.FromMinutes(minutes)));
        return new(start, new(start.Earliest, start.Latest + Duration.FromHours(1)));
    }
}
