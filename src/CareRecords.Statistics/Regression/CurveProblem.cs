using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>The weighted residuals of a curve and its Jacobian.</summary>
internal sealed class CurveProblem
{
    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double[] _root;
    private readonly Func<IReadOnlyList<double>, double, double> _curve;
    private readonly Func<IReadOnlyList<double>, double, IReadOnlyList<double>>? _gradient;

    public CurveProblem(IReadOnlyList<double> x, IReadOnlyList<double> y, Func<IReadOnlyList<double>, double, double> curve, CurveOptions? options)
    {
        ArgumentNullException.ThrowIfNull(curve);
        (_x, _y) = Require.Pairs(x, y);
        (_curve, _gradient) = (curve, options?.Gradient);
        _root = options?.Weights is { } w ? Array.ConvertAll(Require.Finite([.. w]), Math.Sqrt) : [.. _y.Select(_ => 1.0)];
        if (_root.Length != _y.Length || !Array.TrueForAll(_root, r => r > 0))
        {
            throw new ArgumentException("Each point has a weight above 0.", nameof(options));
        }
    }

    public int Count => _y.Length;

    public double[] Fitted(double[] b) => Array.ConvertAll(_x, x => _curve(b, x));

    public Vector<double> Residuals(double[] b)
    {
        var fitted = Fitted(b);
        return Vector<double>.Build.Dense(Count, i => _root[i] * (_y[i] - fitted[i]));
    }

    /// <summary>Derivatives of the weighted fitted values.</summary>
    public Matrix<double> Jacobian(double[] b)
    {
        var jacobian = Matrix<double>.Build.Dense(Count, b.Length);
        for (var i = 0; i < Count; i++)
        {
            var row = _gradient?.Invoke(b, _x[i]) ?? Differences(b, _x[i]);
            for (var j = 0; j < b.Length; j++)
            {
                jacobian[i, j] = _root[i] * row[j];
            }
        }

        return jacobian;
    }

    public double[] Differences(double[] b, double x)
    {
        var row = new double[b.Length];
        var moved = (double[])b.Clone();
        for (var j = 0; j < b.Length; j++)
        {
            var step = b[j] == 0 ? 1e-4 : 1e-2 * Math.Abs(b[j]);
            var column = new double[4];
            for (var k = 0; k < 4; k++, step /= 2)
            {
                moved[j] = b[j] + step;
                var above = _curve(moved, x);
                moved[j] = b[j] - step;
                column[k] = (above - _curve(moved, x)) / (2 * step);
            }

            moved[j] = b[j];

            // Richardson's extrapolation removes the errors of order h², h⁴ and h⁶ in turn.
            foreach (var factor in (ReadOnlySpan<double>)[4, 16, 64])
            {
                for (var k = 0; k < 3; k++)
                {
                    column[k] = column[k + 1] + ((column[k + 1] - column[k]) / (factor - 1));
                }
            }

            row[j] = column[0];
        }

        return row;
    }

    /// <summary>The same problem with one parameter held at a value; the others keep their order.</summary>
    public CurveProblem Holding(int parameter, double value)
    {
        double[] Whole(IReadOnlyList<double> rest) => [.. rest.Take(parameter), value, .. rest.Skip(parameter)];
        Func<IReadOnlyList<double>, double, IReadOnlyList<double>>? gradient = _gradient is null
            ? null
            : (rest, x) => [.. _gradient(Whole(rest), x).Where((_, j) => j != parameter)];
        return new(_x, _y, (rest, x) => _curve(Whole(rest), x), new CurveOptions { Gradient = gradient, Weights = [.. _root.Select(r => r * r)] });
    }
}
