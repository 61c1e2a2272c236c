using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>
/// Turnbull's nonparametric maximum-likelihood estimate of the distribution of times known only to lie in intervals
/// (Left, Right]. Mass lies on innermost intervals; where within one is not identified, so survival there is a pair of
/// bounds. Converged in the sense of Gentleman and Geyer: no derivative of the log-likelihood exceeds the number of
/// observations (<see cref="TurnbullCurve.KktExcess"/> is zero up to rounding).
/// Source: Turnbull BW (1976), J R Stat Soc B 38:290-295; Gentleman R, Geyer CJ (1994), Biometrika 81:618-623.
/// Assumes that when one looks has nothing to do with the time itself. Smallest data: one interval.
/// </summary>
public static class Turnbull
{
    /// <summary>The estimate.</summary>
    /// <param name="intervals">What is known of each time, in any order.</param>
    public static Outcome<TurnbullCurve> Fit(IReadOnlyCollection<CensoredInterval> intervals)
    {
        var copy = CensoredInterval.Validated(intervals);
        if (copy.Length == 0)
        {
            return new TooLittleData("Turnbull estimate", 0, 1, "no intervals");
        }

        var innermost = InnermostIntervals.Of(copy);
        var places = innermost.Places.Length;
        var likelihood = new MixtureLikelihood(innermost.Ranges, places);
        var masses = MassMaximizer.Maximize(likelihood, places);
        var gradient = likelihood.Gradient(masses);
        var mass = masses.Sum();
        var curve = Enumerable.Range(0, places).Where(j => masses[j] > 0)
            .Select(j => new TurnbullMass(innermost.Places[j].Left, innermost.Places[j].Right, masses[j] / mass));
        return new TurnbullCurve(
            [.. curve], likelihood.Value(masses), gradient.Max() - copy.Length, new(() => IsUnique(likelihood, masses, gradient)), copy.Length);
    }

    /// <summary>Sufficient: the places whose derivative is at its maximum contribute linearly independent columns.</summary>
    private static bool IsUnique(MixtureLikelihood likelihood, double[] masses, double[] gradient)
    {
        double n = likelihood.Observations;
        int[] tight = [.. Enumerable.Range(0, masses.Length).Where(j => gradient[j] >= n * (1 - 1e-9))];
        Matrix<double> curvature = likelihood.Curvature(masses, tight);
        return curvature.Rank() == tight.Length;
    }
}
