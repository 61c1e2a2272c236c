using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Tests.Taper;

public class TaperTests
{
    private static readonly LocalDate First = new(2026, 2, 1);

    /// <summary>Well for 20 days at 2 sessions; ill from day 20 to 25 with 5; then 4, 3 and 2, four days each, and on.</summary>
    private static LogBuilder Wean(Action<LogBuilder, int>? more = null, int days = 60)
    {
        var log = new LogBuilder();
        for (var n = 0; n < days; n++)
        {
            log.On(First.PlusDays(n));
            var (sessions, minutes) = n switch { < 20 => (2, 2.5), < 26 => (5, 3.0), < 30 => (4, 3.0), < 34 => (3, 3.0), _ => (2, 2.5) };
            for (var i = 0; i < sessions; i++) log.Session($"{8 + (3 * i):00}:10", perArea: minutes);
            foreach (var at in new[] { "08:00", "12:00", "16:00", "20:00" }) log.Check(at, n is >= 20 and < 24 ? 91 : 96, 0.5);
            more?.Invoke(log, n);
        }

        return log;
    }

    [Fact]
    public void Steps_as_done_are_found_on_their_days()
    {
        var findings = Wean().Review();
        Assert.Equal([0, 20, 26, 30, 34], findings.Taper.Done.Select(s => Period.DaysBetween(First, s.From)));
        Assert.Equal([2, 5, 4, 3, 2], findings.Taper.Done.Select(s => s.SessionsPerDay));
        Assert.Equal([StepDirection.Same, StepDirection.Up, StepDirection.Down, StepDirection.Down, StepDirection.Down], findings.Taper.Done.Select(s => s.Direction));
        Assert.Equal([20, 6, 4, 4, 26], findings.Taper.Done.Select(s => s.DaysHeld));
    }

    [Fact]
    public void Steps_carry_their_episode_and_what_followed()
    {
        var findings = Wean().Review();
        var (down, onset) = (findings.Taper.Done[2], Assert.Single(findings.Illness.Episodes).Onset);
        Assert.InRange(Period.DaysBetween(First, onset), 19, 20);
        Assert.Equal(("E1", 26 - Period.DaysBetween(First, onset), StepOutcome.Steady), (down.Episode, down.DayOfEpisode, down.FollowedBy));
        Assert.InRange(down.StableHoursBefore!.Value, 24, 72);
        Assert.Equal(34 - Period.DaysBetween(First, onset), findings.Illness.Episodes[0].BackToMaintenanceDays);
        Assert.StartsWith("E1: from 5 sessions a day of 3 minutes an area down to 2 sessions a day of 2.5 minutes an area in 3 steps", findings.Taper.WeanInWords, StringComparison.Ordinal);
        Assert.Equal("S5", findings.Days[40].Step);
    }

    [Fact]
    public void What_followed_within_fourteen_and_thirty_days_stands_beside_the_seven()
    {
        var steps = Wean((log, n) =>
        {
            if (n >= 40) for (var i = 0; i < 3; i++) log.Session($"{9 + (3 * i):00}:40", perArea: 2.5);
        }).Review().Taper.Done;
        var third = steps[3];
        Assert.Equal((30, 40), (Period.DaysBetween(First, third.From), Period.DaysBetween(First, steps[5].From)));
        Assert.Equal((StepOutcome.Steady, StepOutcome.Setback, StepOutcome.Setback), (third.FollowedBy, third.FollowedWithin14, third.FollowedWithin30));
        Assert.Equal((StepOutcome.Steady, StepOutcome.Steady, StepOutcome.Unknown), (steps[5].FollowedBy, steps[5].FollowedWithin14, steps[5].FollowedWithin30));
    }

    [Fact]
    public void Oxygen_up_within_seven_days_is_a_setback()
    {
        var steps = Wean((log, n) =>
        {
            if (n == 29) log.Check("21:00", 95, 1.0);
        }).Review().Taper.Done;
        Assert.Equal(StepOutcome.Setback, steps[2].FollowedBy);
        Assert.Contains("oxygen up to 1 L/min", steps[2].FollowedByWhat, StringComparison.Ordinal);
    }

    [Fact]
    public void Record_that_ends_within_seven_days_leaves_the_outcome_unknown() =>
        Assert.Equal(StepOutcome.Unknown, Wean(days: 40).Review().Taper.Done[^1].FollowedBy);

    [Fact]
    public void One_missed_session_is_no_step()
    {
        var log = new LogBuilder();
        for (var n = 0; n < 30; n++)
            foreach (var at in n == 15 ? new[] { "08:00" } : ["08:00", "20:00"])
                log.On(First.PlusDays(n)).Session(at);
        Assert.Single(log.Review().Taper.Done);
    }

    [Fact]
    public void Planned_steps_come_from_dated_rows_and_differences_are_said()
    {
        var log = Wean().Plan(PlanItem.SessionsPerDay, "2").Plan(PlanItem.SessionsPerDay, "4", First.PlusDays(20)).Plan(PlanItem.SessionsPerDay, "2", First.PlusDays(34));
        var taper = log.Review().Taper;
        Assert.Equal([(First, 2d), (First.PlusDays(20), 4d), (First.PlusDays(34), 2d)], taper.Planned.Select(p => (p.From, p.SessionsPerDay!.Value)));
        Assert.Equal("5 sessions a day, plan 4", taper.Done[1].DiffersFromPlan);
        Assert.Null(taper.Done[2].DiffersFromPlan);
    }

    [Fact]
    public void A_plan_that_changes_within_a_step_is_told_with_its_last_day()
    {
        var step = Wean().Plan(PlanItem.SessionsPerDay, "4").Plan(PlanItem.SessionsPerDay, "3", First.PlusDays(28)).Review().Taper.Done[2];
        Assert.Equal("4 until 28 Feb, then 3", step.PlannedSessionsInWords);
    }

    /// <summary>Usual 0.5 L/min; 1 L/min from day 21 to day 27: hours run from the change up, and the words say why the change back does not break them.</summary>
    [Fact]
    public void Coming_back_to_usual_oxygen_does_not_break_stable_hours_and_is_said()
    {
        var log = new LogBuilder().Plan(PlanItem.UsualOxygen, "0.5");
        for (var n = 0; n < 60; n++)
        {
            log.On(First.PlusDays(n));
            for (var i = 0; i < (n < 30 ? 4 : 2); i++) log.Session($"{8 + (3 * i):00}:10", perArea: 3);
            foreach (var at in new[] { "08:00", "12:00", "16:00", "20:00" }) log.Check(at, 96, n is >= 21 and < 28 ? 1 : 0.5);
        }

        var step = log.Review().Taper.Done[1];
        Assert.Equal(First.PlusDays(30), step.From);
        Assert.Equal((9 * 24) + (10 / 60.0), step.StableHoursBefore!.Value, 9);
        Assert.Equal("from oxygen 1 L/min, 22 Feb 08:00; coming back to usual does not break them (0.5 L/min, 1 Mar 08:00)", step.StableInWords);
    }

    [Fact]
    public void Days_not_written_are_passed_over()
    {
        var log = new LogBuilder();
        for (var n = 0; n < 40; n++)
            if (n is < 18 or > 22)
                log.On(First.PlusDays(n)).Session("08:00").Session("20:00");
        var step = Assert.Single(log.Review().Taper.Done);
        Assert.Equal((First, First.PlusDays(39)), (step.From, step.To));
    }
}
