using CsCheck;

namespace CareRecords.Statistics.Tests.Robust;

public class LocationTests
{
    [Fact]
    public void Unsorted_values_with_a_tie_give_hand_worked_quantiles()
    {
        double[] x = [4, 1, 3, 3];
        Assert.Equal(3, Quantiles.Median(x).Value);
        Near.Equal(2.5, Quantiles.At(x, 0.25).Value);
        Near.Equal(0.5, Quantiles.MedianAbsoluteDeviation(x, 1).Value);
        Near.Equal(0.75, Quantiles.InterquartileRange(x).Value);
        Assert.Equal((1.0, 4.0), (Quantiles.At(x, 0).Value, Quantiles.At(x, 1).Value));
    }

    [Fact]
    public void Nothing_is_a_named_outcome_and_NaN_is_refused()
    {
        Assert.False(Quantiles.Median([]).IsKnown);
        Assert.False(Quantiles.At([], 0.5).IsKnown);
        Assert.False(HuberLocation.Of([]).IsKnown);
        Assert.False(WeightedQuantile.Median([], []).IsKnown);
        Assert.False(WeightedQuantile.Median([1, 2], [0, 0]).IsKnown);
        Assert.False(MeanInterval.Of([1]).IsKnown);
        Assert.False(MeanInterval.Of([96, 96, 96]).IsKnown);
        Assert.Throws<ArgumentException>(() => Quantiles.Median([1, double.NaN]));
        Assert.Throws<ArgumentException>(() => HuberLocation.Of([double.PositiveInfinity]));
        Assert.Throws<ArgumentException>(() => WeightedQuantile.Median([1], [-1]));
    }

    [Fact]
    public void Quantile_types_4_to_9_agree_with_Hyndman_and_Fans_position_formula()
    {
        double[] x = [1, 2, 4, 8, 16];

        // Position n·p + m with p = 0.3: type 4 m=0, 5 ½, 6 p, 7 1−p, 8 (p+1)/3, 9 p/4+3/8.
        double[] m = [0, 0.5, 0.3, 0.7, 1.3 / 3, (0.3 / 4) + (3 / 8.0)];
        for (var type = 4; type <= 9; type++)
        {
            var position = (5 * 0.3) + m[type - 4];
            var (k, part) = ((int)position, position - (int)position);
            Near.Equal(x[k - 1] + (part * (x[k] - x[k - 1])), Quantiles.At(x, 0.3, type).Value);
        }
    }

    [Fact]
    public void Weights_repeat_values() =>
        Gen.Select(Gen.Int[-20, 20].Array[1, 12], Gen.Int[1, 4].Array[12]).Holds(t =>
        {
            double[] x = [.. t.Item1.Select(v => (double)v)];
            double[] w = [.. t.Item2.Take(x.Length).Select(v => (double)v)];
            double[] repeated = [.. x.SelectMany((v, i) => Enumerable.Repeat(v, (int)w[i]))];
            return WeightedQuantile.Median(x, w).Value == Quantiles.Median(repeated).Value;
        });

    [Fact]
    public void Huber_ignores_a_wild_value_and_stays_at_the_median_when_the_scale_is_zero()
    {
        Assert.InRange(HuberLocation.Of([1, 2, 3, 4, 5, 1e6]).Value.Location, 3, 5);
        Assert.Equal(new LocationScale(95, 0, 4), HuberLocation.Of([95, 95, 95, 80]).Value);
    }

    [Fact]
    public void Median_interval_of_six_values_is_their_range_and_five_are_too_few()
    {
        var e = MedianInterval.Of([6, 2, 5, 1, 4, 3]).Value;
        Assert.Equal((3.5, 1.0, 6.0), (e.Value, e.Low, e.High));
        Assert.Equal(6, MedianInterval.Of([1, 2, 3, 4, 5]).Missing!.Smallest);

        // n = 9: P(X <= 1) = 10/512 is below 1/40, P(X <= 2) = 46/512 is not.
        var nine = MedianInterval.Of([1, 2, 3, 4, 5, 6, 7, 8, 9]).Value;
        Assert.Equal((2.0, 8.0), (nine.Low, nine.High));
    }

    [Fact]
    public void Sign_test_counts_what_differs()
    {
        Near.Equal(2 / 8.0, MedianInterval.SignTest([1, 2, 3, 0]).Value.PValue);
        Assert.False(MedianInterval.SignTest([0, 0]).IsKnown);
    }

    [Fact]
    public void Mean_and_median_intervals_cover_in_simulation()
    {
        Coverage.Between(0.95, 0.95, 3000, random => MeanInterval.Of(Sample(random, 8)).Value.Covers(0));
        Coverage.AtLeast(0.95, 3000, random => MedianInterval.Of(Sample(random, 15)).Value.Covers(0));
    }

    private static double[] Sample(SeededRandom random, int n) => [.. Enumerable.Range(0, n).Select(_ => random.Gaussian())];
}
