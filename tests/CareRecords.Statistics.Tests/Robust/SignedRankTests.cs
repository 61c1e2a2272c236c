using CsCheck;

namespace CareRecords.Statistics.Tests.Robust;

public class SignedRankTests
{
    [Fact]
    public void Three_positive_differences_have_one_chance_in_eight()
    {
        var greater = SignedRank.Test([3, 1, 2], Alternative.Greater).Value;
        Assert.Equal((6.0, 3), (greater.Statistic, greater.Count));
        Near.Equal(1 / 8.0, greater.PValue);
        Near.Equal(2 / 8.0, SignedRank.Test([3, 1, 2]).Value.PValue);
        Near.Equal(1, SignedRank.Test([3, 1, 2], Alternative.Less).Value.PValue);
    }

    [Fact]
    public void Ties_share_midranks_and_zeros_are_left_out()
    {
        // |d| all tied: midrank 2 each; V = 4; P(V >= 4) = P(at least two of three positive) = 4/8.
        var test = SignedRank.Test([1, 0, -1, 1], Alternative.Greater).Value;
        Assert.Equal((4.0, 3), (test.Statistic, test.Count));
        Near.Equal(4 / 8.0, test.PValue);
    }

    [Fact]
    public void Too_few_or_only_zero_differences_are_named_outcomes()
    {
        Assert.False(SignedRank.Test([0, 0]).IsKnown);
        Assert.False(SignedRank.Test([]).IsKnown);
        Assert.Equal(6, SignedRank.Interval([1, 2, 3, 4, 5]).Missing!.Smallest);
        Assert.False(SignedRankNormal.Interval([1, 1, 1, 1, 1, 1]).IsKnown);
        Assert.False(SignedRankNormal.Test([0]).IsKnown);
        Assert.Throws<ArgumentException>(() => SignedRank.Test([double.NaN]));
    }

    [Fact]
    public void All_equal_differences_give_a_point()
    {
        var e = SignedRank.Interval([2, 2, 2, 2, 2, 2, 2]).Value;
        Assert.Equal((2.0, 2.0, 2.0), (e.Value, e.Low, e.High));
    }

    [Fact]
    public void Six_differences_give_the_range()
    {
        var e = SignedRank.Interval([1, 2, 3, 4, 5, 6]).Value;
        Assert.Equal((3.5, 1.0, 6.0), (e.Value, e.Low, e.High));
    }

    [Fact]
    public void Exact_tails_add_to_one_plus_the_point_and_mirror() => Gen.Int[-8, 8].Array[1, 14].Where(a => a.Any(v => v != 0)).Holds(a =>
    {
        double[] d = [.. a.Select(v => (double)v)];
        double[] mirrored = [.. d.Select(v => -v)];
        return Math.Abs(SignedRank.Test(d, Alternative.Greater).Value.PValue - SignedRank.Test(mirrored, Alternative.Less).Value.PValue) < 1e-12;
    });

    [Fact]
    public void Many_differences_use_the_normal_approximation_and_agree_with_the_exact_test()
    {
        var random = new SeededRandom(3);
        double[] d = [.. Enumerable.Range(0, SignedRank.LargestExact).Select(_ => random.Gaussian() + 0.1)];
        Near.Equal(SignedRank.Test(d).Value.PValue, SignedRankNormal.Test(d).Value.PValue, 1e-3);
        double[] more = [.. d, .. d.Select(v => v + 1e-4)];
        Assert.Equal("signed-rank test, normal approximation", SignedRank.Test(more).Value.Method);
        Assert.True(SignedRank.Interval(more).Value.Covers(SignedRank.Interval(more).Value.Value));
    }

    [Fact]
    public void Interval_covers_in_simulation() => Coverage.AtLeast(0.95, 3000, random =>
        SignedRank.Interval([.. Enumerable.Range(0, 12).Select(_ => random.Gaussian() + 1)]).Value.Covers(1));
}
