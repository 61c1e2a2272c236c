using CsCheck;

namespace CareRecords.Statistics.Tests.Proportions;

public class ExactTestsTests
{
    [Fact]
    public void Five_of_six_against_a_half_is_fourteen_sixty_fourths()
    {
        // As likely or less: 0, 1, 5 and 6 of 6, (1 + 6 + 6 + 1)/64.
        Near.Equal(14 / 64.0, BinomialTest.Against(5, 6, 0.5).Value.PValue);
        Near.Equal(7 / 64.0, BinomialTest.Against(5, 6, 0.5, Alternative.Greater).Value.PValue);
        Near.Equal(63 / 64.0, BinomialTest.Against(5, 6, 0.5, Alternative.Less).Value.PValue);
    }

    [Theory]
    [InlineData(0, 5, 0.0, 1.0)]
    [InlineData(1, 5, 0.0, 0.0)]
    [InlineData(5, 5, 1.0, 1.0)]
    [InlineData(4, 5, 1.0, 0.0)]
    public void Certain_targets_are_met_or_not(int x, int n, double target, double p) =>
        Near.Equal(p, BinomialTest.Against(x, n, target).Value.PValue);

    [Fact]
    public void Two_sided_binomial_test_is_the_sum_over_unlikelier_counts() =>
        Gen.Select(Gen.Int[1, 60], Gen.Double[0.01, 0.99]).SelectMany(t => Gen.Int[0, t.Item1].Select(x => (t.Item1, t.Item2, x))).Holds(t =>
        {
            var (n, target, x) = t;
            var seen = BinomialLaw.Probability(x, n, target) * (1 + 1e-7);
            var sum = Enumerable.Range(0, n + 1).Select(k => BinomialLaw.Probability(k, n, target)).Where(p => p <= seen).Sum();
            return Math.Abs(sum - BinomialTest.Against(x, n, target).Value.PValue) < 1e-10;
        });

    [Fact]
    public void Two_by_two_of_two_and_two_apart_is_a_third()
    {
        var apart = new TwoByTwo(2, 0, 0, 2);
        Near.Equal(1 / 3.0, FisherExact.Test(apart).Value.PValue);
        Near.Equal(1 / 6.0, FisherExact.Test(apart, Alternative.Greater).Value.PValue);
        Near.Equal(1 / 6.0, FisherExact.Test(apart, midP: true).Value.PValue);
        var odds = FisherExact.OddsRatio(apart).Value;
        Assert.Equal(double.PositiveInfinity, odds.Value);
        Assert.Equal(double.PositiveInfinity, odds.High);
        Assert.True(odds.Low > 0);
    }

    [Fact]
    public void Upper_odds_limit_of_the_tea_table_solves_its_polynomial()
    {
        // P(X <= 3) = 1/40: psi^4 / (1 + 16 psi + 36 psi^2 + 16 psi^3 + psi^4) = 39/40.
        var psi = FisherExact.OddsRatio(new TwoByTwo(3, 1, 1, 3)).Value.High;
        Near.Equal(0.975, Math.Pow(psi, 4) / (1 + (16 * psi) + (36 * psi * psi) + (16 * Math.Pow(psi, 3)) + Math.Pow(psi, 4)));
    }

    [Fact]
    public void A_margin_of_zero_tells_nothing_of_the_odds()
    {
        Assert.Equal(1, FisherExact.Test(new TwoByTwo(0, 4, 0, 9)).Value.PValue);
        Assert.False(FisherExact.OddsRatio(new TwoByTwo(0, 4, 0, 9)).IsKnown);
        Assert.False(FisherExact.Test(new TwoByTwo(0, 0, 0, 0)).IsKnown);
        Assert.False(PooledZ.Test(0, 4, 0, 9).IsKnown);
        Assert.Throws<ArgumentOutOfRangeException>(() => FisherExact.Test(new TwoByTwo(-1, 4, 0, 9)));
    }

    [Fact]
    public void Fisher_tails_share_only_the_observed_table_and_swap_with_the_rows() =>
        Gen.Select(Gen.Int[0, 40], Gen.Int[0, 40], Gen.Int[0, 40], Gen.Int[0, 40]).Where(t => t.Item1 + t.Item2 + t.Item3 + t.Item4 > 0).Holds(t =>
        {
            var table = new TwoByTwo(t.Item1, t.Item2, t.Item3, t.Item4);
            double P(TwoByTwo x, Alternative a, bool mid) => FisherExact.Test(x, a, mid).Value.PValue;
            var swapped = new TwoByTwo(t.Item3, t.Item4, t.Item1, t.Item2);
            return Math.Abs(P(table, Alternative.Greater, true) + P(table, Alternative.Less, true) - 1) < 1e-10
                && Math.Abs(P(table, Alternative.Greater, false) - P(swapped, Alternative.Less, false)) < 1e-10
                && Math.Abs(P(table, Alternative.TwoSided, false) - P(swapped, Alternative.TwoSided, false)) < 1e-10;
        });
}
