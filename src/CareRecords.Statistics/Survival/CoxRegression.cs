using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>How tied event times enter Cox's partial likelihood.</summary>
public enum CoxTies
{
    /// <summary>Efron's approximation, close to exact for few ties.</summary>
    Efron,

    /// <summary>Breslow's approximation.</summary>
    Breslow,

    /// <summary>The conditional likelihood of discrete time.</summary>
    Exact,
}

/// <summary>One subject of a Cox regression.</summary>
/// <param name="FollowUp">Its follow-up.</param>
/// <param name="Covariates">Its covariates, as many as every other subject has.</param>
public sealed record CoxSubject(FollowUp FollowUp, IReadOnlyList<double> Covariates);

/// <summary>A fitted Cox regression.</summary>
/// <param name="Coefficients">Log hazard ratios per unit of each covariate.</param>
/// <param name="Covariance">Their covariance matrix (inverse information).</param>
/// <param name="LogLikelihoodNull">Log partial likelihood without covariates.</param>
/// <param name="LogLikelihood">Log partial likelihood of the fit.</param>
/// <param name="ScoreTest">The score chi-square that all coefficients are 0.</param>
/// <param name="Count">How many subjects.</param>
public sealed record CoxFit(
    IReadOnlyList<double> Coefficients,
    IReadOnlyList<IReadOnlyList<double>> Covariance,
    double LogLikelihoodNull,
    double LogLikelihood,
    double ScoreTest,
    int Count)
{
    /// <summary>Standard error of one coefficient.</summary>
    /// <param name="covariate">Its index from 0.</param>
    public double StandardError(int covariate) => Math.Sqrt(Covariance[covariate][covariate]);

    /// <summary>The hazard ratio per unit of one covariate, with its Wald interval.</summary>
    /// <param name="covariate">Its index from 0.</param>
    /// <param name="level">The confidence level.</param>
    public Estimate HazardRatio(int covariate, double level = 0.95)
    {
        var (log, half) = (Coefficients[covariate], Gaussian.Critical(level) * StandardError(covariate));
        return new Estimate(log, log - half, log + half, level, Count, "log hazard ratio").OnScale(Math.Exp, "Cox hazard ratio");
    }
}

/// <summary>
/// Cox's proportional-hazards regression by maximum partial likelihood (Newton steps with halving).
/// Source: Cox DR (1972), J R Stat Soc B 34:187-220; Efron B (1977), J Am Stat Assoc 72:557-565.
/// Assumes hazards in constant ratio over time and censoring unrelated to the event. Smallest data: two subjects and one
/// event while the covariates of those at risk differ; a coefficient that runs off to infinity is
/// <see cref="TooLittleData"/>.
/// </summary>
public static class CoxRegression
{
    private const string Method = "Cox regression";
    private const int MostSteps = 100;

    /// <summary>The fit.</summary>
    /// <param name="subjects">Subjects in any order, each with at least one covariate.</param>
    /// <param name="ties">How ties enter.</param>
    public static Outcome<CoxFit> Fit(IReadOnlyCollection<CoxSubject> subjects, CoxTies ties = CoxTies.Efron)
    {
        ArgumentNullException.ThrowIfNull(subjects);
        RiskTable.Validate([.. subjects.Select(s => s.FollowUp)]);
        if (subjects.Count < 2 || !subjects.Any(s => s.FollowUp.Happened))
        {
            return new TooLittleData(Method, subjects.Count, 2, "no event to explain");
        }

        var width = subjects.First().Covariates.Count;
        if (width == 0 || subjects.Any(s => s.Covariates.Count != width))
        {
            throw new ArgumentException("Every subject has the same covariates, at least one.", nameof(subjects));
        }

        // Centred covariates keep the exponentials small and leave the coefficients as they are.
        var rows = subjects.Select(s => Vector<double>.Build.DenseOfArray(Require.Finite([.. s.Covariates]))).ToArray();
        var mean = rows.Aggregate((a, b) => a + b) / rows.Length;
        var likelihood = new PartialLikelihood([.. subjects.Select(s => s.FollowUp)], [.. rows.Select(r => r - mean)], ties);
        return Climb(likelihood, width, subjects.Count);
    }

    private static Outcome<CoxFit> Climb(PartialLikelihood likelihood, int width, int count)
    {
        var beta = Vector<double>.Build.Dense(width);
        var start = likelihood.At(beta);
        if (start.Information.Rank() < width)
        {
            return new TooLittleData(Method, count, 2, "a covariate does not vary among those at risk");
        }

        var score = start.Score * start.Information.Solve(start.Score);
        var here = start;
        for (var i = 0; i < MostSteps; i++)
        {
            var step = here.Information.Solve(here.Score);
            var next = likelihood.At(beta + step);
            for (var halvings = 0; !(next.Value >= here.Value - (1e-13 * Math.Abs(here.Value))) && halvings < 40; halvings++)
            {
                step /= 2;
                next = likelihood.At(beta + step);
            }

            (beta, here) = (beta + step, next);
            if (step.AbsoluteMaximum() <= 1e-12 * Math.Max(1, beta.AbsoluteMaximum()))
            {
                var covariance = here.Information.Inverse();
                return new CoxFit([.. beta], [.. covariance.EnumerateRows().Select(r => r.ToArray())], start.Value, here.Value, score, count);
            }

            if (here.Information.Determinant() <= 1e-10 * start.Information.Determinant())
            {
                break;
            }
        }

        return new TooLittleData(Method, count, 2, "a coefficient runs off to infinity: a covariate separates the events");
    }
}
