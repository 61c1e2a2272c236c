namespace CareRecords.Statistics;

/// <summary>What a hidden Markov model says about the states behind a series.</summary>
/// <param name="LogLikelihood">Log probability of the series.</param>
/// <param name="LogForward">By time and state: log P(seen so far, state now).</param>
/// <param name="LogBackward">By time and state: log P(seen later, given state now).</param>
/// <param name="Posterior">By time and state: P(state now, given the whole series).</param>
public sealed record StateProbabilities(
    double LogLikelihood,
    IReadOnlyList<IReadOnlyList<double>> LogForward,
    IReadOnlyList<IReadOnlyList<double>> LogBackward,
    IReadOnlyList<IReadOnlyList<double>> Posterior);

/// <summary>The single likeliest sequence of states.</summary>
/// <param name="States">A state index, from 0, for each time.</param>
/// <param name="LogProbability">Log P(series and this sequence).</param>
public sealed record StatePath(IReadOnlyList<int> States, double LogProbability);

/// <summary>
/// Decoding of a hidden Markov model with known parameters: forward-backward probabilities, scaled at each step, and the
/// Viterbi path in logs. A missing observation (null) says nothing about the state, and the chain runs on through it.
/// Source: Rabiner LR (1989), Proc IEEE 77:257-286; Zucchini W, MacDonald IL (2009), Hidden Markov Models for Time Series.
/// Assumes observations independent given the states, at equal steps. Smallest data: one observation.
/// </summary>
public static class HiddenMarkov
{
    /// <summary>The probability of each state at each time.</summary>
    /// <param name="model">The model.</param>
    /// <param name="observations">Observations at equal steps; null where there is none.</param>
    public static Outcome<StateProbabilities> Probabilities(HiddenMarkovModel model, IReadOnlyList<double?> observations)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (Check(model, observations) is { } missing)
        {
            return missing;
        }

        var pass = ForwardBackward.Run(model, observations);
        return new StateProbabilities(pass.LogLikelihood, pass.LogForward(), pass.LogBackward(), pass.Posterior);
    }

    /// <summary>The likeliest sequence of states (Viterbi). Of equally likely states the first.</summary>
    /// <param name="model">The model.</param>
    /// <param name="observations">Observations at equal steps; null where there is none.</param>
    public static Outcome<StatePath> LikeliestPath(HiddenMarkovModel model, IReadOnlyList<double?> observations)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (Check(model, observations) is { } missing)
        {
            return missing;
        }

        var (n, m) = (observations.Count, model.States.Count);
        var from = new int[n][];
        double[] best = [.. Enumerable.Range(0, m).Select(j => Math.Log(model.Initial[j]) + Emission(model, j, observations[0]))];
        for (var t = 1; t < n; t++)
        {
            from[t] = [.. Enumerable.Range(0, m).Select(j => Enumerable.Range(0, m).MaxBy(i => best[i] + Math.Log(model.Transition[i][j])))];
            best = [.. Enumerable.Range(0, m).Select(j => best[from[t][j]] + Math.Log(model.Transition[from[t][j]][j]) + Emission(model, j, observations[t]))];
        }

        var path = new int[n];
        path[^1] = Array.IndexOf(best, best.Max());
        for (var t = n - 1; t > 0; t--)
        {
            path[t - 1] = from[t][path[t]];
        }

        return new StatePath(path, best.Max());
    }

    internal static double Emission(HiddenMarkovModel model, int state, double? observation) =>
        observation is { } x ? model.States[state].LogDensity(x) : 0;

    internal static TooLittleData? Check(HiddenMarkovModel model, IReadOnlyList<double?> observations)
    {
        ArgumentNullException.ThrowIfNull(observations);
        var known = observations.Where(o => o is not null).Select(o => o!.Value).ToArray();
        _ = Require.Finite(known);
        if (model.States[0] is PoissonState && Array.Exists(known, x => x < 0 || x != Math.Floor(x)))
        {
            throw new ArgumentException("A Poisson model sees whole counts, none negative.", nameof(observations));
        }

        return known.Length == 0 ? new TooLittleData("hidden Markov model", 0, 1, "no observations") : null;
    }
}
