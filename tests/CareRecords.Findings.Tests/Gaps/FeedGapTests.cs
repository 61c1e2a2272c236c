using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Tests.Gaps;

/// <summary>Limits of 30 minutes are common practice for a pump feed, no source; a family's plan comes first.</summary>
public class FeedGapTests
{
    private static readonly LogBuilder Day = new();

    private static FeedGapFinding GapOf(LogBuilder log) => log.Review().Sessions[^1].FeedGap;

    [Theory]
    [InlineData("08:30", GapVerdict.Kept, 30)]
    [InlineData("08:29", GapVerdict.Short, 29)]
    [InlineData("08:31", GapVerdict.Kept, 31)]
    [InlineData("08:00", GapVerdict.Short, 0)]
    [InlineData("20:00", GapVerdict.Kept, 720)]
    public void Exactly_the_limit_is_kept(string session, GapVerdict verdict, double minutes)
    {
        var gap = GapOf(new LogBuilder().Feed("07:00", "08:00").Session(session));
        Assert.Equal((verdict, minutes, minutes), (gap.Verdict, gap.LowMinutes, gap.HighMinutes));
        Assert.True(gap.LimitIsDefault);
    }

    [Fact]
    public void Feed_running_at_the_start_is_zero_and_flagged()
    {
        var findings = new LogBuilder().Feed("07:00", "08:00").Session("07:40").Review();
        var gap = findings.Sessions[0].FeedGap;
        Assert.Equal((GapVerdict.Short, 0d, 0d, true), (gap.Verdict, gap.LowMinutes, gap.HighMinutes, gap.FeedRunning));
        Assert.Contains(findings.Flags, f => f.Why.StartsWith("feed running", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("08:29", GapVerdict.Unknown, 29, 89)]
    [InlineData("08:30", GapVerdict.Kept, 30, 90)]
    [InlineData("08:29", GapVerdict.Unknown, 29, 89, "60")]
    [InlineData("09:29", GapVerdict.Unknown, 29, 149, "120")]
    [InlineData("07:20", GapVerdict.Short, 0, 20)]
    [InlineData("08:30", GapVerdict.Kept, 60, 90, "30")]
    [InlineData("09:30", GapVerdict.Kept, 90, 150, "60")]
    public void Feed_with_only_a_start_ends_within_the_usual_minutes(string session, GapVerdict verdict, double low, double high, string? usual = null)
    {
        var log = new LogBuilder().Feed("07:00", null).Session(session);
        if (usual is not null) log.Plan(PlanItem.UsualFeedMinutes, usual);
        var gap = GapOf(log);
        Assert.Equal((verdict, low, high), (gap.Verdict, gap.LowMinutes, gap.HighMinutes));
    }

    [Fact]
    public void Feed_with_only_an_end_before_the_session_is_judged_by_that_end()
    {
        Assert.Equal(GapVerdict.Kept, GapOf(new LogBuilder().Feed(null, "06:00").Session("06:35")).Verdict);
        Assert.Equal(GapVerdict.Short, GapOf(new LogBuilder().Feed(null, "06:00").Session("06:20")).Verdict);
    }

    [Fact]
    public void Feed_with_only_an_end_after_the_session_may_have_been_running()
    {
        var gap = GapOf(new LogBuilder().Feed("03:00", "04:00").Feed(null, "06:00").Session("05:40"));
        Assert.Equal((GapVerdict.Unknown, 0d, 100d, false), (gap.Verdict, gap.LowMinutes, gap.HighMinutes, gap.FeedRunning));
    }

    [Fact]
    public void Feed_that_may_have_begun_before_or_after_the_start_makes_the_gap_unknown()
    {
        var gap = GapOf(new LogBuilder().Feed("04:00", "05:00").Feed(Day.Between("07:50", "08:10"), Day.Between("08:40", "08:50")).Session("08:00"));
        Assert.Equal((GapVerdict.Unknown, 0d, 180d), (gap.Verdict, gap.LowMinutes, gap.HighMinutes));
    }

    [Fact]
    public void Session_with_an_uncertain_start_is_judged_over_all_of_it()
    {
        Assert.Equal(GapVerdict.Kept, GapOf(new LogBuilder().Feed("07:00", "08:00").Session(Day.Between("08:30", "09:00"))).Verdict);
        Assert.Equal(GapVerdict.Unknown, GapOf(new LogBuilder().Feed("07:00", "08:00").Session(Day.Between("08:29", "09:00"))).Verdict);
        Assert.Equal(GapVerdict.Short, GapOf(new LogBuilder().Feed("07:00", "08:00").Session(Day.Between("08:01", "08:29"))).Verdict);
    }

    [Fact]
    public void No_feed_in_twelve_hours_is_unknown_and_never_kept()
    {
        foreach (var gap in new[] { GapOf(new LogBuilder().Session("08:00")), GapOf(new LogBuilder().Feed("06:00", "07:00").Session("19:01")) })
            Assert.Equal((GapVerdict.Unknown, (double?)null, (double?)null), (gap.Verdict, gap.LowMinutes, gap.HighMinutes));
    }

    [Fact]
    public void Feed_that_may_lie_beyond_twelve_hours_leaves_the_gap_unknown()
    {
        var gap = GapOf(new LogBuilder().Feed(Day.Between("05:00", "05:00"), Day.Between("07:30", "08:30")).Session("20:00"));
        Assert.Equal((GapVerdict.Unknown, (double?)690, (double?)null), (gap.Verdict, gap.LowMinutes, gap.HighMinutes));
    }

    [Fact]
    public void Feed_begun_at_the_session_s_own_minute_has_not_begun_before_it()
    {
        var gap = GapOf(new LogBuilder().Feed("05:00", "06:00").Feed("08:00", "08:30").Session("08:00"));
        Assert.Equal((GapVerdict.Kept, 120d), (gap.Verdict, gap.LowMinutes));
    }

    [Fact]
    public void Long_pump_feed_under_a_short_bolus_still_ends_last()
    {
        var gap = GapOf(new LogBuilder().Feed("04:30", "07:30").Feed("06:00", "06:10", FeedRoute.BolusTube).Session("07:45"));
        Assert.Equal((GapVerdict.Short, 15d), (gap.Verdict, gap.LowMinutes));
    }

    [Fact]
    public void Volume_over_rate_says_how_long_a_feed_without_an_end_may_run()
    {
        var feed = new Feed { Start = Day.At("2026-03-09 22:00"), Millilitres = 400, MillilitresPerHour = 50, Route = FeedRoute.PumpedTube, Sources = [SourceLine.InText("n", 1, "")] };
        var gap = GapOf(new LogBuilder().Add(feed).Session("06:10"));
        Assert.Equal((GapVerdict.Unknown, 10d, 490d), (gap.Verdict, gap.LowMinutes, gap.HighMinutes));
    }

    [Fact]
    public void Plan_s_limit_holds_from_its_date()
    {
        var log = new LogBuilder().Plan(PlanItem.FeedGapMinutes, "60", new LocalDate(2026, 3, 11));
        log.On(new(2026, 3, 10)).Feed("07:00", "08:00").Session("08:45").On(new(2026, 3, 11)).Feed("07:00", "08:00").Session("08:45");
        Assert.Equal([GapVerdict.Kept, GapVerdict.Short], log.Review().Sessions.Select(s => s.FeedGap.Verdict));
    }

    [Fact]
    public void Autumn_change_between_feed_and_session_adds_its_hour()
    {
        var gap = GapOf(new LogBuilder { Zone = "Europe/Dublin" }.Feed("2025-10-25 23:50", "2025-10-26 00:30").Session("2025-10-26 02:30"));
        Assert.Equal((GapVerdict.Kept, 180d, 180d), (gap.Verdict, gap.LowMinutes, gap.HighMinutes));
    }

    [Fact]
    public void Spring_change_between_feed_and_session_takes_its_hour_away()
    {
        var gap = GapOf(new LogBuilder { Zone = "Europe/Dublin" }.Plan(PlanItem.FeedGapMinutes, "60").Feed("2025-03-29 23:50", "2025-03-30 00:30").Session("2025-03-30 02:15"));
        Assert.Equal((GapVerdict.Short, 45d, 45d), (gap.Verdict, gap.LowMinutes, gap.HighMinutes));
    }

    [Fact]
    public void Repeated_hour_can_be_either_pass()
    {
        var gap = GapOf(new LogBuilder { Zone = "Europe/Dublin" }.Feed("2025-10-25 23:50", "2025-10-26 00:50").Session("2025-10-26 01:10"));
        Assert.Equal((GapVerdict.Unknown, 20d, 80d), (gap.Verdict, gap.LowMinutes, gap.HighMinutes));
    }
}
