using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>A curve fitted by least squares.</summary>
public sealed class NonlinearFit
{
    private const double WidestSearch = 1e6;

    private readonly CurveProblem _problem;
    private readonly double[] _parameters;
    private readonly Matrix<double> _covariance;
    private readonly Func<IReadOnlyList<double>, double, double> _curve;

    internal NonlinearFit(CurveProblem problem, Func<IReadOnlyList<double>, double, double> curve, double[] parameters, double rss, Matrix<double> unscaled)
    {
        (_problem, _curve, _parameters) = (problem, curve, parameters);
        ResidualSumOfSquares = rss;
        Freedom = problem.Count - parameters.Length;
        _covariance = unscaled * (rss / Freedom);
    }

    /// <summary>The parameters, in the order of the curve's arguments.</summary>
    public IReadOnlyList<double> Parameters => _parameters;

    /// <summary>The (weighted) residual sum of squares.</summary>
    public double ResidualSumOfSquares { get; }

    /// <summary>Points less parameters.</summary>
    public int Freedom { get; }

    /// <summary>The residual standard deviation √(RSS/freedom).</summary>
    public double ResidualDeviation => Math.Sqrt(ResidualSumOfSquares / Freedom);

    /// <summary>The covariance of two parameters, from the Jacobian at the minimum.</summary>
    /// <param name="i">Index from 0.</param>
    /// <param name="j">Index from 0.</param>
    public double Covariance(int i, int j) => _covariance[i, j];

    /// <summary>The standard error of one parameter.</summary>
    /// <param name="parameter">Index from 0.</param>
    public double StandardError(int parameter) => Math.Sqrt(_covariance[parameter, parameter]);

    /// <summary>The value of the fitted curve.</summary>
    /// <param name="x">A position.</param>
    public double At(double x) => _curve(_parameters, x);

    /// <summary>One parameter with its t interval (estimate ± t·standard error).</summary>
    /// <param name="parameter">Index from 0.</param>
    /// <param name="level">The confidence level.</param>
    public Estimate Interval(int parameter, double level = 0.95)
    {
        Require.Level(level);
        var half = StudentT.Critical(level, Freedom) * StandardError(parameter);
        var value = _parameters[parameter];
        return new(value, value - half, value + half, level, _problem.Count, "nonlinear least squares, t interval");
    }

    /// <summary>The fitted curve at a position with its pointwise delta-method t interval.</summary>
    /// <param name="x">A position.</param>
    /// <param name="level">The confidence level.</param>
    public Estimate CurveInterval(double x, double level = 0.95)
    {
        Require.Level(level);
        var slope = Vector<double>.Build.DenseOfArray(_problem.Differences(_parameters, x));
        var half = StudentT.Critical(level, Freedom) * Math.Sqrt(Math.Max(0, slope * _covariance * slope));
        return new(At(x), At(x) - half, At(x) + half, level, _problem.Count, "nonlinear least squares, pointwise band");
    }

    /// <summary>
    /// One parameter with its profile interval: the values at which the best fit of the others raises the residual sum of
    /// squares by t²·s² (Bates DM, Watts DG 1988, Nonlinear Regression Analysis, chapter 6). A side on which the sum never
    /// rises so far is infinite.
    /// </summary>
    /// <param name="parameter">Index from 0.</param>
    /// <param name="level">The confidence level.</param>
    public Estimate ProfileInterval(int parameter, double level = 0.95)
    {
        Require.Level(level);
        var t = StudentT.Critical(level, Freedom);
        var allowed = ResidualSumOfSquares * (1 + (t * t / Freedom));
        return new(
            _parameters[parameter], Side(parameter, -1, allowed), Side(parameter, 1, allowed), level, _problem.Count, "nonlinear least squares, profile interval");
    }

    private double Side(int parameter, int direction, double allowed)
    {
        var centre = _parameters[parameter];
        var unit = Math.Max(StandardError(parameter), 1e-300);
        double[] rest = [.. _parameters.Where((_, j) => j != parameter)];
        var (near, far) = (0.0, 1.0);
        while (Profile(parameter, centre + (direction * far * unit), ref rest) < allowed)
        {
            (near, far) = (far, far * 1.5);
            if (far > WidestSearch)
            {
                return direction * double.PositiveInfinity;
            }
        }

        while (far - near > 1e-10 * far)
        {
            var middle = (near + far) / 2;
            (near, far) = Profile(parameter, centre + (direction * middle * unit), ref rest) < allowed ? (middle, far) : (near, middle);
        }

        return centre + (direction * far * unit);
    }

    /// <summary>The best residual sum of squares with one parameter held, starting from the others' last best values.</summary>
    private double Profile(int parameter, double value, ref double[] rest)
    {
        var held = _problem.Holding(parameter, value);
        if (rest.Length == 0)
        {
            return held.Residuals([]).DotProduct(held.Residuals([]));
        }

        if (LevenbergMarquardt.Minimize(held, rest) is { } best)
        {
            rest = best;
        }

        var residuals = held.Residuals(rest);
        var sum = residuals * residuals;
        return double.IsNaN(sum) ? double.PositiveInfinity : sum;
    }
}
