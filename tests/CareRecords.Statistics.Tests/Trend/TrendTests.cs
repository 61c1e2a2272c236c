using CsCheck;

namespace CareRecords.Statistics.Tests.Trend;

public class TrendTests
{
    private static readonly Gen<double[]> Series = Gen.Int[-5, 5].Select(v => (double)v).Array[4, 20].Where(a => a.Distinct().Count() > 1);

    [Fact]
    public void Four_values_with_a_tie_by_hand()
    {
        // 1 3 3 2: rises 1→3, 1→3, 1→2; falls 3→2 twice; S = 1. Var = (4·3·13 − 2·1·9)/18 = 138/18.
        var test = MannKendall.Test([1, 3, 3, 2]).Value;
        Assert.Equal(1, test.S);
        Near.Equal(138 / 18.0, test.Variance);
        Near.Equal(0, test.Z);
        Near.Equal(1, test.PValue);
        Near.Equal(1 / Math.Sqrt(30), test.TauB);

        // Pairwise slopes 2, 1, 1/3, 0, −1/2, −1: median (1/3 + 0)/2.
        Near.Equal(1 / 6.0, TheilSen.Fit([1, 2, 3, 4], [1, 3, 3, 2]).Value.Slope.Value);
    }

    [Fact]
    public void Three_points_set_no_limit_on_the_slope()
    {
        var line = TheilSen.Fit([0, 1, 2], [0, 1, 3]).Value;
        Assert.Equal((1.5, double.NegativeInfinity, double.PositiveInfinity), (line.Slope.Value, line.Slope.Low, line.Slope.High));
    }

    [Fact]
    public void Level_or_too_short_series_are_named_outcomes()
    {
        Assert.False(MannKendall.Test([96, 96, 96, 96, 96]).IsKnown);
        Assert.False(MannKendall.Test([1, 2, 3]).IsKnown);
        Assert.False(TheilSen.Fit([1, 1, 1], [1, 2, 3]).IsKnown);
        Assert.False(TheilSen.Fit([], []).IsKnown);
        Assert.False(RankCorrelation.Kendall([1, 1, 1], [1, 2, 3]).IsKnown);
        Assert.False(RankCorrelation.Spearman([1, 2], [1, 2]).IsKnown);
        Assert.Equal(0, TheilSen.Fit([1, 2, 3], [96, 96, 96]).Value.Slope.Value);
        Assert.Throws<ArgumentException>(() => TheilSen.Fit([1, 2], [1, 2, 3]));
    }

    [Fact]
    public void Perfect_agreement_of_four_has_exact_chances_by_counting_orders()
    {
        Near.Equal(2 / 24.0, RankCorrelation.Kendall([1, 2, 3, 4], [10, 20, 30, 40]).Value.PValue);
        Near.Equal(2 / 24.0, RankCorrelation.Spearman([1, 2, 3, 4], [10, 20, 30, 40]).Value.PValue);
        Near.Equal(1, RankCorrelation.Kendall([1, 2, 3, 4], [10, 20, 30, 40], Alternative.Less).Value.PValue);
    }

    [Fact]
    public void Turning_the_series_round_turns_the_trend_round() => Series.Holds(y =>
    {
        double[] back = [.. y.Reverse()];
        var (a, b) = (MannKendall.Test(y).Value, MannKendall.Test(back).Value);
        double[] x = [.. Enumerable.Range(0, y.Length).Select(i => (double)i)];
        var (up, down) = (TheilSen.Fit(x, y).Value.Slope, TheilSen.Fit(x, back).Value.Slope);
        return a.S == -b.S && Math.Abs(up.Value + down.Value) < 1e-12 && (double.IsInfinity(up.Low) || Math.Abs(up.Low + down.High) < 1e-9) && up.Covers(up.Value);
    });

    [Fact]
    public void Theil_Sen_interval_covers_in_simulation() => Coverage.Between(0.94, 0.97, 3000, random =>
    {
        double[] x = [.. Enumerable.Range(0, 15).Select(i => (double)i)];
        return TheilSen.Fit(x, [.. x.Select(v => (0.3 * v) + random.Gaussian())]).Value.Slope.Covers(0.3);
    });
}
