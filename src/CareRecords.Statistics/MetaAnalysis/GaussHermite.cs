using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>
/// Gauss-Hermite quadrature for the standard normal density: nodes are the eigenvalues of the Jacobi matrix, weights come
/// from the orthonormal polynomials, which keeps their relative precision far out (Golub GH, Welsch JH 1969, Math Comput
/// 23:221-230).
/// </summary>
internal static class GaussHermite
{
    public static (double Node, double Weight)[] Rule(int points)
    {
        var jacobi = Matrix<double>.Build.Dense(points, points, (i, j) => Math.Abs(i - j) == 1 ? Math.Sqrt(Math.Max(i, j)) : 0);
        return [.. jacobi.Evd(Symmetricity.Symmetric).EigenValues.Select(v => v.Real).Select(x => (x, 1 / SumOfSquares(x, points)))];
    }

    private static double SumOfSquares(double x, int points)
    {
        var (before, now, sum) = (0.0, 1.0, 1.0);
        for (var k = 1; k < points; k++)
        {
            (before, now) = (now, ((x * now) - (Math.Sqrt(k - 1) * before)) / Math.Sqrt(k));
            sum += now * now;
        }

        return sum;
    }
}
