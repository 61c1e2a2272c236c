using CsCheck;

namespace CareRecords.Statistics.Tests.Survival;

public class TurnbullTests
{
    private static readonly Gen<CensoredInterval[]> Intervals = Gen.Select(Gen.Int[0, 12], Gen.Int[0, 6], Gen.Int[0, 5])
        .Select(t => t.Item3 == 0 ? new CensoredInterval(t.Item1, double.PositiveInfinity) : new(t.Item1, t.Item1 + t.Item2))
        .Array[1, 40];

    [Fact]
    public void Converges_to_the_maximum_whatever_the_intervals() => Intervals.Holds(intervals =>
    {
        var curve = Turnbull.Fit(intervals).Value;
        return curve.KktExcess <= 1e-9 * intervals.Length && Math.Abs(curve.Masses.Sum(m => m.Mass) - 1) < 1e-12;
    });

    [Fact]
    public void No_other_distribution_on_the_innermost_intervals_is_likelier() => Gen.Select(Intervals, Gen.Int[1, 1000000]).Holds(t =>
    {
        var innermost = InnermostIntervals.Of(t.Item1);
        var likelihood = new MixtureLikelihood(innermost.Ranges, innermost.Places.Length);
        var random = new SeededRandom(t.Item2);
        double[] weights = [.. innermost.Places.Select(_ => -Math.Log(random.Uniform()))];
        return likelihood.Value([.. weights.Select(w => w / weights.Sum())]) <= Turnbull.Fit(t.Item1).Value.LogLikelihood + 1e-9;
    });

    [Fact]
    public void Exact_and_right_censored_times_give_Kaplan_Meier() =>
        Gen.Select(Gen.Int[1, 12], Gen.Bool).Select(t => new FollowUp(t.Item1, t.Item2)).Array[1, 30].Holds(subjects =>
        {
            CensoredInterval[] intervals = [.. subjects.Select(s => new CensoredInterval(s.Time, s.Happened ? s.Time : double.PositiveInfinity))];
            var turnbull = Turnbull.Fit(intervals).Value;
            return KaplanMeier.Fit(subjects).Value.Steps.All(s => Math.Abs(turnbull.SurvivalAt(s.Time).Low - s.Survival) < 1e-8);
        });

    [Fact]
    public void Where_mass_lies_within_an_interval_is_left_open()
    {
        var curve = Turnbull.Fit([new(0, 2), new(1, 3), new(1, 3), new(2, double.PositiveInfinity), new(3, double.PositiveInfinity)]).Value;
        var bounds = curve.SurvivalAt(1.5);
        Near.Equal(0.5, bounds.Low);
        Near.Equal(1, bounds.High);
        Assert.Equal(curve.SurvivalAt(2).Low, curve.SurvivalAt(2).High);
        Assert.True(curve.IsUnique);

        // Exactly half lies in (1,2]: the median can be anywhere from there to the end of (2,3].
        Assert.Equal(new CensoredInterval(1, 3), curve.Median);
        Assert.Equal(double.PositiveInfinity, curve.Quantile(0.9).Right);
    }

    [Fact]
    public void Nothing_and_only_right_censored_times()
    {
        Assert.False(Turnbull.Fit([]).IsKnown);
        var late = Turnbull.Fit([new(3, double.PositiveInfinity), new(5, double.PositiveInfinity)]).Value;
        Assert.Equal([new TurnbullMass(5, double.PositiveInfinity, 1)], late.Masses);
        Assert.Equal(1, late.SurvivalAt(4).Low);
        Assert.Throws<ArgumentException>(() => Turnbull.Fit([new(2, 1)]));
        Assert.Throws<ArgumentException>(() => Turnbull.Fit([new(double.NaN, 1)]));
        Assert.False(TurnbullBootstrap.Limits([new(1, 2)], [1]).IsKnown);
    }

    [Fact]
    public void Bootstrap_limits_are_the_same_for_the_same_seed_and_hold_the_estimate()
    {
        var random = new SeededRandom(5);
        CensoredInterval[] looks = [.. Enumerable.Range(0, 40).Select(_ => Looked(-10 * Math.Log(random.Uniform())))];
        var limits = TurnbullBootstrap.Limits(looks, [2, 6, 10], draws: 200).Value;
        Assert.Equal(limits, TurnbullBootstrap.Limits(looks, [2, 6, 10], draws: 200).Value);
        Assert.All(limits, l => Assert.True(l.Limits.Low <= l.Survival.Low && l.Survival.High <= l.Limits.High));
    }

    [Fact]
    public void Bootstrap_limits_cover_at_a_look_in_simulation() => Coverage.Between(0.90, 0.98, 150, random =>
    {
        CensoredInterval[] looks = [.. Enumerable.Range(0, 40).Select(_ => Looked(-10 * Math.Log(random.Uniform())))];
        return TurnbullBootstrap.Limits(looks, [6], draws: 100).Value[0].Limits.Covers(Math.Exp(-0.6));
    });

    private static CensoredInterval Looked(double time) =>
        time > 20 ? new(20, double.PositiveInfinity) : new(2 * Math.Floor(time / 2), 2 * Math.Floor((time / 2) + 1));
}
