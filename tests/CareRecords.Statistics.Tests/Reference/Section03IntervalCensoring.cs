using System.Globalization;

namespace CareRecords.Statistics.Tests.Reference;

internal static class Section03IntervalCensoring
{
    public static IEnumerable<Figures> All()
    {
        yield return Tiny();
        yield return TinyTwo();
        yield return Cosmesis();
        yield return RightCensored();
    }

    private static CensoredInterval[] Data(string file)
    {
        var t = CsvTable.Data(file);
        return [.. t.Numbers("left").Zip(t.Numbers("right"), (l, r) => new CensoredInterval(l, r))];
    }

    private static string Text(double value) => double.IsInfinity(value) ? "Inf" : value.ToString(CultureInfo.InvariantCulture);

    private static TurnbullCurve Masses(Figures figures, string label, CensoredInterval[] intervals)
    {
        var curve = Turnbull.Fit(intervals).Value;
        foreach (var m in curve.Masses)
        {
            figures.Add($"{label} mass [({Text(m.Left)},{Text(m.Right)}]]", m.Mass);
        }

        figures.Named($"{label} log-likelihood, KKT excess", ("loglik", curve.LogLikelihood), ("kkt", curve.KktExcess));
        return curve;
    }

    private static Figures Tiny()
    {
        var figures = new Figures("3.1");
        var curve = Masses(figures, "tiny", Data("turnbull_tiny.csv"));
        figures.Add("exact log-likelihood log(1/27)", curve.LogLikelihood);
        return figures;
    }

    private static Figures TinyTwo()
    {
        var figures = new Figures("3.2");
        Masses(figures, "tiny2", [new(0, 1), new(0, 3), new(2, 4), new(2, 4), new(0, 4)]);
        return figures;
    }

    private static Figures Cosmesis()
    {
        var figures = new Figures("3.3");
        var intervals = Data("cosmesis_radiotherapy.csv");
        var curve = Masses(figures, "Rad", intervals);
        foreach (var m in curve.Masses)
        {
            figures.Add($"survfit interval2 jumps [time={Text((m.Left + m.Right) / 2)}]", m.Mass);
        }

        foreach (var t in new[] { 5, 8, 12, 25, 34, 40, 48 })
        {
            figures.Add($"NPMLE S(t) Rad [t={t}]", curve.SurvivalAt(t).Low);
        }

        foreach (var family in Enum.GetValues<SurvivalFamily>())
        {
            var name = family.ToString().ToLowerInvariant();
            var fit = ParametricSurvival.Fit(intervals, family).Value;
            figures.Named($"survreg {name} Rad", ("intercept", fit.Location), ("se", fit.LocationError), ("loglik", fit.LogLikelihood));
            if (family != SurvivalFamily.Exponential)
            {
                figures.Named($"survreg {name} Rad", ("scale", fit.Scale), ("se log(scale)", fit.LogScaleError));
            }

            figures.Add($"median {name}", fit.Median().Value);
        }

        var clustered = ParametricSurvival.FitClusters([.. intervals.Chunk(3)], SurvivalFamily.Weibull).Value;
        figures.Named(
            "Weibull, rows three by three as clusters",
            ("se", clustered.LocationError), ("se log(scale)", clustered.LogScaleError));

        return figures;
    }

    private static Figures RightCensored()
    {
        var figures = new Figures("3.4");
        var subjects = Section02Survival.Subjects("gehan.csv", "treat", "6-MP");
        CensoredInterval[] intervals = [.. subjects.Select(s => s.Happened ? new CensoredInterval(s.Time - 0.5, s.Time) : new(s.Time, double.PositiveInfinity))];
        var steps = KaplanMeier.Fit(subjects).Value.Steps;
        var curve = Turnbull.Fit(intervals).Value;
        double[] survival = [.. steps.Select(s => curve.SurvivalAt(s.Time).Low)];
        for (var i = 0; i < steps.Count; i++)
        {
            figures.Add($"6-MP NPMLE 1 - cumulative mass [t={Text(steps[i].Time)}]", survival[i]);
        }

        var exact = subjects.Select(s => s.Happened ? new CensoredInterval(s.Time, s.Time) : new(s.Time, double.PositiveInfinity)).Chunk(3);
        var clustered = ParametricSurvival.FitClusters([.. exact], SurvivalFamily.Weibull).Value;
        figures.Named(
            "survreg weibull 6-MP, rows three by three as clusters",
            ("intercept", clustered.Location), ("se", clustered.LocationError), ("se log(scale)", clustered.LogScaleError));
        figures.Add("largest difference from Kaplan-Meier", steps.Select((s, i) => Math.Abs(s.Survival - survival[i])).Max());
        return figures;
    }
}
