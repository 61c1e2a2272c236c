using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>
/// Maximises the mixture likelihood to convergence: self-consistency (EM) steps to come near, then Newton steps on the
/// masses that are not zero, dropping one that reaches zero and taking back one whose gradient exceeds the number of
/// observations, until none does (Gentleman R, Geyer CJ 1994, Biometrika 81:618-623). The constraint Σp = 1 is met by
/// maximising log-likelihood − n·Σp over p ≥ 0, whose maximum has it.
/// </summary>
internal static class MassMaximizer
{
    private const int SelfConsistencySteps = 60;
    private const int MostRounds = 2000;

    // Relative to the number of observations: a few hundred roundings.
    private const double GradientTolerance = 1e-13;

    public static double[] Maximize(MixtureLikelihood likelihood, int places)
    {
        var masses = new double[places];
        Array.Fill(masses, 1.0 / places);
        for (var i = 0; i < SelfConsistencySteps; i++)
        {
            SelfConsistency(likelihood, masses);
        }

        Prune(masses, 1e-4 / places);
        double n = likelihood.Observations;
        for (var round = 0; round < MostRounds; round++)
        {
            if (NewtonStep(likelihood, masses))
            {
                continue;
            }

            var gradient = likelihood.Gradient(masses);
            var best = Array.IndexOf(gradient, gradient.Max());
            if (masses[best] > 0 || gradient[best] - n <= GradientTolerance * n)
            {
                break;
            }

            // Its slope is positive, so a small mass there raises the likelihood.
            Admit(likelihood, masses, best);
        }

        return masses;
    }

    private static void SelfConsistency(MixtureLikelihood likelihood, double[] masses)
    {
        var gradient = likelihood.Gradient(masses);
        for (var j = 0; j < masses.Length; j++)
        {
            masses[j] *= gradient[j] / likelihood.Observations;
        }
    }

    private static void Prune(double[] masses, double below)
    {
        for (var j = 0; j < masses.Length; j++)
        {
            masses[j] = masses[j] < below ? 0 : masses[j];
        }

        Normalize(masses);
    }

    private static void Normalize(double[] masses)
    {
        var sum = masses.Sum();
        for (var j = 0; j < masses.Length; j++)
        {
            masses[j] /= sum;
        }
    }

    /// <summary>One guarded Newton step; false when the masses in play are at their maximum already.</summary>
    private static bool NewtonStep(MixtureLikelihood likelihood, double[] masses)
    {
        double n = likelihood.Observations;
        int[] support = [.. Enumerable.Range(0, masses.Length).Where(j => masses[j] > 0)];
        var gradient = likelihood.Gradient(masses);
        var slope = Vector<double>.Build.Dense(support.Length, a => gradient[support[a]] - n);
        if (slope.AbsoluteMaximum() <= GradientTolerance * n)
        {
            return false;
        }

        // A whisper of ridge keeps the solution finite where the data cannot tell two masses apart.
        var curvature = likelihood.Curvature(masses, support);
        var ridge = 1e-14 * curvature.Diagonal().Maximum();
        for (var a = 0; a < support.Length; a++)
        {
            curvature[a, a] += ridge;
        }

        var step = curvature.Cholesky().Solve(slope);
        var before = Penalized(likelihood, masses);
        for (var length = 1.0; length > 1e-12; length /= 2)
        {
            var trial = (double[])masses.Clone();
            for (var a = 0; a < support.Length; a++)
            {
                trial[support[a]] = Math.Max(0, trial[support[a]] + (length * step[a]));
            }

            var after = Penalized(likelihood, trial);

            // Near the maximum the value no longer tells two points apart, but the slope still does.
            var flatter = after > before - (1e-12 * Math.Abs(before)) && Steepest(likelihood, trial) < 0.9 * slope.AbsoluteMaximum();
            if (after > before || flatter)
            {
                trial.CopyTo(masses, 0);
                return true;
            }
        }

        return false;
    }

    private static double Steepest(MixtureLikelihood likelihood, double[] masses)
    {
        var gradient = likelihood.Gradient(masses);
        return Enumerable.Range(0, masses.Length).Where(j => masses[j] > 0).Max(j => Math.Abs(gradient[j] - likelihood.Observations));
    }

    private static void Admit(MixtureLikelihood likelihood, double[] masses, int place)
    {
        var before = likelihood.Value(masses);
        for (var share = 0.1; share > 1e-15; share /= 4)
        {
            double[] trial = [.. masses.Select(p => p * (1 - share))];
            trial[place] += share;
            if (likelihood.Value(trial) > before)
            {
                trial.CopyTo(masses, 0);
                return;
            }
        }

        masses[place] = 1e-15;
    }

    private static double Penalized(MixtureLikelihood likelihood, double[] masses)
    {
        var value = likelihood.Value(masses);
        return double.IsNaN(value) ? double.NegativeInfinity : value - (likelihood.Observations * masses.Sum());
    }
}
