using CareRecords.Findings.Modelling;

namespace CareRecords.Findings.Tests.Illness.Model;

public sealed class IllnessModelTests
{
    [Fact]
    public void One_illness_is_found_with_its_onset_and_its_recovery_inside_their_intervals()
    {
        // Deficit 5 from day 40, flat for 2 days, then one point a day: under one point from day 40 + 1 + 2 + 4 = 47.
        var result = Days.Fit(Days.Of(90, 96, Days.Illness(40)), 90);

        Assert.Null(result.Missing);
        Assert.InRange(result.Baseline!.Centre, 95.8, 96.2);
        var episode = Assert.Single(result.Episodes);
        Assert.InRange(episode.OnsetDay, 39, 41);
        Assert.InRange(40, episode.OnsetLow, episode.OnsetHigh);
        Assert.False(episode.Recovery.Censored);
        Assert.InRange(47, episode.OnsetDay + episode.Recovery.Low, episode.OnsetDay + episode.Recovery.High!.Value);
        Assert.True(episode.Recovery.High - episode.Recovery.Low < 4);
        Assert.InRange(episode.PeakDay, 40, 44);
    }

    [Fact]
    public void No_illness_gives_a_usual_and_no_episode() => Assert.Empty(Days.Fit(Days.Of(60, 95, _ => 0), 60).Episodes);

    [Fact]
    public void No_readings_is_a_named_outcome() => Assert.Equal("no saturation was written", Days.Fit([], 30).Missing);

    [Fact]
    public void One_day_is_a_named_outcome() =>
        Assert.Equal("saturation was written on 1 of at least 5 days", Days.Fit(Days.Of(1, 96, _ => 0), 1).Missing);

    [Fact]
    public void All_saturations_equal_gives_that_usual_and_no_episode()
    {
        var result = Days.Fit([.. Days.Of(40, 96, _ => 0).Select(o => o with { SpO2 = 96 })], 40);
        Assert.Equal(96, result.Baseline!.Centre, 0.5);
        Assert.Empty(result.Episodes);
    }

    [Fact]
    public void Oxygen_raised_from_the_first_day_to_the_last_leaves_nothing_to_compare_with()
    {
        var result = Days.Fit(Days.Of(40, 96, _ => 0, _ => 1), 40, usualOxygen: 0);
        Assert.Equal("no days on which the child was well enough to say what is usual", result.Missing);
    }

    [Fact]
    public void A_record_that_ends_in_illness_is_censored()
    {
        var episode = Assert.Single(Days.Fit(Days.Of(43, 96, Days.Illness(38, plateau: 10)), 43).Episodes);
        Assert.True(episode.Recovery.Censored);
        Assert.Null(episode.Recovery.High);
        Assert.Null(episode.Recovery.Days);
        Assert.InRange(episode.OnsetDay, 37, 39);
    }

    [Fact]
    public void A_record_that_begins_in_illness_has_an_episode_from_its_first_day()
    {
        var episode = Assert.Single(Days.Fit(Days.Of(60, 96, Days.Illness(-3, plateau: 4)), 60).Episodes);
        Assert.Equal(0, episode.OnsetDay);
        Assert.False(episode.Recovery.Censored);
    }

    [Fact]
    public void Two_illnesses_with_four_clear_days_between_are_two()
    {
        var (first, second) = (Days.Illness(30, back: 3), Days.Illness(40, back: 3));
        var result = Days.Fit(Days.Of(80, 96, at => Math.Max(first(at), second(at))), 80);
        Assert.Equal(2, result.Episodes.Count);
        Assert.InRange(result.Episodes[1].OnsetDay, 39, 41);
    }

    [Fact]
    public void Readings_that_stop_at_one_hundred_do_not_hide_an_illness()
    {
        var result = Days.Fit(Days.Of(90, 99.5, Days.Illness(40)), 90);
        Assert.InRange(result.Baseline!.Centre, 99, 100);
        Assert.InRange(Assert.Single(result.Episodes).OnsetDay, 39, 41);
    }

    [Fact]
    public void Oxygen_never_written_leaves_saturation_to_tell()
    {
        var result = Days.Fit(Days.Of(90, 96, Days.Illness(40)), 90);
        Assert.Null(result.UsualOxygen);
        Assert.Single(result.Episodes);
    }

    [Fact]
    public void Raised_oxygen_with_saturation_at_usual_is_an_illness_until_oxygen_is_back()
    {
        static double? Flow(double at) => at is >= 40.3 and < 47.6 ? 0.5 : 0;
        var episode = Assert.Single(Days.Fit(Days.Of(90, 96, at => at is >= 40 and < 40.3 ? 3 : 0, Flow), 90, usualOxygen: 0).Episodes);
        Assert.InRange(episode.OnsetDay, 39, 41);
        Assert.InRange(47.6, episode.OnsetDay + episode.Recovery.Low, episode.OnsetDay + episode.Recovery.High!.Value);
    }

    [Fact]
    public void A_saturation_low_once_is_no_illness()
    {
        var observations = Days.Of(60, 96, _ => 0);
        observations[180] = observations[180] with { SpO2 = 84 };
        Assert.Empty(Days.Fit(observations, 60).Episodes);
    }

    [Fact]
    public void The_order_of_the_readings_does_not_matter()
    {
        var observations = Days.Of(60, 96, Days.Illness(30));
        var turned = observations.AsEnumerable().Reverse().ToList();
        Assert.Equal(Days.Fit(observations, 60).Episodes[0].Recovery, Days.Fit(turned, 60).Episodes[0].Recovery);
    }

    [Fact]
    public void Readings_outside_the_care_days_are_left_out()
    {
        var observations = Days.Of(60, 96, Days.Illness(30));
        List<Observation> more = [.. observations, new Observation(-5, 70, 4, true), new Observation(60 * 24, 70, 4, true)];
        Assert.Equal(Days.Fit(observations, 60).Baseline, Days.Fit(more, 60).Baseline);
    }

    [Fact]
    public void Each_day_has_a_probability_of_illness()
    {
        var result = Days.Fit(Days.Of(90, 96, Days.Illness(40)), 90);
        Assert.Equal(90, result.ProbabilityIll.Count);
        Assert.True(result.ProbabilityIll[42] > 0.99);
        Assert.True(result.ProbabilityIll[20] < 0.05);
        Assert.True(result.ProbabilityIll[60] < 0.05);
    }
}
