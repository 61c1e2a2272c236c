using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>
/// Minus the log-likelihood of a hidden Markov model that starts in its stationary distribution, and its exact gradient by
/// Fisher's identity (the expected score of states and observations together), in unbounded parameters: those of the state
/// laws, then log(γij/γii) row by row.
/// </summary>
internal sealed class StationaryLikelihood(HiddenMarkovModel shape, IReadOnlyList<double?> observations)
{
    private const double SmallestMove = 1e-10;

    private readonly int _m = shape.States.Count;
    private readonly int _width = shape.States[0].Parameters;

    public static double[] Pack(HiddenMarkovModel model)
    {
        IEnumerable<double> moves = model.TransitionArray.SelectMany((row, i) =>
            row.Where((_, j) => j != i).Select(g => Math.Log(Math.Max(g, SmallestMove) / Math.Max(row[i], SmallestMove))));
        return [.. model.States.SelectMany(s => s.Pack()), .. moves];
    }

    public HiddenMarkovModel Unpack(double[] at)
    {
        StateLaw[] states = [.. shape.States.Select((s, k) => s.Unpack(at.AsSpan(k * _width, _width)))];
        var next = _m * _width;
        var transition = new double[_m][];
        for (var i = 0; i < _m; i++)
        {
            double[] logits = [.. Enumerable.Range(0, _m).Select(j => j == i ? 0 : at[next++])];
            var largest = logits.Max();
            double[] weights = Array.ConvertAll(logits, l => Math.Exp(l - largest));
            transition[i] = Array.ConvertAll(weights, w => w / weights.Sum());
        }

        return new(states, transition);
    }

    public (double Value, double[] Gradient) Negative(double[] at)
    {
        var model = Unpack(at);
        var pass = ForwardBackward.Run(model, observations);
        var gradient = new double[at.Length];
        for (var t = 0; t < observations.Count; t++)
        {
            for (var k = 0; observations[t] is { } x && k < _m; k++)
            {
                var score = model.States[k].Score(x);
                for (var p = 0; p < _width; p++)
                {
                    gradient[(k * _width) + p] -= pass.Posterior[t][k] * score[p];
                }
            }
        }

        AddMoves(gradient, model, pass);
        return (-pass.LogLikelihood, gradient);
    }

    private void AddMoves(double[] gradient, HiddenMarkovModel model, ForwardBackward pass)
    {
        var gamma = model.TransitionArray;
        var moves = pass.ExpectedMoves(gamma);

        // dδ = δ·dΓ·(I − Γ + U)⁻¹, so Σ post·dlog δ needs z with (I − Γ + U)·z = post/δ.
        var delta = model.InitialArray;
        var system = Matrix<double>.Build.Dense(_m, _m, (i, j) => (i == j ? 1 : 0) - gamma[i][j] + 1);
        var z = system.Solve(Vector<double>.Build.Dense(_m, k => pass.Posterior[0][k] / Math.Max(delta[k], 1e-300)));
        var next = _m * _width;
        for (var i = 0; i < _m; i++)
        {
            var total = moves[i].Sum();
            var mean = Enumerable.Range(0, _m).Sum(j => gamma[i][j] * z[j]);
            for (var j = 0; j < _m; j++)
            {
                if (j != i)
                {
                    // dγij/dη = γij(1 − γij), dγik/dη = −γij·γik.
                    gradient[next++] -= moves[i][j] - (total * gamma[i][j]) + (delta[i] * gamma[i][j] * (z[j] - mean));
                }
            }
        }
    }
}
