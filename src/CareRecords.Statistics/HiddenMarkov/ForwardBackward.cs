namespace CareRecords.Statistics;

/// <summary>
/// The scaled recursions: forward and backward vectors are kept summing to 1 and the logs of the scales are added up.
/// Densities are taken relative to the largest at each time, so that a far-off observation cannot make all of them zero.
/// </summary>
internal sealed class ForwardBackward
{
    private readonly double[][] _forward;
    private readonly double[][] _backward;
    private readonly double[] _forwardLog;
    private readonly double[] _backwardLog;

    private ForwardBackward(double[][] forward, double[][] backward, double[] forwardLog, double[] backwardLog, double[][] density)
    {
        (_forward, _backward, _forwardLog, _backwardLog, Density) = (forward, backward, forwardLog, backwardLog, density);
        Posterior = [.. forward.Zip(backward, (a, b) => Normalized([.. a.Zip(b, (x, y) => x * y)]))];
    }

    /// <summary>By time and state, relative to the largest at that time.</summary>
    public double[][] Density { get; }

    public double LogLikelihood => _forwardLog[^1];

    public double[][] Posterior { get; }

    public static ForwardBackward Run(HiddenMarkovModel model, IReadOnlyList<double?> observations)
    {
        var (n, m, gamma) = (observations.Count, model.States.Count, model.TransitionArray);
        var (density, shift) = (new double[n][], new double[n]);
        for (var t = 0; t < n; t++)
        {
            double[] logs = [.. Enumerable.Range(0, m).Select(j => HiddenMarkov.Emission(model, j, observations[t]))];
            shift[t] = logs.Max();
            density[t] = Array.ConvertAll(logs, l => Math.Exp(l - shift[t]));
        }

        var (forward, backward) = (new double[n][], new double[n][]);
        var (forwardLog, backwardLog) = (new double[n], new double[n]);
        for (var t = 0; t < n; t++)
        {
            var now = new double[m];
            for (var j = 0; j < m; j++)
            {
                var arriving = 0.0;
                for (var i = 0; t > 0 && i < m; i++)
                {
                    arriving += forward[t - 1][i] * gamma[i][j];
                }

                now[j] = (t == 0 ? model.InitialArray[j] : arriving) * density[t][j];
            }

            var sum = now.Sum();
            forward[t] = Normalized(now);
            forwardLog[t] = (t == 0 ? 0 : forwardLog[t - 1]) + Math.Log(sum) + shift[t];
        }

        backward[^1] = Normalized([.. Enumerable.Repeat(1.0, m)]);
        backwardLog[^1] = Math.Log(m);
        for (var t = n - 2; t >= 0; t--)
        {
            var now = new double[m];
            for (var i = 0; i < m; i++)
            {
                for (var j = 0; j < m; j++)
                {
                    now[i] += gamma[i][j] * density[t + 1][j] * backward[t + 1][j];
                }
            }

            backward[t] = Normalized(now);
            backwardLog[t] = backwardLog[t + 1] + Math.Log(now.Sum()) + shift[t + 1];
        }

        return new(forward, backward, forwardLog, backwardLog, density);
    }

    public double[][] LogForward() => Logs(_forward, _forwardLog);

    public double[][] LogBackward() => Logs(_backward, _backwardLog);

    /// <summary>The expected number of moves from each state to each other over the series.</summary>
    public double[][] ExpectedMoves(double[][] gamma)
    {
        var m = gamma.Length;
        double[][] moves = [.. Enumerable.Range(0, m).Select(_ => new double[m])];
        for (var t = 1; t < _forward.Length; t++)
        {
            var (joint, all) = (new double[m, m], 0.0);
            for (var i = 0; i < m; i++)
            {
                for (var j = 0; j < m; j++)
                {
                    joint[i, j] = _forward[t - 1][i] * gamma[i][j] * Density[t][j] * _backward[t][j];
                    all += joint[i, j];
                }
            }

            for (var i = 0; i < m; i++)
            {
                for (var j = 0; j < m; j++)
                {
                    moves[i][j] += joint[i, j] / all;
                }
            }
        }

        return moves;
    }

    private static double[][] Logs(double[][] scaled, double[] scales) =>
        [.. scaled.Zip(scales, (row, scale) => Array.ConvertAll(row, x => Math.Log(x) + scale))];

    private static double[] Normalized(double[] values)
    {
        var sum = values.Sum();
        return Array.ConvertAll(values, v => v / sum);
    }
}
