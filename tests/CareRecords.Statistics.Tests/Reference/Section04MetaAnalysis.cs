using Method = CareRecords.Statistics.HeterogeneityMethod;

namespace CareRecords.Statistics.Tests.Reference;

internal static class Section04MetaAnalysis
{
    private static readonly (string Name, Method Method)[] Methods =
    [
        ("EE", Method.CommonEffect), ("DL", Method.DerSimonianLaird), ("REML", Method.RestrictedMaximumLikelihood), ("PM", Method.PauleMandel),
        ("ML", Method.MaximumLikelihood), ("HE", Method.Hedges), ("SJ", Method.SidikJonkman), ("EB", Method.PauleMandel),
    ];

    private static readonly (string Name, Method Method)[] Two = [("DL", Method.DerSimonianLaird), ("REML", Method.RestrictedMaximumLikelihood)];

    public static IEnumerable<Figures> All()
    {
        yield return Vaccine();
        yield return Vasospasm();
        yield return Catheters();
    }

    private static Figures Vaccine()
    {
        var figures = new Figures("4.1");
        var t = CsvTable.Data("bcg.csv");
        StudyEffect[] studies =
        [
            .. Enumerable.Range(0, t.Count).Select(i => RatioEffect.LogRiskRatio(
                new(t.Wholes("tpos")[i], t.Wholes("tneg")[i], t.Wholes("cpos")[i], t.Wholes("cneg")[i]))!.Value),
        ];
        for (var i = 0; i < studies.Length; i++)
        {
            figures.Add($"yi [{i + 1}]", studies[i].Value);
            figures.Add($"vi [{i + 1}]", studies[i].Variance);
        }

        foreach (var (name, method) in Methods)
        {
            var r = RandomEffects.Fit(studies, method, hartungKnapp: false).Value;
            figures.Named(
                name,
                ("mu", r.Mean.Value),
                ("se", r.StandardError),
                ("lower", r.Mean.Low),
                ("upper", r.Mean.High),
                ("tau2", r.TauSquared),
                ("I2", r.ISquaredPercent),
                ("H2", r.HSquared),
                ("Q", r.Q));
        }

        var reml = RandomEffects.Fit(studies, hartungKnapp: false).Value;
        figures.Named("REML se(tau2), loglik", ("se.tau2", reml.TauSquaredError), ("loglik", reml.RestrictedLogLikelihood));
        var (tau, share) = (reml.TauSquaredInterval, reml.ISquaredPercentInterval);
        figures.Named("REML Q-profile CI", ("tau2.lo", tau.Low), ("tau2.hi", tau.High), ("I2.lo", share.Low), ("I2.hi", share.High));
        figures.Named("REML prediction interval (normal)", ("lower", reml.PredictionInterval.Low), ("upper", reml.PredictionInterval.High));
        foreach (var (name, method) in Two)
        {
            var r = RandomEffects.Fit(studies, method).Value;
            figures.Named($"{name} Hartung-Knapp", ("se", r.StandardError), ("t", r.Test.Statistic), ("p", r.Test.PValue));
            figures.Limits($"{name} Hartung-Knapp", r.Mean);
            figures.Named($"{name} HK prediction interval (t, k-1 df)", ("lower", r.PredictionInterval.Low), ("upper", r.PredictionInterval.High));
        }

        return figures;
    }

    private static Figures Vasospasm()
    {
        var figures = new Figures("4.2");
        var t = CsvTable.Data("pritz1997.csv");
        (int X, int N)[] counts = [.. t.Wholes("xi").Zip(t.Wholes("ni"))];
        int[] trials = [.. counts.Select(c => c.N)];
        foreach (var (scaleName, kind) in new[]
        {
            ("PLO", ProportionScaleKind.Logit), ("PFT", ProportionScaleKind.FreemanTukey), ("PAS", ProportionScaleKind.Arcsine), ("PR", ProportionScaleKind.Raw),
        })
        {
            foreach (var (name, method) in Two)
            {
                // The reference adds ½ to the two studies without a failure on every scale.
                var r = RandomEffects.Fit([.. counts.Select(c => ProportionScale.Effect(kind, c.X, c.N, addHalf: true))], method, hartungKnapp: false).Value;
                double Back(double v) => ProportionScale.Proportion(kind, v, trials);
                figures.Named(
                    $"{scaleName} {name}",
                    ("est", r.Mean.Value),
                    ("se", r.StandardError),
                    ("tau2", r.TauSquared),
                    ("Q", r.Q),
                    ("I2", r.ISquaredPercent),
                    ("prop", Back(r.Mean.Value)),
                    ("lower", Back(r.Mean.Low)),
                    ("upper", Back(r.Mean.High)));
            }
        }

        var smoothed = RandomEffects.Fit(EmpiricalLogit.Smoothed([.. counts.Select(c => new TrialCount(c.X, c.N))])).Value;
        figures.Named(
            "empirical logits, smoothed variances, REML Hartung-Knapp",
            ("est", smoothed.Mean.Value), ("se", smoothed.StandardError), ("tau2", smoothed.TauSquared), ("I2", smoothed.ISquaredPercent));
        figures.Limits("empirical logits, smoothed variances, REML Hartung-Knapp", smoothed.Mean);
        Logistic(figures, counts);
        return figures;
    }

    private static void Logistic(Figures figures, (int X, int N)[] counts)
    {
        ClusterRow[] rows = [.. counts.Select((c, i) => new ClusterRow(i, c.X, c.N, []))];
        foreach (var nodes in new[] { 1, 7, 25, 51 })
        {
            var fit = RandomInterceptLogistic.Fit(rows, nodes).Value;

            // With more than one node lme4 leaves out the log-likelihood of the observed proportions themselves.
            var left = nodes == 1 ? 0 : counts.Sum(c => Math.Log(BinomialLaw.Probability(c.X, c.N, (double)c.X / c.N)));
            figures.Named(
                $"random-intercept logistic, nAGQ={nodes}",
                ("intercept", fit.Coefficients[0]),
                ("se", fit.StandardErrors[0]),
                ("sd.study", fit.Deviation),
                ("prop", fit.MiddleProportion().Value),
                ("loglik", fit.LogLikelihood - left));
        }

        var check = RandomInterceptLogistic.Fit(rows, 61).Value;
        figures.Named(
            "independent check: 61-point adaptive quadrature",
            ("intercept", check.Coefficients[0]),
            ("sd.study", check.Deviation),
            ("se", check.StandardErrors[0]),
            ("loglik", check.LogLikelihood));
    }

    private static Figures Catheters()
    {
        var figures = new Figures("4.3");
        var t = CsvTable.Data("nielweise2007.csv");
        StudyEffect[] studies =
        [
            .. Enumerable.Range(0, t.Count).Select(i => RatioEffect.LogOddsRatio(new(
                    t.Wholes("ai")[i], t.Wholes("n1i")[i] - t.Wholes("ai")[i], t.Wholes("ci")[i], t.Wholes("n2i")[i] - t.Wholes("ci")[i])))
                .Where(e => e is not null).Select(e => e!.Value),
        ];
        foreach (var (name, method) in Two)
        {
            var r = RandomEffects.Fit(studies, method, hartungKnapp: false).Value;
            figures.Named(
                name, ("mu", r.Mean.Value), ("se", r.StandardError), ("tau2", r.TauSquared), ("I2", r.ISquaredPercent), ("Q", r.Q), ("k", r.Count));
        }

        return figures;
    }
}
