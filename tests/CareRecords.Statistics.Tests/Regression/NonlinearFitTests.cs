namespace CareRecords.Statistics.Tests.Regression;

public class NonlinearFitTests
{
    [Fact]
    public void A_straight_line_gives_the_textbook_slope_and_error()
    {
        // y = 1, 3, 2, 6 at 0…3: slope 7/5, intercept 9/10, RSS 21/5 on 2 freedom, var slope = (21/10)/5.
        var fit = NonlinearLeastSquares.Fit([0, 1, 2, 3], [1, 3, 2, 6], (b, x) => b[0] + (b[1] * x), [0, 0.5]).Value;
        Near.Equal(0.9, fit.Parameters[0], 1e-10);
        Near.Equal(1.4, fit.Parameters[1], 1e-10);
        Near.Equal(4.2, fit.ResidualSumOfSquares, 1e-10);
        Near.Equal(Math.Sqrt(0.42), fit.StandardError(1), 1e-10);

        // For a linear curve profile and t interval agree; t(0.975; 2) = 4.302652729696142.
        Near.Equal(1.4 - (4.302652729696142 * Math.Sqrt(0.42)), fit.Interval(1).Low, 1e-9);
        Near.Equal(fit.Interval(1).Low, fit.ProfileInterval(1).Low, 1e-7);
        Near.Equal(fit.Interval(1).High, fit.ProfileInterval(1).High, 1e-7);
        Near.Equal(fit.Interval(0).Low, fit.CurveInterval(0).Low, 1e-9);
    }

    [Fact]
    public void A_doubled_weight_is_a_doubled_point()
    {
        static double Curve(IReadOnlyList<double> b, double x) => b[0] * Math.Exp(-b[1] * x);
        var weighted = NonlinearLeastSquares.Fit([0, 1, 2, 4], [9, 6, 4, 1], Curve, [8, 0.3], new CurveOptions { Weights = [1, 2, 1, 1] }).Value;
        var doubled = NonlinearLeastSquares.Fit([0, 1, 1, 2, 4], [9, 6, 6, 4, 1], Curve, [8, 0.3]).Value;
        Near.Equal(doubled.Parameters[1], weighted.Parameters[1], 1e-9);
    }

    [Fact]
    public void Too_few_points_or_parameters_that_cannot_be_told_apart_are_named_outcomes()
    {
        static double Line(IReadOnlyList<double> b, double x) => b[0] + (b[1] * x);
        Assert.Equal(3, NonlinearLeastSquares.Fit([0, 1], [1, 2], Line, [0, 1]).Missing!.Smallest);
        Assert.False(NonlinearLeastSquares.Fit([0, 1, 2], [1, 2, 4], (b, x) => b[0] + b[1] + x, [0, 1]).IsKnown);
        Assert.False(NonlinearLeastSquares.Fit([1, 1, 1], [1, 2, 4], Line, [0, 1]).IsKnown);
        Assert.False(NonlinearLeastSquares.Fit([0, 1, 2], [1, 2, 4], (b, x) => Math.Log(-b[0]), [1]).IsKnown);
        Assert.Throws<ArgumentException>(() => NonlinearLeastSquares.Fit([0, 1, 2], [1, double.NaN, 4], Line, [0, 1]));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(100, 0.75)]
    public void NIST_BoxBOD_is_found_from_both_starts_though_the_first_leaps_to_a_flat_place(double b1, double b2)
    {
        // NIST StRD nonlinear regression, BoxBOD (higher difficulty): 213.80940889 and 0.54723748542.
        var fit = NonlinearLeastSquares.Fit([1, 2, 3, 5, 7, 10], [109, 149, 149, 191, 213, 224], (b, x) => b[0] * (1 - Math.Exp(-b[1] * x)), [b1, b2]).Value;
        Near.Equal(213.80940889, fit.Parameters[0], 1e-10);
        Near.Equal(0.54723748542, fit.Parameters[1], 1e-10);
    }

    [Fact]
    public void A_level_or_straight_series_has_no_plateau_to_approach()
    {
        Assert.False(AsymptoticCurve.Fit([1, 2, 3], [1, 2, 3]).IsKnown);
        Assert.False(AsymptoticCurve.Fit([1, 1, 2, 2], [1, 2, 3, 4]).IsKnown);
        Assert.False(AsymptoticCurve.Fit([1, 2, 3, 4, 5], [96, 96, 96, 96, 96]).IsKnown);
    }

    [Fact]
    public void Intervals_of_a_return_to_a_plateau_cover_in_simulation() => Coverage.Between(0.92, 0.975, 400, random =>
    {
        double[] days = [.. Enumerable.Range(0, 24).Select(i => i / 2.0)];
        double[] values = [.. days.Select(d => 97 - (6 * Math.Exp(-0.5 * d)) + (0.7 * random.Gaussian()))];
        return AsymptoticCurve.Fit(days, values).Value.Rate.Covers(0.5);
    });
}
