using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>The log-likelihood of a random-intercept logistic regression in (β, σ), with each cluster's intercept integrated out.</summary>
internal sealed class MarginalLikelihood
{
    private readonly (double X, double N, double[] Z)[][] _clusters;
    private readonly (double Node, double Weight)[] _rule;
    private readonly double _constant;

    public MarginalLikelihood(IReadOnlyCollection<ClusterRow> rows, int nodes)
    {
        Width = 1 + rows.First().Covariates.Count;
        if (rows.Any(r => r.Covariates.Count != Width - 1))
        {
            throw new ArgumentException("Every row has the same covariates.", nameof(rows));
        }

        _clusters =
        [
            .. rows.GroupBy(r => r.Cluster).OrderBy(g => g.Key).Select(g => g.Select(r =>
                ((double)r.Successes, (double)r.Trials, (double[])[1, .. Require.Finite([.. r.Covariates])])).ToArray()),
        ];
        _constant = rows.Sum(r => SpecialFunctions.BinomialLn(r.Trials, r.Successes));
        _rule = GaussHermite.Rule(nodes);
    }

    /// <summary>How many coefficients, the intercept included.</summary>
    public int Width { get; }

    public double At(double[] b)
    {
        var sum = 0.0;
        foreach (var cluster in _clusters)
        {
            sum += Cluster(cluster, b, null);
        }

        return _constant + sum;
    }

    /// <summary>
    /// With enough nodes the slope of the integral itself, by the same quadrature (Fisher's identity: the mean slope given the data); with few, where it is the
    /// approximation that is to be maximal, central differences of it, extrapolated once.
    /// </summary>
    public double[] Gradient(double[] b)
    {
        if (!IsExact)
        {
            return [.. Enumerable.Range(0, b.Length).Select(j => Slope(h => At(Moved(b, j, h))))];
        }

        var slope = new double[b.Length];
        foreach (var cluster in _clusters)
        {
            Cluster(cluster, b, slope);
        }

        return slope;
    }

    // From as many nodes on the quadrature has no error that a double shows, for ordinary data.
    private const int ManyNodes = 20;

    private bool IsExact => _rule.Length >= ManyNodes;

    private static double Slope(Func<double, double> at)
    {
        double Central(double h) => (at(h) - at(-h)) / (2 * h);
        var (wide, narrow) = (Central(2e-3), Central(1e-3));
        return narrow + ((narrow - wide) / 3);
    }

    public Matrix<double> Curvature(double[] b)
    {
        if (IsExact)
        {
            var (n, around) = (b.Length, new double[b.Length][][]);
            for (var j = 0; j < n; j++)
            {
                around[j] = [Gradient(Moved(b, j, 2e-3)), Gradient(Moved(b, j, -2e-3)), Gradient(Moved(b, j, 1e-3)), Gradient(Moved(b, j, -1e-3))];
            }

            double Bent(int i, int j)
            {
                var (wide, narrow) = ((around[j][0][i] - around[j][1][i]) / 4e-3, (around[j][2][i] - around[j][3][i]) / 2e-3);
                return narrow + ((narrow - wide) / 3);
            }

            return Matrix<double>.Build.Dense(n, n, (i, j) => (Bent(i, j) + Bent(j, i)) / 2);
        }

        var centre = At(b);
        return Matrix<double>.Build.Dense(b.Length, b.Length, (i, j) =>
        {
            double Bend(double h) => i == j
                ? (At(Moved(b, i, h)) - (2 * centre) + At(Moved(b, i, -h))) / (h * h)
                : (At(Moved(Moved(b, i, h), j, h)) - At(Moved(Moved(b, i, h), j, -h))
                    - At(Moved(Moved(b, i, -h), j, h)) + At(Moved(Moved(b, i, -h), j, -h))) / (4 * h * h);
            var (d1, d2, d4) = (Bend(8e-2), Bend(4e-2), Bend(2e-2));
            var (first, second) = (d2 + ((d2 - d1) / 3), d4 + ((d4 - d2) / 3));
            return second + ((second - first) / 15);
        });
    }

    private static double[] Moved(double[] b, int j, double by)
    {
        var moved = (double[])b.Clone();
        moved[j] += by;
        return moved;
    }

    /// <summary>log ∫ exp(ℓ(u))·φ(u) du with the nodes placed about the mode of the integrand; its slope in (β, σ) is added to <paramref name="slope"/>.</summary>
    private double Cluster((double X, double N, double[] Z)[] rows, double[] b, double[]? slope)
    {
        var offsets = new double[rows.Length];
        for (var i = 0; i < rows.Length; i++)
        {
            for (var j = 0; j < rows[i].Z.Length; j++)
            {
                offsets[i] += rows[i].Z[j] * b[j];
            }
        }

        var sigma = b[^1];
        var (mode, spread) = Mode(rows, offsets, sigma);
        var top = Log(rows, offsets, sigma, mode);
        var sum = 0.0;
        var mean = slope is null ? [] : new double[slope.Length];
        foreach (var (node, weight) in _rule)
        {
            var u = mode + (spread * node);
            var part = weight * Math.Exp(Log(rows, offsets, sigma, u) - top + (0.5 * node * node));
            sum += part;
            if (slope is not null)
            {
                AddSlopes(rows, offsets, sigma, u, part, mean);
            }
        }

        for (var j = 0; j < mean.Length; j++)
        {
            slope![j] += mean[j] / sum;
        }

        return top + Math.Log(sum * spread);
    }

    /// <summary>The slopes of the log-likelihood at u in each coefficient and in σ, weighted.</summary>
    private static void AddSlopes((double X, double N, double[] Z)[] rows, double[] offsets, double sigma, double u, double weight, double[] into)
    {
        for (var i = 0; i < rows.Length; i++)
        {
            var left = weight * (rows[i].X - (rows[i].N / (1 + Math.Exp(-(offsets[i] + (sigma * u))))));
            for (var j = 0; j < rows[i].Z.Length; j++)
            {
                into[j] += left * rows[i].Z[j];
            }

            into[^1] += left * u;
        }
    }

    /// <summary>The binomial log-likelihood plus log φ(u) without its constant.</summary>
    private static double Log((double X, double N, double[] Z)[] rows, double[] offsets, double sigma, double u)
    {
        var sum = -0.5 * u * u;
        for (var i = 0; i < rows.Length; i++)
        {
            var eta = offsets[i] + (sigma * u);
            sum += (rows[i].X * eta) - (rows[i].N * (Math.Max(eta, 0) + Precise.Log1p(Math.Exp(-Math.Abs(eta)))));
        }

        return sum;
    }

    private static (double Mode, double Spread) Mode((double X, double N, double[] Z)[] rows, double[] offsets, double sigma)
    {
        var (u, curvature) = (0.0, 1.0);
        var (low, high) = (double.NegativeInfinity, double.PositiveInfinity);
        for (var step = 0; step < 200; step++)
        {
            var slope = -u;
            curvature = 1;
            for (var i = 0; i < rows.Length; i++)
            {
                var p = 1 / (1 + Math.Exp(-(offsets[i] + (sigma * u))));
                slope += sigma * (rows[i].X - (rows[i].N * p));
                curvature += sigma * sigma * rows[i].N * p * (1 - p);
            }

            // The integrand is log-concave, so its slope falls. With a large σ plain Newton steps can go to and fro for ever:
            // one that leaves the bracket of the mode is halved into it.
            (low, high) = slope > 0 ? (u, high) : (low, u);
            var next = u + Math.Clamp(slope / curvature, -2, 2);
            if (next <= low || next >= high)
            {
                next = double.IsFinite(low) && double.IsFinite(high) ? (low + high) / 2 : next;
            }

            var move = Math.Abs(next - u);
            u = next;
            if (move < 1e-13 * Math.Max(1, Math.Abs(u)))
            {
                break;
            }
        }

        return (u, 1 / Math.Sqrt(curvature));
    }
}
