using CareRecords.Findings;
using CareRecords.Workbooks.Charts.Paper;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>A session's gap on a page's axes; minutes. Null bounds: nothing can be said.</summary>
internal readonly record struct GapPoint(
    double X, double? Low, double? High, GapVerdict Verdict, double Limit, double? Window, bool LimitIsDefault);

/// <summary>The gaps of one panel and the minutes at its top, beyond which a gap is only told to be longer.</summary>
internal sealed record Gaps(IReadOnlyList<GapPoint> Points, double Top)
{
    private const double TopInLimits = 4;
    private const double TopInWindows = 2;

    public static Gaps OfFeeds(ChildFindings findings, DayScale days)
    {
        var points = new List<GapPoint>(findings.Sessions.Count);
        var top = 0.0;
        foreach (var session in findings.Sessions)
        {
            var gap = session.FeedGap;
            points.Add(new GapPoint(days.Of(session.Start), gap.LowMinutes, gap.HighMinutes, gap.Verdict, gap.LimitMinutes, null, gap.LimitIsDefault));
            top = Math.Max(top, gap.LimitMinutes * TopInLimits);
        }
        return new Gaps(points, Math.Max(top, 1));
    }

    public static Gaps OfInhalers(ChildFindings findings, DayScale days)
    {
        var points = new List<GapPoint>(findings.Sessions.Count);
        var top = 0.0;
        foreach (var session in findings.Sessions)
        {
            var gap = session.InhalerGap;
            points.Add(new GapPoint(days.Of(session.Start), gap.LowMinutes, gap.HighMinutes, gap.Verdict, gap.LimitMinutes, gap.WindowMinutes, gap.LimitIsDefault));
            top = Math.Max(top, gap.WindowMinutes * TopInWindows);
        }
        return new Gaps(points, Math.Max(top, 1));
    }
}
