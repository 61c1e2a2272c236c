using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Tests.Illness;

public class IllnessByRecordTests
{
    private static readonly LocalDate First = new(2026, 2, 1);

    /// <summary>Forty days at 96 % with four readings a day; <paramref name="change"/> adds to or replaces a day.</summary>
    private static LogBuilder Month(Func<LogBuilder, int, bool> change, int days = 40)
    {
        var log = new LogBuilder();
        for (var n = 0; n < days; n++)
            if (!change(log.On(First.PlusDays(n)), n))
                Usual(log);
        return log;
    }

    private static void Usual(LogBuilder log, double spO2 = 96, double? oxygen = 0.5)
    {
        foreach (var (at, i) in new[] { "08:00", "12:00", "16:00", "20:00" }.Select((t, i) => (t, i)))
            log.Check(at, spO2 + (i % 2), oxygen);
    }

    [Fact]
    public void Low_saturation_on_usual_oxygen_is_found_and_brackets_recovery()
    {
        var findings = Month((log, n) =>
        {
            if (n is < 20 or > 24) return false;
            Usual(log, 92);
            return true;
        }).Review();
        var episode = Assert.Single(findings.Illness.ByRecord);
        Assert.Equal((First.PlusDays(20), First.PlusDays(20)), (episode.Onset, episode.OnsetLow));
        Assert.False(episode.Recovery.Censored);
        Assert.InRange(5.0, episode.Recovery.DaysLow, episode.Recovery.DaysHigh!.Value);
        Assert.InRange(findings.Baseline!.SpO2, 96, 97);
        Assert.Equal((0.5, false), (findings.Baseline.Oxygen, findings.Baseline.OxygenFromPlan));
        Assert.Equal("E1", findings.Days[21].Episode);
        Assert.Null(findings.Days[30].Episode);
    }

    [Fact]
    public void Flat_saturation_on_rising_oxygen_is_illness_and_does_not_enter_the_baseline()
    {
        var findings = Month((log, n) =>
        {
            if (n is < 20 or > 24) return false;
            Usual(log, 98, 1.5);
            return true;
        }).Review();
        Assert.Equal(First.PlusDays(20), Assert.Single(findings.Illness.ByRecord).Onset);
        Assert.InRange(findings.Baseline!.SpO2, 96, 97);
        Assert.Equal(35, findings.Baseline.DaysUsed);
        Assert.Equal([0.5, 1.5], findings.SaturationByFlow.Select(f => f.OxygenLitresPerMinute));
    }

    [Fact]
    public void One_low_day_is_no_episode() =>
        Assert.Empty(Month((log, n) =>
        {
            if (n != 20) return false;
            Usual(log, 90);
            return true;
        }).Review().Illness.ByRecord);

    [Theory]
    [InlineData(38.0, 1)]
    [InlineData(37.9, 0)]
    public void Temperature_of_38_counts(double celsius, int episodes) =>
        Assert.Equal(episodes, Month((log, n) =>
        {
            if (n is 20 or 21) log.Sign("18:00", SignKind.Temperature, celsius);
            return false;
        }).Review().Illness.ByRecord.Count);

    [Theory]
    [InlineData(SignKind.Unwell, 1)]
    [InlineData(SignKind.Better, 0)]
    [InlineData(SignKind.Cough, 0)]
    public void Only_the_signs_of_the_definition_count(SignKind kind, int episodes) =>
        Assert.Equal(episodes, Month((log, n) =>
        {
            if (n is 20 or 21) log.Sign("18:00", kind);
            return false;
        }).Review().Illness.ByRecord.Count);

    [Fact]
    public void Days_from_admission_to_discharge_count()
    {
        var episode = Assert.Single(Month((log, n) =>
        {
            if (n == 20) log.Sign("18:00", SignKind.Admitted);
            if (n == 25) log.Sign("11:00", SignKind.Discharged);
            return n is > 20 and < 25;
        }).Review().Illness.ByRecord);
        Assert.Equal(First.PlusDays(20), episode.Onset);
        Assert.InRange(episode.Recovery.DaysLow, 4, 5.5);
    }

    [Fact]
    public void Standing_antibiotic_is_no_sign_and_a_course_counts_once()
    {
        var standing = Month((log, _) =>
        {
            log.Dose("09:00", "azithromycin");
            return false;
        }).Review();
        Assert.Empty(standing.Illness.ByRecord);

        var course = Month((log, n) =>
        {
            if (n is >= 20 and < 27) log.Dose("09:00", "amoxicillin");
            if (n == 21) log.Sign("18:00", SignKind.Unwell);
            return false;
        }).Review();
        var episode = Assert.Single(course.Illness.ByRecord);
        Assert.Equal(First.PlusDays(20), episode.Onset);
        Assert.InRange(episode.Recovery.DaysLow, 1.5, 2);
    }

    [Fact]
    public void Not_recovered_by_the_end_of_the_record_is_censored()
    {
        var recovery = Assert.Single(Month((log, n) =>
        {
            if (n < 35) return false;
            Usual(log, 91);
            return true;
        }).Review().Illness.ByRecord).Recovery;
        Assert.True(recovery.Censored);
        Assert.Null(recovery.DaysHigh);
        Assert.InRange(recovery.DaysLow, 4, 5);
    }

    [Fact]
    public void Back_in_band_for_less_than_48_hours_at_the_end_is_censored()
    {
        var recovery = Assert.Single(Month((log, n) =>
        {
            if (n is < 30 or > 37) return false;
            Usual(log, 91);
            return true;
        }).Review().Illness.ByRecord).Recovery;
        Assert.True(recovery.Censored);
    }

    [Fact]
    public void Episode_within_seven_days_of_recovery_is_a_relapse()
    {
        var findings = Month((log, n) =>
        {
            if (n is not ((>= 12 and <= 15) or (>= 20 and <= 23))) return false;
            Usual(log, 91);
            return true;
        }).Review();
        Assert.Equal([null, "E1"], findings.Illness.ByRecord.Select(e => e.RelapseOf));
        Assert.InRange(findings.Illness.ByRecord[1].DaysSincePreviousRecovery!.Value, 3, 5);
        Assert.Equal(2, findings.Recovery.Episodes);
    }

    [Fact]
    public void Readings_during_and_after_sessions_are_not_resting()
    {
        var findings = Month((log, _) =>
        {
            log.Check("10:00", 88, 0.5, CheckPhase.During).Check("10:20", 90, 0.5, CheckPhase.After);
            return false;
        }).Review();
        Assert.Empty(findings.Illness.ByRecord);
        Assert.InRange(findings.Baseline!.SpO2, 96, 97);
    }

    [Fact]
    public void Oxygen_written_only_when_raised_means_that_usual_is_air()
    {
        var findings = Month((log, n) =>
        {
            Usual(log, n is >= 20 and <= 23 ? 94 : 96, n is >= 20 and <= 23 ? 1 : null);
            return true;
        }).Review();
        Assert.Equal(0, findings.Baseline!.Oxygen);
        Assert.Equal(36, findings.Baseline.DaysUsed);
        Assert.Single(findings.Illness.ByRecord);
        Assert.Contains("readings without it are taken as at usual oxygen", findings.Baseline.Method, StringComparison.Ordinal);
    }

    [Fact]
    public void Oxygen_of_a_whole_day_brackets_recovery_from_that_days_start_to_the_next_day()
    {
        // On the last day usual oxygen is written with a clock too, at 20:00; when on that day the raised oxygen was, nobody wrote.
        var recovery = Assert.Single(Month((log, n) =>
        {
            if (n is < 20 or > 24) return false;
            Usual(log, 96, null);
            log.Add(new Check { Start = UncertainTime.OnDay(log.Day), OxygenLitresPerMinute = 1.5, Sources = [SourceLine.InText("notes.txt", 1, "on 1.5 L today")] });
            if (n == 24) log.Check("20:30", 97, 0.5);
            return true;
        }).Review().Illness.ByRecord).Recovery;

        // Days count from 04:00 of day 20: day 24 begins at 4 days, and 08:00 of day 25 is 5 days and 4 hours.
        Assert.Equal(4, recovery.DaysLow, 6);
        Assert.Equal(5 + (4 / 24.0), recovery.DaysHigh!.Value, 6);
    }

    [Fact]
    public void Sessions_rising_alone_are_no_evidence() =>
        Assert.Empty(Month((log, n) =>
        {
            for (var i = 0; i < (n is >= 20 and < 30 ? 5 : 2); i++) log.Session($"{8 + (2 * i):00}:00");
            return false;
        }).Review().Illness.ByRecord);
}
