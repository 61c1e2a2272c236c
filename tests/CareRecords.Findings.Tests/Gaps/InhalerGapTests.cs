using CareRecords.Records;

namespace CareRecords.Findings.Tests.Gaps;

/// <summary>15 minutes before is common practice for a bronchodilator, no source; 60 and 240 are the definitions' window and reach.</summary>
public class InhalerGapTests
{
    private static readonly LogBuilder Day = new();

    private static InhalerGapFinding GapOf(LogBuilder log) => log.Review().Sessions[^1].InhalerGap;

    [Theory]
    [InlineData("09:45", GapVerdict.Kept)]
    [InlineData("09:46", GapVerdict.Short)]
    [InlineData("10:00", GapVerdict.Short)]
    [InlineData("09:00", GapVerdict.Kept)]
    [InlineData("08:59", GapVerdict.Early)]
    [InlineData("06:00", GapVerdict.Early)]
    [InlineData("05:59", GapVerdict.None)]
    [InlineData("10:01", GapVerdict.None)]
    public void Edges_of_the_zones(string dose, GapVerdict verdict) => Assert.Equal(verdict, GapOf(new LogBuilder().Dose(dose).Session("10:00")).Verdict);

    [Fact]
    public void Dose_that_would_satisfy_is_taken_before_a_nearer_one()
    {
        var gap = GapOf(new LogBuilder().Dose("09:30").Dose("09:55", "ipratropium").Session("10:00"));
        Assert.Equal((GapVerdict.Kept, "salbutamol", 30d), (gap.Verdict, gap.Medicine, gap.LowMinutes));
    }

    [Fact]
    public void Nearest_dose_decides_between_short_and_early() =>
        Assert.Equal(GapVerdict.Short, GapOf(new LogBuilder().Dose("07:00").Dose("09:50").Session("10:00")).Verdict);

    [Fact]
    public void Day_without_a_medicine_log_is_unknown_and_one_with_another_medicine_is_none()
    {
        Assert.Equal(GapVerdict.Unknown, GapOf(new LogBuilder().Session("10:00")).Verdict);
        Assert.Equal(GapVerdict.None, GapOf(new LogBuilder().Dose("09:30", "omeprazole").Session("10:00")).Verdict);
    }

    [Fact]
    public void Medicine_log_of_the_day_before_does_not_cover_today() =>
        Assert.Equal(GapVerdict.Unknown, GapOf(new LogBuilder().Dose("2026-03-09 12:00").Session("10:00")).Verdict);

    [Theory]
    [InlineData("09:30", GapVerdict.Unknown)]
    [InlineData("09:55", GapVerdict.Unknown)]
    [InlineData("11:00", GapVerdict.None)]
    public void Unnamed_medicine_that_may_be_the_inhaler_forbids_a_certain_none(string dose, GapVerdict verdict) =>
        Assert.Equal(verdict, GapOf(new LogBuilder().Dose(dose, Medicines.Unknown).Session("10:00")).Verdict);

    [Fact]
    public void Unnamed_medicine_forbids_a_certain_short_only_where_it_would_satisfy()
    {
        Assert.Equal(GapVerdict.Unknown, GapOf(new LogBuilder().Dose("09:50").Dose("09:30", Medicines.Unknown).Session("10:00")).Verdict);
        Assert.Equal(GapVerdict.Short, GapOf(new LogBuilder().Dose("09:50").Dose("09:58", Medicines.Unknown).Session("10:00")).Verdict);
        Assert.Equal(GapVerdict.Kept, GapOf(new LogBuilder().Dose("09:30").Dose("09:58", Medicines.Unknown).Session("10:00")).Verdict);
    }

    [Fact]
    public void Unnamed_medicine_by_mouth_is_no_inhaler() =>
        Assert.Equal(GapVerdict.None, GapOf(new LogBuilder().Dose("09:30", Medicines.Unknown, "oral").Session("10:00")).Verdict);

    [Fact]
    public void Plan_names_the_medicine()
    {
        LogBuilder Log(string plan) => new LogBuilder().Plan(PlanItem.MedicineBeforeSession, plan).Dose("09:30").Dose("09:55", "ipratropium").Session("10:00");
        Assert.Equal(GapVerdict.Short, GapOf(Log("ipratropium")).Verdict);
        Assert.Equal(GapVerdict.Kept, GapOf(Log("Salbutamol")).Verdict);
        Assert.Equal(GapVerdict.Kept, GapOf(Log("albuterol")).Verdict);
        Assert.Equal(GapVerdict.None, GapOf(Log("terbutaline")).Verdict);
        Assert.Equal(GapVerdict.Kept, GapOf(Log("salbutamol and ipratropium")).Verdict);
    }

    [Theory]
    [InlineData("09:30", "09:40", GapVerdict.Kept)]
    [InlineData("09:30", "09:46", GapVerdict.Unknown)]
    [InlineData("09:46", "09:59", GapVerdict.Short)]
    [InlineData("08:50", "09:05", GapVerdict.Unknown)]
    [InlineData("06:10", "08:50", GapVerdict.Early)]
    [InlineData("05:10", "05:50", GapVerdict.None)]
    [InlineData("09:50", "10:10", GapVerdict.Unknown)]
    public void Uncertain_dose(string earliest, string latest, GapVerdict verdict) =>
        Assert.Equal(verdict, GapOf(new LogBuilder().Dose(Day.Between(earliest, latest)).Session("10:00")).Verdict);

    [Fact]
    public void Uncertain_session_start_within_the_zone_of_one_dose_or_the_other_is_kept()
    {
        var log = new LogBuilder().Dose("08:30").Dose("09:15").Session(Day.Between("09:00", "10:00"));
        Assert.Equal(GapVerdict.Kept, GapOf(log).Verdict);
    }

    [Fact]
    public void Plan_without_a_medicine_before_sessions_gives_no_verdict() =>
        Assert.Equal(GapVerdict.Unknown, GapOf(new LogBuilder().Plan(PlanItem.MedicineBeforeSession, "none").Dose("09:30").Session("10:00")).Verdict);

    [Theory]
    [InlineData("hypertonic saline 3%", "09:50", true)]
    [InlineData("hypertonic saline 3%", "10:10", true)]
    [InlineData("hypertonic saline 3%", "10:30", false)]
    [InlineData("budesonide", "09:50", false)]
    [InlineData("budesonide", "10:20", true)]
    [InlineData("tobramycin inhaled", "10:30", true)]
    [InlineData("dornase alfa", "09:30", true)]
    public void Other_classes_get_an_order_check(string medicine, string at, bool inOrder)
    {
        var order = Assert.Single(new LogBuilder().Dose(at, medicine).Session("10:00", "10:20").Review().Sessions[0].Order);
        Assert.Equal(inOrder, order.InOrder);
    }

    [Fact]
    public void Order_cannot_be_told_when_the_session_s_end_is_not_written() =>
        Assert.Null(Assert.Single(new LogBuilder().Dose("10:20", "budesonide").Session("10:00").Review().Sessions[0].Order).InOrder);
}
