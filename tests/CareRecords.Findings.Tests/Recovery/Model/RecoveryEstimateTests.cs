using CareRecords.Findings.Tests.Illness.Model;

namespace CareRecords.Findings.Tests.Recovery.Model;

public sealed class RecoveryEstimateTests
{
    [Fact]
    public void The_estimate_lies_inside_its_interval_and_the_level_is_ninety_five()
    {
        var recovery = Days.Fit(Days.Of(90, 96, Days.Illness(40)), 90).Episodes[0].Recovery;
        Assert.Equal(0.95, recovery.Level);
        Assert.InRange(recovery.Days!.Value, recovery.Low, recovery.High!.Value);
    }

    [Fact]
    public void A_slower_return_gives_a_later_recovery()
    {
        var quick = Days.Fit(Days.Of(90, 96, Days.Illness(40, back: 3)), 90).Episodes[0].Recovery;
        var slow = Days.Fit(Days.Of(90, 96, Days.Illness(40, back: 9)), 90).Episodes[0].Recovery;
        Assert.True(slow.Low > quick.High);
    }

    [Fact]
    public void Recovered_an_hour_before_the_end_is_not_yet_established()
    {
        // Under one point from day 47; the record stops at day 48, and recovery asks for 48 hours.
        Assert.True(Days.Fit(Days.Of(48, 96, Days.Illness(40)), 48).Episodes[0].Recovery.Censored);
        Assert.False(Days.Fit(Days.Of(55, 96, Days.Illness(40)), 55).Episodes[0].Recovery.Censored);
    }

    [Fact]
    public void A_later_illness_is_no_part_of_this_recovery()
    {
        var alone = Days.Fit(Days.Of(120, 96, Days.Illness(40)), 120).Episodes[0].Recovery;
        var later = Days.Illness(70);
        var two = Days.Fit(Days.Of(120, 96, at => Math.Max(Days.Illness(40)(at), later(at))), 120).Episodes[0].Recovery;
        Assert.InRange(two.High!.Value, alone.High!.Value - 0.3, alone.High.Value + 0.3);
    }

    [Fact]
    public void The_curve_runs_from_the_onset_down_and_back_within_its_band()
    {
        var result = Days.Fit(Days.Of(90, 96, Days.Illness(40)), 90);
        var (episode, usual) = (result.Episodes[0], result.Baseline!.Centre);
        Assert.All(episode.Curve, p => Assert.InRange(p.Value, p.Low!.Value, p.High!.Value));
        Assert.InRange(episode.Curve.Min(p => p.Value), usual - 6, usual - 4);
        Assert.InRange(episode.Curve[^1].Value, usual - 0.6, usual + 0.1);
    }
}
