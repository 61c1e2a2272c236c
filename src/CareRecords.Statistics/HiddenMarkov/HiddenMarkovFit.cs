namespace CareRecords.Statistics;

/// <summary>A hidden Markov model fitted to a series.</summary>
/// <param name="Model">The model, states in order of their centres.</param>
/// <param name="LogLikelihood">The log-likelihood reached: a maximum near the start, not always the highest of all.</param>
/// <param name="Parameters">How many free parameters.</param>
/// <param name="Count">How many observations (missing ones left out).</param>
/// <param name="Converged">False when the steps ran out first.</param>
public sealed record FittedHiddenMarkov(HiddenMarkovModel Model, double LogLikelihood, int Parameters, int Count, bool Converged)
{
    /// <summary>Akaike's criterion, smaller is better.</summary>
    public double Aic => (2 * Parameters) - (2 * LogLikelihood);

    /// <summary>Schwarz's criterion, smaller is better.</summary>
    public double Bic => (Parameters * Math.Log(Count)) - (2 * LogLikelihood);
}

/// <summary>
/// Fits of hidden Markov models from a start: by EM with a free first state (Baum-Welch), or by direct maximisation with
/// the first state drawn from the stationary distribution.
/// Source: Baum LE et al. (1970), Ann Math Stat 41:164-171; Zucchini W, MacDonald IL (2009), chapters 3 and 4.
/// Assumes observations independent given the states, at equal steps. Smallest data: 5 observations for each state (a rule
/// of ours, not of theory), not all equal.
/// </summary>
public static class HiddenMarkovFit
{
    private const int PerState = 5;
    private const int MostSteps = 20000;

    /// <summary>A start: states at evenly spaced quantiles, each staying with chance <paramref name="stay"/>.</summary>
    /// <param name="observations">The series; nulls are left out.</param>
    /// <param name="states">How many states.</param>
    /// <param name="law">Makes a state from its centre, for example c => new PoissonState(c).</param>
    /// <param name="stay">The chance of staying, above 0 and below 1.</param>
    public static Outcome<HiddenMarkovModel> Start(IReadOnlyList<double?> observations, int states, Func<double, StateLaw> law, double stay = 0.9)
    {
        ArgumentNullException.ThrowIfNull(observations);
        ArgumentNullException.ThrowIfNull(law);
        ArgumentOutOfRangeException.ThrowIfLessThan(states, 1);
        double[] known = [.. observations.Where(o => o is not null).Select(o => o!.Value)];
        if (known.Length == 0)
        {
            return new TooLittleData("hidden Markov start", 0, 1, "no observations");
        }

        var other = states == 1 ? 0 : (1 - stay) / (states - 1);
        return new HiddenMarkovModel(
            [.. Enumerable.Range(0, states).Select(k => law(Quantiles.At(known, (k + 0.5) / states).Value))],
            [.. Enumerable.Range(0, states).Select(i => (double[])[.. Enumerable.Range(0, states).Select(j => states == 1 ? 1 : i == j ? stay : other)])],
            [.. Enumerable.Repeat(1.0 / states, states)]);
    }

    /// <summary>Expectation-maximisation with a free distribution of the first state.</summary>
    /// <param name="start">Where to start; its zeros in the transitions stay zero.</param>
    /// <param name="observations">The series; null where there is none.</param>
    public static Outcome<FittedHiddenMarkov> ByEm(HiddenMarkovModel start, IReadOnlyList<double?> observations)
    {
        ArgumentNullException.ThrowIfNull(start);
        if (TooLittle(start, observations) is { } missing)
        {
            return missing;
        }

        var (model, previous, converged) = (start, double.NegativeInfinity, false);
        var pass = ForwardBackward.Run(model, observations);
        for (var step = 0; step < MostSteps && !converged; step++)
        {
            model = Maximized(model, pass, observations);
            previous = pass.LogLikelihood;
            pass = ForwardBackward.Run(model, observations);
            converged = step > 50 && pass.LogLikelihood - previous < 1e-14 * Math.Abs(previous);
        }

        var m = model.States.Count;
        var parameters = (m * model.States[0].Parameters) + (m * (m - 1)) + m - 1;
        return new FittedHiddenMarkov(model.Sorted(), pass.LogLikelihood, parameters, observations.Count(o => o is not null), converged);
    }

    /// <summary>Direct maximisation with a stationary first state.</summary>
    /// <param name="start">Where to start; a transition of exactly 0 is raised a little so that it can grow.</param>
    /// <param name="observations">The series; null where there is none.</param>
    public static Outcome<FittedHiddenMarkov> Stationary(HiddenMarkovModel start, IReadOnlyList<double?> observations)
    {
        ArgumentNullException.ThrowIfNull(start);
        if (TooLittle(start, observations) is { } missing)
        {
            return missing;
        }

        // A hundred EM steps come near; the gradient steps then find the maximum of the stationary likelihood.
        var near = start;
        for (var step = 0; step < 100; step++)
        {
            near = Maximized(near, ForwardBackward.Run(near, observations), observations);
        }

        var problem = new StationaryLikelihood(near, observations);
        var minimum = QuasiNewton.Minimize(problem.Negative, StationaryLikelihood.Pack(near));
        var model = problem.Unpack(minimum.At).Sorted();
        var m = model.States.Count;
        return new FittedHiddenMarkov(
            model, -minimum.Value, (m * model.States[0].Parameters) + (m * (m - 1)), observations.Count(o => o is not null), minimum.Converged);
    }

    private static HiddenMarkovModel Maximized(HiddenMarkovModel model, ForwardBackward pass, IReadOnlyList<double?> observations)
    {
        int[] known = [.. Enumerable.Range(0, observations.Count).Where(t => observations[t] is not null)];
        double[] values = [.. known.Select(t => observations[t]!.Value)];
        var moves = pass.ExpectedMoves(model.TransitionArray);
        return new HiddenMarkovModel(
            [.. model.States.Select((s, j) => s.Refit(values, [.. known.Select(t => pass.Posterior[t][j])]))],
            [.. moves.Select((row, i) => row.Sum() > 0 ? Array.ConvertAll(row, x => x / row.Sum()) : model.TransitionArray[i])],
            pass.Posterior[0]);
    }

    private static TooLittleData? TooLittle(HiddenMarkovModel start, IReadOnlyList<double?> observations)
    {
        if (HiddenMarkov.Check(start, observations) is { } missing)
        {
            return missing;
        }

        double[] known = [.. observations.Where(o => o is not null).Select(o => o!.Value)];
        var smallest = PerState * start.States.Count;
        if (known.Length < smallest)
        {
            return new("hidden Markov fit", known.Length, smallest, "too few observations for so many states");
        }

        return start.States.Count > 1 && known.Distinct().Count() == 1
            ? new("hidden Markov fit", known.Length, smallest, "all observations are equal: nothing tells states apart")
            : null;
    }
}
