using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>A hidden Markov model: at each step one of a few states, each with its own distribution of what is seen.</summary>
public sealed class HiddenMarkovModel
{
    private readonly double[] _initial;
    private readonly double[][] _transition;

    /// <summary>Makes a model.</summary>
    /// <param name="states">The states, two or more, all of one kind (one state is allowed).</param>
    /// <param name="transition">Row by row the chances of the next state; each row sums to 1.</param>
    /// <param name="initial">Chances of the first state; null takes the stationary distribution.</param>
    public HiddenMarkovModel(IReadOnlyList<StateLaw> states, IReadOnlyList<IReadOnlyList<double>> transition, IReadOnlyList<double>? initial = null)
    {
        ArgumentNullException.ThrowIfNull(states);
        ArgumentNullException.ThrowIfNull(transition);
        States = [.. states];
        _transition = [.. transition.Select(row => Distribution(row, States.Count))];
        if (States.Count == 0 || _transition.Length != States.Count || States.Any(s => s.GetType() != States[0].GetType()))
        {
            throw new ArgumentException("A model has states of one kind, and a row of transitions for each.", nameof(states));
        }

        _initial = initial is null ? StationaryOf(_transition) : Distribution(initial, States.Count);
    }

    /// <summary>The states.</summary>
    public IReadOnlyList<StateLaw> States { get; }

    /// <summary>Row by row the chances of the next state.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Transition => _transition;

    /// <summary>Chances of the first state.</summary>
    public IReadOnlyList<double> Initial => _initial;

    /// <summary>The long-run share of time in each state: δ with δ·Γ = δ.</summary>
    public IReadOnlyList<double> Stationary => StationaryOf(_transition);

    internal double[] InitialArray => _initial;

    internal double[][] TransitionArray => _transition;

    /// <summary>The same model with its states in order of their centres.</summary>
    internal HiddenMarkovModel Sorted()
    {
        int[] order = [.. Enumerable.Range(0, States.Count).OrderBy(i => States[i].Centre)];
        return new([.. order.Select(i => States[i])], [.. order.Select(i => (double[])[.. order.Select(j => _transition[i][j])])], [.. order.Select(i => _initial[i])]);
    }

    /// <summary>Solves δ(I − Γ + U) = 1, U all ones (Zucchini and MacDonald 2009, section 1.3).</summary>
    internal static double[] StationaryOf(double[][] transition)
    {
        var m = transition.Length;
        var system = Matrix<double>.Build.Dense(m, m, (i, j) => (i == j ? 1 : 0) - transition[j][i] + 1);
        double[] delta = [.. system.Solve(Vector<double>.Build.Dense(m, 1)).Select(d => Math.Max(0, d))];
        var sum = delta.Sum();

        // A chain that falls apart has no single stationary distribution; share it evenly.
        return sum > 0 && double.IsFinite(sum) ? Array.ConvertAll(delta, d => d / sum) : [.. Enumerable.Repeat(1.0 / m, m)];
    }

    private static double[] Distribution(IReadOnlyList<double> chances, int count)
    {
        double[] copy = [.. chances];
        if (copy.Length != count || Array.Exists(copy, c => !(c >= 0)) || Math.Abs(copy.Sum() - 1) > 1e-8)
        {
            throw new ArgumentException("Chances are not negative and sum to 1.", nameof(chances));
        }

        return copy;
    }
}
