using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Tests.Adherence;

/// <summary>Minutes against a plan that may set parts of the chest apart; what nobody wrote is neither done nor missed.</summary>
public class MinutesAgainstPlanTests
{
    private static readonly LocalDate Monday = new(2026, 3, 2);

    private static AreaMinutes Part(Side side, ChestArea area, double? minutes, Technique technique = Technique.Percussion) => new(side, area, technique, minutes);

    private static AreaMinutes[] Areas(double lower, double upper, double? vibration) =>
    [
        .. from side in new[] { Side.Left, Side.Right }
           from part in new[] { Part(side, ChestArea.Lower, lower), Part(side, ChestArea.Upper, upper), Part(side, ChestArea.Unknown, vibration, Technique.Vibration) }
           where part.Technique != Technique.Vibration || vibration is not null
           select part,
    ];

    /// <summary>Eight days of two full rounds (lower 4, upper 3, vibration 1 each side: 16 minutes), then one more session.</summary>
    private static ChildFindings Review(AreaMinutes[] last, double? total = null, params (PlanItem Item, string Value)[] plan)
    {
        var log = new LogBuilder();
        foreach (var (item, value) in plan) log.Plan(item, value);
        for (var n = 0; n < 8; n++)
        {
            foreach (var at in new[] { "08:00", "18:00" }) log.On(Monday.PlusDays(n)).Add(Session(log, at, Areas(4, 3, 1)));
        }

        return log.On(Monday.PlusDays(8)).Add(Session(log, "08:00", last, total)).Review();
    }

    private static Session Session(LogBuilder log, string at, AreaMinutes[] areas, double? total = null) =>
        new() { Start = log.At(at), Areas = areas, MinutesWritten = total, Sources = [SourceLine.InText("notes.txt", 1, "session")] };

    private static (PlanItem, string)[] ByPart => [(PlanItem.MinutesPerArea, "3"), (PlanItem.MinutesLower, "4"), (PlanItem.MinutesVibration, "1")];

    [Fact]
    public void Lower_four_and_upper_three_as_planned_are_no_shortfall()
    {
        var findings = Review(Areas(4, 3, 1), null, ByPart);
        Assert.Equal((17 * 16.0, 17 * 16.0, 0.0), (findings.Adherence.Overall.Minutes!.Done, findings.Adherence.Overall.Minutes.Planned, findings.Adherence.Overall.Minutes.NotWritten));
        Assert.Equal((3.0, 3.0), (findings.Days[0].MinutesPerArea, findings.Days[0].MinutesPerAreaPlanned));
        Assert.All(findings.Taper.Done, s => Assert.Null(s.DiffersFromPlan));
        Assert.Equal(new PartMinutes(4, 3, 1), Assert.Single(findings.Taper.Planned).Parts);
    }

    [Fact]
    public void A_plan_of_one_number_still_holds_for_every_part()
    {
        var findings = Review(Areas(4, 3, 1), null, (PlanItem.MinutesPerArea, "4"));
        Assert.Equal((17 * 16.0, 17 * 24.0), (findings.Adherence.Overall.Minutes!.Done, findings.Adherence.Overall.Minutes.Planned));
        Assert.Null(Assert.Single(findings.Taper.Planned).Parts);
    }

    [Fact]
    public void Parts_that_nobody_wrote_are_unknown_and_not_zero()
    {
        var minutes = Review(Areas(4, 3, null), null, ByPart).Adherence.Overall.Minutes!;
        Assert.Equal((16 * 16) + 14.0, minutes.Done);
        Assert.Equal(minutes.Done, minutes.Planned);
        Assert.Equal((2.0, 1.0), (minutes.NotWritten, minutes.Proportion));
        Assert.Equal(minutes.Done / (17 * 16), minutes.WorstCase!.Value, 12);
    }

    [Fact]
    public void A_part_written_as_zero_was_left_out()
    {
        var against = Review(Areas(4, 0, 1), null, ByPart).Sessions[^1].AgainstPlan!;
        Assert.Equal((10.0, 16.0, 0.0), (against.Done, against.Planned, against.NotWritten));
    }

    [Fact]
    public void Minutes_whose_side_is_not_said_fill_neither_side()
    {
        var against = Review([.. Areas(4, 3, null), Part(Side.Unknown, ChestArea.Unknown, 1, Technique.Vibration)], null, ByPart).Sessions[^1].AgainstPlan!;
        Assert.Equal((14.0, 14.0, 2.0), (against.Done, against.Planned, against.NotWritten));
    }

    [Fact]
    public void A_written_total_is_set_against_the_whole_round_and_nothing_written_against_nothing()
    {
        var total = Review([], 20, ByPart).Sessions[^1].AgainstPlan!;
        Assert.Equal((20.0, 16.0, 0.0), (total.Done, total.Planned, total.NotWritten));
        var nothing = Review([], null, ByPart).Sessions[^1].AgainstPlan!;
        Assert.Equal((null, 0.0, 16.0), (nothing.Done, nothing.Planned, nothing.NotWritten));
    }

    [Fact]
    public void A_total_is_not_set_against_a_plan_of_some_parts()
    {
        var against = Review([], 20, (PlanItem.MinutesLower, "4")).Sessions[^1].AgainstPlan!;
        Assert.Equal((null, 0.0, 8.0), (against.Done, against.Planned, against.NotWritten));
    }
}
