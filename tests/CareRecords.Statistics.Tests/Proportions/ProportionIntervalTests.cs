using CsCheck;

namespace CareRecords.Statistics.Tests.Proportions;

public class ProportionIntervalTests
{
    // The level at which z = 1, so that Wilson's formula can be worked by hand.
    private const double OneSigma = 0.6826894921370859;

    private static readonly Gen<(int X, int N)> Counts = Gen.Int[1, 300].SelectMany(n => Gen.Int[0, n].Select(x => (x, n)));

    [Fact]
    public void Wilson_one_of_three_at_one_sigma_is_three_plus_or_minus_root_eleven_thirds_over_eight()
    {
        var e = Wilson.Interval(1, 3, OneSigma).Value;
        Near.Equal(1 / 3.0, e.Value);
        Near.Equal((3 - Math.Sqrt(11 / 3.0)) / 8, e.Low);
        Near.Equal((3 + Math.Sqrt(11 / 3.0)) / 8, e.High);
        Assert.Equal((3, OneSigma), (e.Count, e.Level));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(60)]
    public void None_of_n_has_closed_upper_limits(int n)
    {
        // (1−p)^n = 1/40 for Clopper-Pearson; half of (1−p)^n = 1/40 for mid-P.
        Near.Equal(1 - Math.Pow(0.025, 1.0 / n), ClopperPearson.Interval(0, n).Value.High);
        Near.Equal(1 - Math.Pow(0.05, 1.0 / n), MidP.Interval(0, n).Value.High);
        Assert.Equal(0, ClopperPearson.Interval(0, n).Value.Low);
        Assert.Equal(0, MidP.Interval(0, n).Value.Low);
        Assert.Equal(0, Wilson.Interval(0, n).Value.Low);
        Assert.Equal(1, Wilson.Interval(n, n).Value.High);
        Near.Equal(Math.Pow(0.025, 1.0 / n), ClopperPearson.Interval(n, n).Value.Low);
    }

    [Fact]
    public void No_trials_is_a_named_outcome()
    {
        Assert.False(Wilson.Interval(0, 0).IsKnown);
        Assert.Equal("Wilson score interval: no trials (0 given, at least 1 needed)", Wilson.Interval(0, 0).Missing!.ToString());
        Assert.False(ClopperPearson.Interval(0, 0).IsKnown);
        Assert.False(MidP.Interval(0, 0).IsKnown);
        Assert.False(NewcombeDifference.Interval(0, 0, 1, 2).IsKnown);
        Assert.Throws<InvalidOperationException>(() => MidP.Interval(0, 0).Value);
    }

    [Fact]
    public void Impossible_counts_and_levels_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Wilson.Interval(3, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Wilson.Interval(-1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => MidP.Interval(1, 2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ClopperPearson.Interval(1, 2, double.NaN));
    }

    [Fact]
    public void Intervals_hold_the_proportion_nest_and_mirror() => Counts.Holds(c =>
    {
        var (x, n) = c;
        var (wilson, exact, mid) = (Wilson.Interval(x, n).Value, ClopperPearson.Interval(x, n).Value, MidP.Interval(x, n).Value);
        var mirrored = MidP.Interval(n - x, n).Value;
        return wilson.Covers(wilson.Value) && exact.Covers(exact.Value) && mid.Covers(mid.Value)
            && wilson.Low >= 0 && wilson.High <= 1
            && exact.Low <= mid.Low + 1e-12 && mid.High <= exact.High + 1e-12
            && Math.Abs(mid.Low - (1 - mirrored.High)) < 1e-10;
    });

    [Fact]
    public void Clopper_Pearson_limit_is_where_the_one_sided_test_just_rejects() => Counts.Where(c => c.X > 0).Holds(c =>
        Math.Abs(BinomialTest.Against(c.X, c.N, ClopperPearson.Interval(c.X, c.N).Value.Low, Alternative.Greater).Value.PValue - 0.025) < 1e-10);

    [Theory]
    [InlineData(10)]
    [InlineData(40)]
    public void Exact_coverage_is_never_below_the_level_and_Wilson_and_mid_P_average_to_it(int n)
    {
        // No simulation needed: coverage at p is the sum of the probabilities of the counts whose interval holds p.
        double[] chances = [.. Enumerable.Range(1, 199).Select(i => i / 200.0)];
        double[] Covered(Func<int, Estimate> interval)
        {
            var all = Enumerable.Range(0, n + 1).Select(interval).ToArray();
            return Array.ConvertAll(chances, p => all.Select((e, x) => e.Covers(p) ? BinomialLaw.Probability(x, n, p) : 0).Sum());
        }

        Assert.True(Covered(x => ClopperPearson.Interval(x, n).Value).Min() >= 0.95 - 1e-12);
        Assert.InRange(Covered(x => Wilson.Interval(x, n).Value).Average(), 0.945, 0.965);
        Assert.InRange(Covered(x => MidP.Interval(x, n).Value).Average(), 0.945, 0.975);
    }

    [Fact]
    public void Difference_interval_covers_in_simulation() => Coverage.Between(0.93, 0.975, 4000, random =>
        NewcombeDifference.Interval(random.Successes(25, 0.8), 25, random.Successes(40, 0.6), 40).Value.Covers(0.2));
}
