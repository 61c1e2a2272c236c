using CsCheck;

namespace CareRecords.Statistics.Tests.Survival;

public class ParametricSurvivalTests
{
    private const double Inf = double.PositiveInfinity;

    [Fact]
    public void Exponential_fit_of_exact_and_censored_times_is_time_at_risk_per_event()
    {
        // Total time 1 + 2 + 6 + 3 = 12, two events: mean 6, standard error of its log 1/√2.
        var fit = ParametricSurvival.Fit([new(1, 1), new(2, 2), new(6, Inf), new(3, Inf)], SurvivalFamily.Exponential).Value;
        Near.Equal(Math.Log(6), fit.Location);
        Near.Equal(Math.Sqrt(0.5), fit.LocationError);
        Near.Equal(6 * Math.Log(2), fit.Median().Value);
        Near.Equal(Math.Exp(-0.5), fit.Survival(3).Value);
    }

    [Fact]
    public void Lognormal_fit_of_exact_times_is_the_mean_and_spread_of_logs()
    {
        double[] times = [1, 2, 4, 8];
        var fit = ParametricSurvival.Fit([.. times.Select(t => new CensoredInterval(t, t))], SurvivalFamily.LogNormal).Value;
        Near.Equal(1.5 * Math.Log(2), fit.Location, 1e-10);
        Near.Equal(Math.Log(2) * Math.Sqrt(1.25), fit.Scale, 1e-10);
        Near.Equal(fit.Scale / 2, fit.LocationError, 1e-9);
        Near.Equal(Math.Sqrt(1 / 8.0), fit.LogScaleError, 1e-9);
    }

    [Fact]
    public void A_spread_or_place_that_the_data_leave_open_is_a_named_outcome()
    {
        static string Reason(SurvivalFamily f, params CensoredInterval[] x) => ParametricSurvival.Fit(x, f).Missing?.Reason ?? "known";
        Assert.Equal("no time is bounded above", Reason(SurvivalFamily.Weibull, new(1, Inf), new(2, Inf)));
        Assert.Equal("no time is bounded below", Reason(SurvivalFamily.Exponential, new(0, 3), new(0, 2)));
        Assert.Equal("one time fits all intervals, so the spread is unknown", Reason(SurvivalFamily.LogNormal, new(1, 4), new(2, 5)));
        Assert.Equal("one time fits all intervals, so the spread is unknown", Reason(SurvivalFamily.Weibull, new(3, 3), new(3, 3)));
        Assert.StartsWith("the likelihood has no maximum", Reason(SurvivalFamily.LogNormal, new(0, 1), new(2, Inf)), StringComparison.Ordinal);
        Assert.Equal("no time is bounded above", Reason(SurvivalFamily.Weibull));
        Assert.Throws<ArgumentException>(() => ParametricSurvival.Fit([new(0, 0), new(1, 2)], SurvivalFamily.Weibull));
    }

    [Fact]
    public void Stretching_time_moves_the_location_only() => Gen.Select(
        Gen.Select(Gen.Double[0.1, 20], Gen.Double[0.1, 5], Gen.Bool).Select(t => new CensoredInterval(t.Item1, t.Item3 ? Inf : t.Item1 + t.Item2)).Array[4, 20],
        Gen.Double[0.1, 50]).Holds(t =>
        {
            foreach (var family in Enum.GetValues<SurvivalFamily>())
            {
                var plain = ParametricSurvival.Fit(t.Item1, family);
                var stretched = ParametricSurvival.Fit([.. t.Item1.Select(i => new CensoredInterval(i.Left * t.Item2, i.Right * t.Item2))], family);
                if (family == SurvivalFamily.Exponential && plain.IsKnown && Math.Abs(stretched.Value.Location - plain.Value.Location - Math.Log(t.Item2)) > 1e-6)
                {
                    return false;
                }

                if (plain.IsKnown && stretched.IsKnown && Math.Abs((stretched.Value.Scale / plain.Value.Scale) - 1) > 1e-6)
                {
                    return false;
                }
            }

            return true;
        });

    [Fact]
    public void Median_interval_covers_in_simulation() => Coverage.Between(0.92, 0.975, 1500, random =>
    {
        // Lognormal times of median e² looked at every 3 units up to 30.
        var looks = Enumerable.Range(0, 40).Select(_ => Math.Exp(2 + (0.6 * random.Gaussian())))
            .Select(t => t > 30 ? new CensoredInterval(30, Inf) : new(3 * Math.Floor(t / 3), 3 * Math.Floor((t / 3) + 1)));
        return ParametricSurvival.Fit([.. looks], SurvivalFamily.LogNormal).Value.Median().Covers(Math.Exp(2));
    });

    [Fact]
    public void Clusters_of_copies_count_once_each_and_one_cluster_is_a_named_outcome()
    {
        // Every time written four times in a row: as clusters the errors are those of the times written once, as observations half of them.
        double[] times = [2, 3, 4, 6, 9, 11, 15];
        var once = ParametricSurvival.FitClusters([.. times.Select(t => new[] { new CensoredInterval(t, t + 1) })], SurvivalFamily.Weibull).Value;
        var copies = ParametricSurvival.FitClusters([.. times.Select(t => Enumerable.Repeat(new CensoredInterval(t, t + 1), 4).ToArray())], SurvivalFamily.Weibull).Value;
        Near.Equal(once.LocationError, copies.LocationError, 1e-8);
        Near.Equal(once.Median().High, copies.Median().High, 1e-8);
        Assert.Equal((7, 28, 7), (once.Clusters, copies.Count, copies.Clusters));
        Assert.Equal("two clusters are needed to see how clusters differ", ParametricSurvival.FitClusters([[new(1, 2), new(3, 4)], []], SurvivalFamily.Weibull).Missing?.Reason);
    }

    [Fact]
    public void Interval_of_a_clustered_median_holds_it() => Coverage.Between(0.93, 0.975, 1000, random =>
    {
        // Twelve clusters of four lognormal times that share a cluster's pace: the median of all is 1.
        var clusters = Enumerable.Range(0, 12).Select(_ =>
        {
            var pace = 0.5 * random.Gaussian();
            return Enumerable.Range(0, 4).Select(_ => Math.Exp(pace + (0.5 * random.Gaussian()))).Select(t => new CensoredInterval(t * 0.9, t * 1.1)).ToArray();
        });
        return ParametricSurvival.FitClusters([.. clusters], SurvivalFamily.LogNormal).Value.Median().Covers(1);
    });
}
