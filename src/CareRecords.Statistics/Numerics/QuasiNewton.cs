using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>Where a minimisation ended.</summary>
/// <param name="At">The point.</param>
/// <param name="Value">The value there.</param>
/// <param name="Converged">The slope vanished, or no step lowered the value any more.</param>
internal sealed record Minimum(double[] At, double Value, bool Converged);

/// <summary>
/// BFGS with backtracking. MathNet's own stops with an exception when rounding ends the descent, which here is the normal
/// way to finish. Source: Nocedal J, Wright SJ (2006), Numerical Optimization, chapter 6.
/// </summary>
internal static class QuasiNewton
{
    private const int MostSteps = 2000;

    public static Minimum Minimize(Func<double[], (double Value, double[] Gradient)> function, double[] start, double slopeTolerance = 1e-11)
    {
        var n = start.Length;
        var x = Vector<double>.Build.DenseOfArray(start);
        var (value, slope) = Evaluate(function, x);
        var inverse = Matrix<double>.Build.DenseIdentity(n);
        var fresh = true;
        for (var step = 0; step < MostSteps; step++)
        {
            if (slope.AbsoluteMaximum() <= slopeTolerance * Math.Max(1, Math.Abs(value)))
            {
                return new([.. x], value, true);
            }

            var direction = -(inverse * slope);
            var descent = direction * slope;
            if (!(descent < 0))
            {
                (inverse, direction, descent, fresh) = (Matrix<double>.Build.DenseIdentity(n), -slope, -(slope * slope), true);
            }

            if (!Search(function, x, value, direction, descent, out var next, out var nextValue, out var nextSlope))
            {
                if (fresh)
                {
                    return new([.. x], value, true);
                }

                (inverse, fresh) = (Matrix<double>.Build.DenseIdentity(n), true);
                continue;
            }

            Update(ref inverse, next - x, nextSlope - slope, fresh);
            (x, value, slope, fresh) = (next, nextValue, nextSlope, false);
        }

        return new([.. x], value, false);
    }

    private static bool Search(
        Func<double[], (double, double[])> function,
        Vector<double> x,
        double value,
        Vector<double> direction,
        double descent,
        out Vector<double> next,
        out double nextValue,
        out Vector<double> nextSlope)
    {
        // No single step moves a parameter by more than 5 on its unbounded scale.
        var length = Math.Min(1, 5 / Math.Max(1e-300, direction.AbsoluteMaximum()));
        for (var halvings = 0; halvings < 30; halvings++, length /= 2)
        {
            next = x + (length * direction);
            (nextValue, nextSlope) = Evaluate(function, next);
            if (nextValue < value + (1e-4 * length * descent) && double.IsFinite(nextSlope.AbsoluteMaximum()))
            {
                return true;
            }
        }

        (next, nextValue, nextSlope) = (x, value, direction);
        return false;
    }

    private static void Update(ref Matrix<double> inverse, Vector<double> moved, Vector<double> bent, bool fresh)
    {
        var curvature = moved * bent;
        if (curvature <= 1e-12 * moved.L2Norm() * bent.L2Norm())
        {
            return;
        }

        if (fresh)
        {
            inverse *= curvature / (bent * bent);
        }

        var carried = inverse * bent;
        inverse += moved.OuterProduct(moved) * ((1 + ((bent * carried) / curvature)) / curvature)
            - ((moved.OuterProduct(carried) + carried.OuterProduct(moved)) / curvature);
    }

    private static (double Value, Vector<double> Slope) Evaluate(Func<double[], (double Value, double[] Gradient)> function, Vector<double> x)
    {
        var (value, gradient) = function([.. x]);
        return (double.IsNaN(value) ? double.PositiveInfinity : value, Vector<double>.Build.DenseOfArray(gradient));
    }
}
