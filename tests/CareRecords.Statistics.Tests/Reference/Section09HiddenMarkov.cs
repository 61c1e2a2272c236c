namespace CareRecords.Statistics.Tests.Reference;

internal static class Section09HiddenMarkov
{
    public static IEnumerable<Figures> All()
    {
        var figures = new Figures("9.1");
        double?[] counts = [.. CsvTable.Data("earthquakes.csv").Numbers("count").Select(x => (double?)x)];
        OneState(figures, counts);
        _ = Stationary(figures, counts, 2, Start([15, 26], [[0.9, 0.1], [0.1, 0.9]]));
        var three = Stationary(figures, counts, 3, Start([13, 20, 30], [[0.9, 0.05, 0.05], [0.05, 0.9, 0.05], [0.05, 0.15, 0.8]]));
        Free(figures, counts, 2, Start([10, 30], [[0.9, 0.1], [0.1, 0.9]]));
        Free(figures, counts, 3, Start([10, 20, 30], [[0.8, 0.1, 0.1], [0.1, 0.8, 0.1], [0.1, 0.1, 0.8]]));
        FixedParameters(figures, counts);
        var path = HiddenMarkov.LikeliestPath(three, counts).Value;
        var local = HiddenMarkov.Probabilities(three, counts).Value.Posterior;
        figures.Add("3-state Viterbi log joint", path.LogProbability);
        figures.Named("3-state posteriors in 1919 (t=20)", ("1", local[19][0]), ("2", local[19][1]), ("3", local[19][2]));
        figures.Add(
            "years where local and global decoding differ (3-state)",
            path.States.Where((s, t) => local[t].Select((p, j) => (p, j)).MaxBy(x => x.p).j != s).Count());
        yield return figures;
    }

    private static HiddenMarkovModel Start(double[] means, double[][] transition) =>
        new([.. means.Select(m => new PoissonState(m))], transition, [.. means.Select(_ => 1.0 / means.Length)]);

    private static void OneState(Figures figures, double?[] counts)
    {
        var fit = HiddenMarkovFit.ByEm(Start([10], [[1]]), counts).Value;
        figures.Named("1 state nll, lambda", ("nll", -fit.LogLikelihood), ("lambda", fit.Model.States[0].Centre));
    }

    private static HiddenMarkovModel Stationary(Figures figures, double?[] counts, int m, HiddenMarkovModel start)
    {
        var fit = HiddenMarkovFit.Stationary(start, counts).Value;
        figures.Add($"{m}-state stationary nll", -fit.LogLikelihood);
        figures.Named($"{m}-state stationary AIC, BIC", ("AIC", fit.Aic), ("BIC", fit.Bic));
        for (var i = 0; i < m; i++)
        {
            figures.Add($"{m}-state stationary lambda [{i + 1}]", fit.Model.States[i].Centre);
            figures.Add($"{m}-state stationary stationary distribution [{i + 1}]", fit.Model.Stationary[i]);
            for (var j = 0; j < m; j++)
            {
                figures.Add($"{m}-state stationary Gamma [{i + 1}{j + 1}]", fit.Model.Transition[i][j]);
            }
        }

        return fit.Model;
    }

    private static void Free(Figures figures, double?[] counts, int m, HiddenMarkovModel start)
    {
        var fit = HiddenMarkovFit.ByEm(start, counts).Value;
        figures.Add($"{m}-state free (EM) nll", -fit.LogLikelihood);
        for (var i = 0; i < m; i++)
        {
            figures.Add($"{m}-state free lambda [{i + 1}]", fit.Model.States[i].Centre);
            for (var j = 0; j < m; j++)
            {
                figures.Add($"{m}-state free Gamma [{(i * m) + j + 1}]", fit.Model.Transition[i][j]);
            }
        }
    }

    private static void FixedParameters(Figures figures, double?[] counts)
    {
        var model = new HiddenMarkovModel([new PoissonState(15), new PoissonState(25)], [[0.9, 0.1], [0.1, 0.9]], [0.5, 0.5]);
        var p = HiddenMarkov.Probabilities(model, counts).Value;
        figures.Add("log-likelihood at FIXED parameters lambda=(15,25), Gamma=(.9 .1/.1 .9), delta=(.5,.5)", p.LogLikelihood);
        figures.Add("Viterbi log joint probability at those parameters", HiddenMarkov.LikeliestPath(model, counts).Value.LogProbability);
        for (var state = 0; state < 2; state++)
        {
            figures.Add($"log forward at t=107 (state 1,2) [{state + 1}]", p.LogForward[106][state]);
            figures.Add($"log backward at t=1 (state 1,2) [{state + 1}]", p.LogBackward[0][state]);
        }

        foreach (var t in new[] { 1, 7, 44, 58, 107 })
        {
            figures.Add($"posterior P(state 2) at those parameters [t={t}]", p.Posterior[t - 1][1]);
        }
    }
}
