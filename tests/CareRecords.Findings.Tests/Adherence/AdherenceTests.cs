using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Tests.Adherence;

public class AdherenceTests
{
    private static readonly LocalDate Monday = new(2026, 3, 2);

    /// <summary>Two sessions a day: the first 45 minutes after its feed, the second 20 on even days and without a feed log on odd ones.</summary>
    private static LogBuilder TwoWeeks(int days = 14)
    {
        var log = new LogBuilder().Plan(PlanItem.SessionsPerDay, "2").Plan(PlanItem.MinutesPerArea, "3");
        for (var n = 0; n < days; n++)
        {
            log.On(Monday.PlusDays(n)).Feed("06:00", "07:15").Session("08:00", perArea: 2, by: "mum");
            if (n % 2 == 0) log.Feed("20:00", "21:10");
            log.Session("21:30", perArea: 3, by: "dad");
        }

        return log;
    }

    [Fact]
    public void Kept_judged_and_unknown_are_counted_with_worst_and_best_case()
    {
        var share = TwoWeeks().Review().Adherence.Overall.FeedGap;
        Assert.Equal((14, 21, 7), (share.Kept, share.Judged, share.Unknown));
        Assert.Equal(14 / 21.0, share.Proportion!.Value, 12);
        Assert.Equal((0.5, 0.75), (share.WorstCase, share.BestCase));
        Assert.InRange(share.Proportion.Value, share.Low!.Value, share.High!.Value);
    }

    /// <summary>Wilson 1927 for 24 of 30: 0.63 to 0.90 (worked out in the trade's facts, two digits).</summary>
    [Fact]
    public void Plain_interval_is_wilson_s()
    {
        var verdicts = Enumerable.Range(0, 30).Select(i => (Monday.PlusDays(i), i < 24 ? GapVerdict.Kept : GapVerdict.Short));
        var share = Shares.Of(verdicts, new());
        Assert.Equal((0.63, 0.90), (Math.Round(share.PlainLow!.Value, 2), Math.Round(share.PlainHigh!.Value, 2)));
    }

    [Fact]
    public void Days_that_go_well_or_badly_as_a_whole_widen_the_interval()
    {
        var verdicts = Enumerable.Range(0, 30).SelectMany(d => Enumerable.Repeat((Monday.PlusDays(d), d % 2 == 0 ? GapVerdict.Kept : GapVerdict.Short), 4));
        var share = Shares.Of(verdicts, new());
        Assert.InRange(share.WidthRatio!.Value, 1.7, 2.3);
        Assert.StartsWith("day-cluster bootstrap", share.Method, StringComparison.Ordinal);
        Assert.True(share.High - share.Low > share.PlainHigh - share.PlainLow);
    }

    [Fact]
    public void Weeks_begin_on_monday_and_hold_all_sessions()
    {
        var weeks = TwoWeeks().Review().Adherence.ByWeek;
        Assert.Equal([Monday, Monday.PlusDays(7)], weeks.Select(w => w.From!.Value));
        Assert.Equal(28, weeks.Sum(w => w.FeedGap.Judged + w.FeedGap.Unknown));
    }

    [Fact]
    public void Sessions_and_minutes_stand_against_the_plan()
    {
        var overall = TwoWeeks().Review().Adherence.Overall;
        Assert.Equal((28d, 28d, 1d, 14), (overall.Sessions!.Done, overall.Sessions.Planned, overall.Sessions.Proportion, overall.Sessions.DaysCounted));
        Assert.Equal((14, 14), (overall.DaysAllDone!.Kept, overall.DaysAllDone.Judged));
        Assert.Equal(((6 * 14 * 2) + (6.0 * 14 * 3), 6.0 * 28 * 3), (overall.Minutes!.Done, overall.Minutes.Planned!.Value));
    }

    [Fact]
    public void Unwritten_day_is_unknown_and_not_missed()
    {
        var log = TwoWeeks();
        log.On(Monday.PlusDays(16)).Session("08:00").Session("20:00");
        var all = log.Review().Adherence.Overall;
        Assert.Equal((15, 15, 2), (all.DaysAllDone!.Kept, all.DaysAllDone.Judged, all.DaysAllDone.Unknown));
        Assert.Equal(30, all.Sessions!.Planned);
    }

    /// <summary>45 minutes less 2 × 10 may be under 30, and 20 plus 2 × 5 reaches it.</summary>
    [Fact]
    public void Verdicts_near_the_limit_flip_with_rounding()
    {
        var findings = TwoWeeks().Review();
        Assert.Equal([(5, 7), (10, 21)], findings.Adherence.Rounding.Select(r => (r.Minutes, r.FeedGapFlips)));
    }

    [Fact]
    public void Parts_of_the_day_and_writers_partition_the_sessions()
    {
        var adherence = TwoWeeks().Review().Adherence;
        Assert.Equal(["04:00–10:00", "16:00–22:00"], adherence.ByTimeOfDay.Select(g => g.Label));
        Assert.Equal([14, 14], adherence.ByWriter.Select(g => g.FeedGap.Judged + g.FeedGap.Unknown));
    }

    [Fact]
    public void Target_of_the_plan_is_tested_exactly()
    {
        var tests = TwoWeeks().Plan(PlanItem.TargetShareKept, "80").Review().Adherence.TargetTests;
        Assert.Equal(0.8, tests[0].Target);
        Assert.Equal(Statistics.BinomialTest.Against(14, 21, 0.8).Value.PValue, tests[0].PValue);
        Assert.Null(tests[1].PValue);
        Assert.Empty(TwoWeeks().Review().Adherence.TargetTests);
    }

    [Fact]
    public void Reasons_are_counted_apart_from_what_is_not_written()
    {
        var log = TwoWeeks(7).On(Monday).Omitted("14:00", "asleep").Omitted("15:00", "asleep").Omitted("16:00", null);
        var findings = log.Review();
        Assert.Equal([("not done: asleep", 2), ("not done, no reason written", 1)], findings.Adherence.Reasons);
        Assert.Equal((2, 1), (findings.Days[0].SessionsOmittedWithReason, findings.Days[0].SessionsOmittedWithoutReason));
    }

    [Fact]
    public void Areas_left_out_are_named()
    {
        var log = TwoWeeks();
        log.On(Monday.PlusDays(14)).Add(new Session
        {
            Start = log.At("08:00"),
            Areas = [new(Side.Left, ChestArea.Lower, Technique.Percussion, 3), new(Side.Left, ChestArea.Upper, Technique.Percussion, 3), new(Side.Left, ChestArea.Whole, Technique.Vibration, 2),
                new(Side.Right, ChestArea.Lower, Technique.Percussion, 3), new(Side.Right, ChestArea.Upper, Technique.Percussion, 0)],
            Sources = [SourceLine.InText("n", 1, "")],
        });
        Assert.Equal(["right upper percussion", "right vibration"], log.Review().Sessions[^1].AreasLeftOut.Order());
    }

    [Fact]
    public void Session_after_midnight_belongs_to_the_evening_before()
    {
        var findings = new LogBuilder().Session("2026-03-03 00:30").Review();
        Assert.Equal(Monday, findings.Sessions[0].CareDay);
        Assert.Equal((Monday, Monday), (findings.Span.From, findings.Span.To));
    }
}
