using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>
/// Draws from a multivariate normal distribution: mean + L·z with L the Cholesky factor of the covariance. A covariance
/// that is only just positive semidefinite gets a ridge of 1e-12 of its largest variance.
/// </summary>
public sealed class MultivariateNormal
{
    private readonly double[] _mean;
    private readonly Matrix<double> _factor;

    /// <summary>Prepares draws.</summary>
    /// <param name="mean">The mean.</param>
    /// <param name="covariance">The covariance matrix, row by row, symmetric.</param>
    /// <exception cref="ArgumentException">The matrix is no covariance matrix.</exception>
    public MultivariateNormal(IReadOnlyList<double> mean, IReadOnlyList<IReadOnlyList<double>> covariance)
    {
        ArgumentNullException.ThrowIfNull(covariance);
        _mean = Require.Finite([.. mean]);
        var n = _mean.Length;
        if (covariance.Count != n || covariance.Any(r => r.Count != n))
        {
            throw new ArgumentException("The covariance matrix is as wide as the mean is long.", nameof(covariance));
        }

        var matrix = Matrix<double>.Build.Dense(n, n, (i, j) => covariance[i][j]);
        var largest = matrix.Diagonal().Maximum();
        if (!matrix.Enumerate().All(double.IsFinite) || !((matrix - matrix.Transpose()).FrobeniusNorm() <= 1e-9 * Math.Max(largest, 1e-300) * n))
        {
            throw new ArgumentException("A covariance matrix is finite and symmetric.", nameof(covariance));
        }

        if (largest <= 0)
        {
            _factor = Matrix<double>.Build.Dense(n, n);
            return;
        }

        _factor = (matrix + Matrix<double>.Build.Diagonal(n, n, 1e-12 * largest)).Cholesky().Factor;
    }

    /// <summary>One draw.</summary>
    /// <param name="random">Where the randomness comes from.</param>
    public double[] Draw(SeededRandom random)
    {
        ArgumentNullException.ThrowIfNull(random);
        var z = Vector<double>.Build.Dense(_mean.Length, _ => random.Gaussian());
        return [.. _mean.Zip(_factor * z, (m, d) => m + d)];
    }
}
