using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>
/// Nonlinear least squares: the parameters b that minimise Σ w·(y − f(b, x))², with standard errors s·√diag((JᵀJ)⁻¹) from
/// the QR factors of the Jacobian at the minimum.
/// Source: Bates DM, Watts DG (1988), Nonlinear Regression Analysis and Its Applications, Wiley.
/// Assumes independent normal errors of one variance (after weighting); correlated errors make the intervals too narrow.
/// Smallest data: one point more than parameters. No minimum near the start, or parameters that the points cannot tell
/// apart, are <see cref="TooLittleData"/>.
/// </summary>
public static class NonlinearLeastSquares
{
    private const string Method = "nonlinear least squares";

    /// <summary>The fit of a curve from a start.</summary>
    /// <param name="x">Positions.</param>
    /// <param name="y">Values.</param>
    /// <param name="curve">The curve's value for parameters and a position.</param>
    /// <param name="start">First guesses of the parameters.</param>
    /// <param name="options">Derivatives and weights.</param>
    public static Outcome<NonlinearFit> Fit(
        IReadOnlyList<double> x,
        IReadOnlyList<double> y,
        Func<IReadOnlyList<double>, double, double> curve,
        IReadOnlyList<double> start,
        CurveOptions? options = null)
    {
        var guess = Require.Finite([.. start]);
        var problem = new CurveProblem(x, y, curve, options);
        if (problem.Count <= guess.Length || guess.Length == 0)
        {
            return new TooLittleData(Method, problem.Count, guess.Length + 1, "no point is left over to judge the error by");
        }

        // Bold first steps are quicker; from a far start they can leap to where nothing changes any more, and timid ones do not.
        var reason = "no minimum was found from this start";
        foreach (var damping in (ReadOnlySpan<double>)[1e-3, 10, 1e5])
        {
            if (LevenbergMarquardt.Minimize(problem, guess, damping) is not { } b)
            {
                continue;
            }

            if (Unscaled(problem.Jacobian(b)) is { } unscaled)
            {
                var residuals = problem.Residuals(b);
                return new NonlinearFit(problem, curve, b, residuals * residuals, unscaled);
            }

            reason = "the points cannot tell the parameters apart";
        }

        return new TooLittleData(Method, problem.Count, guess.Length + 1, reason);
    }

    /// <summary>(JᵀJ)⁻¹ through R of the QR factors, columns scaled; null when a column depends on the others.</summary>
    private static Matrix<double>? Unscaled(Matrix<double> jacobian)
    {
        var norms = jacobian.ColumnNorms(2);
        if (norms.Any(n => n == 0))
        {
            return null;
        }

        var r = jacobian.MapIndexed((_, j, v) => v / norms[j]).QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin).R;
        if (r.Diagonal().Any(d => Math.Abs(d) < 1e-11))
        {
            return null;
        }

        var inverse = r.Solve(Matrix<double>.Build.DenseIdentity(r.RowCount));
        return (inverse * inverse.Transpose()).MapIndexed((i, j, v) => v / (norms[i] * norms[j]));
    }
}
