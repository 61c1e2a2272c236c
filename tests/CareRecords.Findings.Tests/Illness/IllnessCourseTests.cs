using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Tests.Illness;

public sealed class IllnessCourseTests
{
    private static readonly LocalDate First = new(2026, 3, 1);

    /// <summary>Ten well days, five ill ones with oxygen turned up, ten well days.</summary>
    private static ChildFindings Findings()
    {
        var log = new LogBuilder().Plan(PlanItem.UsualOxygen, "0.5").Plan(PlanItem.StopSaturation, "88").Plan(PlanItem.SessionsPerDay, "2").Plan(PlanItem.SessionsPerDay, "4", First.PlusDays(11));
        for (var n = 0; n < 25; n++)
        {
            var ill = n is >= 10 and < 15;
            log.On(First.PlusDays(n)).Session("08:00", perArea: 3).Session("18:00", perArea: 3);
            foreach (var at in new[] { "07:00", "12:00", "16:00", "21:00" }) log.Check(at, ill ? 91 : 96, ill ? n == 12 ? 1.5 : 1 : 0.5);
            if (n == 9) log.Sign("2026-03-11 01:00", SignKind.Cough);
            if (n == 10) log.Sign("09:00", SignKind.Unwell);
            if (n is >= 11 and < 18) log.Dose("10:30", "amoxicillin");
            if (n == 12) log.Check("13:00", 86, 1.5);
        }

        var built = log.Build();
        var beside = built.Entries.OfType<Dose>().First().Sources[0];
        return Reviewer.Review(built with
        {
            NotRecords =
            [
                new(SourceLine.InText(beside.File, beside.Line!.Value + 1, "rang the nurse, start the amoxicillin"), "a plan, advice or a list"),
                new(SourceLine.InText(beside.File, beside.Line!.Value + 1, "nursery shut"), "a remark"),
            ],
        });
    }

    [Fact]
    public void The_course_is_told_in_order_of_time_with_each_beginning_once()
    {
        var findings = Findings();
        var episode = Assert.Single(findings.Illness.Episodes);
        Assert.All(findings.Illness.Course, e => Assert.Equal(episode.Id, e.Episode));
        Assert.Equal(
            ["cough", "oxygen 1 L/min", "unwell", "plan: 4 sessions a day", "amoxicillin begun", "rang the nurse, start the amoxicillin", "oxygen 1.5 L/min", "SpO2 86 %, under the plan's stop value"],
            findings.Illness.Course.Select(e => e.What));
        // One in the morning still belongs to the care day before.
        Assert.Equal((First.PlusDays(9), new LocalTime(1, 0)), (findings.Illness.Course[0].Day, findings.Illness.Course[0].Clock));
        Assert.All(findings.Illness.Course, e => Assert.NotEmpty(e.Sources));
    }

    [Fact]
    public void Oxygen_above_usual_is_one_line_a_day()
    {
        var above = Findings().Flags.Where(f => f.Kind == FlagKind.OxygenAboveUsual).ToList();
        Assert.Equal(5, above.Count);
        Assert.Equal("oxygen 1 L/min, written 4 times from 07:00 to 21:00", above[0].What);
        Assert.Equal(4, above[0].Sources.Count);
        Assert.Equal("above the usual, 0.5 L/min", above[0].Why);
        Assert.Single(Findings().Flags, f => f.Kind == FlagKind.LowReading);
    }

    [Fact]
    public void Effort_counts_whole_days_and_night_sessions()
    {
        var log = new LogBuilder();
        log.On(First).Session("08:00", minutes: 12).Session("23:00", minutes: 10);
        log.On(First.PlusDays(1)).Session("08:00", minutes: 20).Session("22:00", minutes: 20).Session("2026-03-03 05:30", minutes: 2);
        log.On(First.PlusDays(3)).Session("08:00").Session("21:59", minutes: 15); // one session's minutes are not known: no total
        var effort = log.Review().Adherence.Effort.All;
        // 05:30 lies after the day's start at 04:00, so it is the third day's.
        Assert.Equal((3, 22d, 2d, 40d, 3), (effort.Days, effort.MedianMinutes, effort.LeastMinutes, effort.MostMinutes, effort.NightSessions));
    }
}
