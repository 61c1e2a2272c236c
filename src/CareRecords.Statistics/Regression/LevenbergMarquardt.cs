using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>
/// Damped least squares by QR, never by normal equations (MathNet's minimiser forms them and loses half the digits of
/// ill-conditioned problems), then undamped Gauss-Newton steps until they stop getting smaller.
/// Source: Marquardt DW (1963), J SIAM 11:431-441; Moré JJ (1978), Lecture Notes in Mathematics 630:105-116.
/// </summary>
internal static class LevenbergMarquardt
{
    private const int MostSteps = 1000;
    private const int MostPolishing = 100;

    /// <summary>The minimum near the start, or null when none was reached.</summary>
    public static double[]? Minimize(CurveProblem problem, double[] start, double damping = 1e-3)
    {
        var b = (double[])start.Clone();
        var residuals = problem.Residuals(b);
        var sum = residuals * residuals;
        if (!double.IsFinite(sum))
        {
            return null;
        }

        var scale = new double[b.Length];
        for (var step = 0; step < MostSteps; step++)
        {
            var jacobian = problem.Jacobian(b);
            if (jacobian.Enumerate().Any(v => !double.IsFinite(v)))
            {
                return null;
            }

            for (var j = 0; j < b.Length; j++)
            {
                scale[j] = Math.Max(scale[j], Math.Max(jacobian.Column(j).L2Norm(), 1e-300));
            }

            if (!Descend(problem, jacobian, scale, ref b, ref residuals, ref sum, ref damping, out var size))
            {
                // No damping lowers the sum any more: rounding, unless the slope is still steep.
                return Polish(problem, b);
            }

            if (size < 1e-10)
            {
                return Polish(problem, b);
            }
        }

        return Polish(problem, b);
    }

    /// <summary>The undamped least-squares step, with columns scaled to one length.</summary>
    public static Vector<double> GaussNewton(Matrix<double> jacobian, Vector<double> residuals)
    {
        var norms = jacobian.ColumnNorms(2).Map(v => Math.Max(v, 1e-300));
        var scaled = jacobian.MapIndexed((_, j, v) => v / norms[j]);
        return scaled.QR().Solve(residuals).PointwiseDivide(norms);
    }

    private static bool Descend(
        CurveProblem problem,
        Matrix<double> jacobian,
        double[] scale,
        ref double[] b,
        ref Vector<double> residuals,
        ref double sum,
        ref double damping,
        out double size)
    {
        size = 0;
        for (; damping < 1e20; damping *= 4)
        {
            var root = Math.Sqrt(damping);
            var padding = Matrix<double>.Build.Diagonal(b.Length, b.Length, j => root * scale[j]);
            var padded = Vector<double>.Build.Dense(residuals.Count + b.Length);
            padded.SetSubVector(0, residuals.Count, residuals);
            var move = jacobian.Stack(padding).QR().Solve(padded);
            double[] trial = [.. b.Select((v, j) => v + move[j])];
            var next = problem.Residuals(trial);
            var nextSum = next * next;
            if (nextSum < sum)
            {
                size = RelativeSize(move, b);
                (b, residuals, sum) = (trial, next, nextSum);
                damping = Math.Max(1e-15, damping / 10);
                return true;
            }
        }

        damping = 1e-3;
        return false;
    }

    private static double[]? Polish(CurveProblem problem, double[] near)
    {
        var (b, previous) = (near, double.PositiveInfinity);
        var sum = problem.Residuals(b).L2Norm();
        for (var step = 0; step < MostPolishing; step++)
        {
            var move = GaussNewton(problem.Jacobian(b), problem.Residuals(b));
            var size = RelativeSize(move, b);
            if (!double.IsFinite(size) || (size >= previous && size < 1e-9) || size > 10 * previous)
            {
                break;
            }

            double[] next = [.. b.Select((v, j) => v + move[j])];
            if (!(problem.Residuals(next).L2Norm() <= sum * (1 + 1e-9)))
            {
                break;
            }

            (b, previous) = (next, size);
            if (size < 1e-15)
            {
                break;
            }
        }

        return IsStationary(problem, b) ? b : null;
    }

    /// <summary>The cosine between the residuals and every column of the Jacobian is zero at a minimum.</summary>
    private static bool IsStationary(CurveProblem problem, double[] b)
    {
        var residuals = problem.Residuals(b);
        var length = residuals.L2Norm();
        var smallest = 1e-12 * problem.Fitted(b).Max(Math.Abs);
        var jacobian = problem.Jacobian(b);
        return length <= smallest || Enumerable.Range(0, b.Length).All(j =>
            Math.Abs(jacobian.Column(j) * residuals) <= 1e-5 * length * Math.Max(1e-300, jacobian.Column(j).L2Norm()));
    }

    private static double RelativeSize(Vector<double> move, double[] b) => move.Select((m, j) => Math.Abs(m) / (Math.Abs(b[j]) + 1e-300)).Max();
}
