namespace CareRecords.Statistics;

/// <summary>A fitted approach to a plateau: y = Asymptote + (Start − Asymptote)·exp(−Rate·x).</summary>
/// <param name="Fit">The fit in the parameters asymptote, start, log rate.</param>
/// <param name="Level">The confidence level of the estimates.</param>
public sealed record AsymptoticFit(NonlinearFit Fit, double Level)
{
    /// <summary>The plateau.</summary>
    public Estimate Asymptote => Fit.Interval(0, Level);

    /// <summary>The value at x = 0.</summary>
    public Estimate Start => Fit.Interval(1, Level);

    /// <summary>The rate per unit of x; its interval is made on the log scale.</summary>
    public Estimate Rate => Fit.Interval(2, Level).OnScale(Math.Exp, "rate of approach");

    /// <summary>The x in which half of the way to the plateau is gone: log 2/rate.</summary>
    public Estimate HalfTime
    {
        get
        {
            var rate = Rate;
            return new(Math.Log(2) / rate.Value, Math.Log(2) / rate.High, Math.Log(2) / rate.Low, Level, rate.Count, "half-time of approach");
        }
    }
}

/// <summary>
/// Exponential approach to a plateau by nonlinear least squares, started by itself: for a grid of rates the two linear
/// parameters follow by linear least squares, and the best rate is refined.
/// Source: Bates DM, Watts DG (1988), Nonlinear Regression Analysis, section 3.3; Golub GH, Pereyra V (1973), SIAM J Numer Anal
/// 10:413-432, for the separation. Assumes independent normal errors of one variance. Smallest data: four points at three
/// or more positions; a straight line or a level series does not fix the plateau and is <see cref="TooLittleData"/>.
/// </summary>
public static class AsymptoticCurve
{
    /// <summary>The fit.</summary>
    /// <param name="x">Positions.</param>
    /// <param name="y">Values.</param>
    /// <param name="level">The confidence level.</param>
    public static Outcome<AsymptoticFit> Fit(IReadOnlyList<double> x, IReadOnlyList<double> y, double level = 0.95)
    {
        Require.Level(level);
        var (a, b) = Require.Pairs(x, y);
        if (a.Length < 4 || a.Distinct().Count() < 3)
        {
            return new TooLittleData("approach to a plateau", a.Length, 4, "four points at three positions are needed");
        }

        if (b.Max() == b.Min())
        {
            return new TooLittleData("approach to a plateau", b.Length, 4, "all values are equal: nothing approaches anything");
        }

        var range = a.Max() - a.Min();
        var best = Enumerable.Range(0, 61).Select(k => Math.Log(0.02 / range) + (k * Math.Log(5000) / 60))
            .Select(logRate => Linear(a, b, logRate)).MinBy(s => s.Sum);
        return NonlinearLeastSquares.Fit(a, b, Value, best.Parameters, new CurveOptions { Gradient = Gradient })
            .Then(fit => new AsymptoticFit(fit, level));
    }

    private static double Value(IReadOnlyList<double> p, double x) => p[0] + ((p[1] - p[0]) * Math.Exp(-Math.Exp(p[2]) * x));

    private static double[] Gradient(IReadOnlyList<double> p, double x)
    {
        var rate = Math.Exp(p[2]);
        var left = Math.Exp(-rate * x);
        return [1 - left, left, -(p[1] - p[0]) * left * rate * x];
    }

    private static (double Sum, double[] Parameters) Linear(double[] x, double[] y, double logRate)
    {
        // Only a start: the normal equations of two columns will do.
        var (aa, ab, bb, ay, by, yy) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < x.Length; i++)
        {
            var left = Math.Exp(-Math.Exp(logRate) * x[i]);
            var gone = 1 - left;
            (aa, ab, bb) = (aa + (gone * gone), ab + (gone * left), bb + (left * left));
            (ay, by, yy) = (ay + (gone * y[i]), by + (left * y[i]), yy + (y[i] * y[i]));
        }

        var determinant = (aa * bb) - (ab * ab);
        var (plateau, start) = (((bb * ay) - (ab * by)) / determinant, ((aa * by) - (ab * ay)) / determinant);
        var sum = yy - (plateau * ay) - (start * by);
        return (double.IsFinite(sum) ? sum : double.PositiveInfinity, [plateau, start, logRate]);
    }
}
