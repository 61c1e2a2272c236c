using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>Some trials of one cluster.</summary>
/// <param name="Cluster">Which cluster (family, study).</param>
/// <param name="Successes">Successes.</param>
/// <param name="Trials">Trials, at least 1.</param>
/// <param name="Covariates">Covariates besides the intercept, as many as every other row has; empty for none.</param>
public sealed record ClusterRow(int Cluster, int Successes, int Trials, IReadOnlyList<double> Covariates);

/// <summary>A logistic regression whose intercept varies between clusters.</summary>
/// <param name="Coefficients">The intercept, then a coefficient for each covariate, as log odds.</param>
/// <param name="StandardErrors">Their standard errors, from the curvature of the marginal likelihood.</param>
/// <param name="Deviation">The standard deviation of intercepts between clusters, as log odds; 0 when clusters differ no more than chance.</param>
/// <param name="LogLikelihood">The marginal log-likelihood, binomial constants included.</param>
/// <param name="Clusters">How many clusters.</param>
/// <param name="Trials">How many trials.</param>
public sealed record RandomInterceptFit(
    IReadOnlyList<double> Coefficients, IReadOnlyList<double> StandardErrors, double Deviation, double LogLikelihood, int Clusters, int Trials)
{
    /// <summary>A coefficient with its Wald interval, as log odds.</summary>
    /// <param name="index">0 for the intercept.</param>
    /// <param name="level">The confidence level.</param>
    public Estimate Coefficient(int index, double level = 0.95)
    {
        Require.Level(level);
        var half = Gaussian.Critical(level) * StandardErrors[index];
        return new(Coefficients[index], Coefficients[index] - half, Coefficients[index] + half, level, Clusters, "random-intercept logistic regression");
    }

    /// <summary>The proportion in a cluster with the middle intercept and covariates of 0; not the mean of all clusters.</summary>
    /// <param name="level">The confidence level.</param>
    public Estimate MiddleProportion(double level = 0.95) =>
        Coefficient(0, level).OnScale(v => 1 / (1 + Math.Exp(-v)), "proportion of the middle cluster");
}

/// <summary>
/// Random-intercept logistic regression by maximum marginal likelihood: log odds = β·x + σ·u, u standard normal for each
/// cluster, integrated out by adaptive Gauss-Hermite quadrature (one node is Laplace's approximation).
/// Source: Pinheiro JC, Bates DM (1995), J Comput Graph Stat 4:12-35; Stijnen T et al. (2010), Stat Med 29:3046-3067.
/// Assumes trials independent given the intercept, normal intercepts. Smallest data: two clusters, with a success and a
/// failure among all trials; a coefficient that runs off to infinity is <see cref="TooLittleData"/>.
/// </summary>
public static class RandomInterceptLogistic
{
    private const string Method = "random-intercept logistic regression";

    // Log odds beyond this are a coefficient on its way to infinity.
    private const double Runaway = 15;

    /// <summary>The fit.</summary>
    /// <param name="rows">The trials, in any order.</param>
    /// <param name="nodes">Quadrature nodes, 1 to 101; 25 give seven digits for ordinary data.</param>
    public static Outcome<RandomInterceptFit> Fit(IReadOnlyCollection<ClusterRow> rows, int nodes = 25)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentOutOfRangeException.ThrowIfLessThan(nodes, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(nodes, 101);
        foreach (var row in rows)
        {
            Require.Counts(row.Successes, row.Trials);
            ArgumentOutOfRangeException.ThrowIfZero(row.Trials);
        }

        var clusters = rows.Select(r => r.Cluster).Distinct().Count();
        var (successes, trials) = (rows.Sum(r => r.Successes), rows.Sum(r => r.Trials));
        if (clusters < 2 || successes == 0 || successes == trials)
        {
            return new TooLittleData(Method, clusters, 2, "two clusters, and both successes and failures, are needed");
        }

        var likelihood = new MarginalLikelihood(rows, nodes);
        var start = new double[likelihood.Width + 1];
        (start[0], start[^1]) = (Math.Log((double)successes / (trials - successes)), 0.5);

        // Differences give the slope eight digits; Newton steps then give the place of the maximum the rest.
        var best = QuasiNewton.Minimize(b => (-likelihood.At(b), Array.ConvertAll(likelihood.Gradient(b), g => -g)), start, 1e-8).At;
        best = Polished(likelihood, best);
        best[^1] = Math.Abs(best[^1]);
        if (best.Any(b => Math.Abs(b) > Runaway) || !best.All(double.IsFinite))
        {
            return new TooLittleData(Method, clusters, 2, "a coefficient runs off to infinity");
        }

        // At σ = 0 the information of the coefficients stands apart from that of σ.
        var flat = best[^1] < 1e-4;
        best[^1] = flat ? 0 : best[^1];
        var information = -likelihood.Curvature(best);
        var covariance = (flat ? information.SubMatrix(0, likelihood.Width, 0, likelihood.Width) : information).Inverse();
        double[] errors = [.. Enumerable.Range(0, likelihood.Width).Select(j => Math.Sqrt(covariance[j, j]))];
        return errors.All(double.IsFinite)
            ? new RandomInterceptFit(best[..^1], errors, best[^1], likelihood.At(best), clusters, trials)
            : new TooLittleData(Method, clusters, 2, "the covariates cannot be told apart");
    }

    /// <summary>A few Newton steps for the last digits.</summary>
    private static double[] Polished(MarginalLikelihood likelihood, double[] near)
    {
        var at = near;
        for (var step = 0; step < 5 && Math.Abs(at[^1]) > 1e-3; step++)
        {
            var move = (-likelihood.Curvature(at)).Solve(Vector<double>.Build.DenseOfArray(likelihood.Gradient(at)));
            if (!(move.AbsoluteMaximum() < 0.01))
            {
                break;
            }

            at = [.. at.Zip(move, (a, m) => a + m)];
        }

        return at;
    }
}
