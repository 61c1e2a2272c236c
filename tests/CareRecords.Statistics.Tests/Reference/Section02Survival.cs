using System.Globalization;

namespace CareRecords.Statistics.Tests.Reference;

internal static class Section02Survival
{
    private static readonly (string Name, LimitScale Scale)[] Scales = [("log", LimitScale.Log), ("log-log", LimitScale.LogLog), ("plain", LimitScale.Plain)];

    public static IEnumerable<Figures> All()
    {
        yield return Leukaemia();
        yield return Myelogenous();
    }

    public static FollowUp[] Subjects(string file, string column, string group)
    {
        var t = CsvTable.Data(file);
        return [.. t.Numbers("time").Zip(t.Wholes("status"), t.Text(column)).Where(r => r.Third == group).Select(r => new FollowUp(r.First, r.Second == 1))];
    }

    private static Figures Leukaemia()
    {
        var figures = new Figures("2.1");
        var (treated, control) = (Subjects("gehan.csv", "treat", "6-MP"), Subjects("gehan.csv", "treat", "control"));
        Curve(figures, treated, "6-MP", 23);
        Curve(figures, control, "control", 23);
        figures.Named(
            "medians (published)",
            ("treat=6-MP", KaplanMeier.Fit(treated).Value.Median.Value),
            ("treat=control", KaplanMeier.Fit(control).Value.Median.Value));
        var test = LogRank.Test([treated, control]).Value;
        figures.Add("log-rank chi-square (1 df)", test.ChiSquare);
        figures.Add("log-rank chi-square, textbook digits", test.ChiSquare);
        figures.Add("log-rank p", test.PValue);
        figures.Named("observed", ("treat=6-MP", test.Observed[0]), ("treat=control", test.Observed[1]));
        figures.Named("expected", ("treat=6-MP", test.Expected[0]), ("treat=control", test.Expected[1]));
        figures.Add("variance of O-E", test.Variance[0][0]);
        figures.Add("Peto-Prentice (rho=1) chi-square", LogRank.Test([treated, control], 1).Value.ChiSquare);
        foreach (var (name, ties) in new[] { ("efron", CoxTies.Efron), ("breslow", CoxTies.Breslow), ("exact", CoxTies.Exact) })
        {
            var cox = Cox(treated, control, ties);
            figures.Named($"Cox {name} coef (control vs 6-MP)", ("coef", cox.Coefficients[0]), ("se", cox.StandardError(0)));
            figures.Named(
                $"Cox {name} loglik null/fit, score test", ("null", cox.LogLikelihoodNull), ("fit", cox.LogLikelihood), ("score", cox.ScoreTest));
            figures.Add($"Cox {name} hazard ratio 95% CI [hr]", cox.HazardRatio(0).Value);
            figures.Limits($"Cox {name} hazard ratio 95% CI", cox.HazardRatio(0));
        }

        var mean = KaplanMeier.Fit(treated).Value.RestrictedMean(23).Value;
        figures.Named("6-MP restricted mean to 23 by hand formula", ("area", mean.Value), ("se", StandardError(mean)));
        return figures;
    }

    private static Figures Myelogenous()
    {
        var figures = new Figures("2.2");
        var (kept, not) = (Subjects("aml.csv", "x", "Maintained"), Subjects("aml.csv", "x", "Nonmaintained"));
        Curve(figures, kept, "Maintained", 45);
        Curve(figures, not, "Nonmaintained", 45);
        var medians = Array.ConvertAll([kept, not], g => KaplanMeier.Fit(g, scale: LimitScale.Log).Value.Median);
        void Both(string quantity, double? first, double? second) => figures.Named(quantity, ("x=Maintained", first), ("x=Nonmaintained", second));
        Both("medians (default log limits)", medians[0].Value, medians[1].Value);
        Both("median lower limits", medians[0].Low, medians[1].Low);
        Both("median upper limits", medians[0].High, medians[1].High);
        var test = LogRank.Test([kept, not]).Value;
        figures.Add("log-rank chi-square", test.ChiSquare);
        figures.Add("log-rank p", test.PValue);
        Both("expected", test.Expected[0], test.Expected[1]);
        foreach (var (name, ties) in new[] { ("efron", CoxTies.Efron), ("breslow", CoxTies.Breslow) })
        {
            var cox = Cox(kept, not, ties);
            figures.Named(
                $"Cox {name}",
                ("coef", cox.Coefficients[0]),
                ("se", cox.StandardError(0)),
                ("loglik0", cox.LogLikelihoodNull),
                ("loglik", cox.LogLikelihood),
                ("score", cox.ScoreTest));
        }

        return figures;
    }

    private static CoxFit Cox(FollowUp[] zero, FollowUp[] one, CoxTies ties) =>
        CoxRegression.Fit([.. zero.Select(f => new CoxSubject(f, [0])), .. one.Select(f => new CoxSubject(f, [1]))], ties).Value;

    private static void Curve(Figures figures, FollowUp[] subjects, string label, double horizon)
    {
        static string Time(SurvivalStep s) => "t=" + s.Time.ToString(CultureInfo.InvariantCulture);
        foreach (var s in KaplanMeier.Fit(subjects).Value.Steps)
        {
            figures.Add($"{label} S(t) at event times [{Time(s)}]", s.Survival);
            figures.Add($"{label} Greenwood se [{Time(s)}]", s.StandardError);
        }

        foreach (var (name, scale) in Scales)
        {
            var curve = KaplanMeier.Fit(subjects, 0.95, scale).Value;
            var n = curve.Steps.Count;
            foreach (var k in new[] { 2, n / 2, n }.Distinct())
            {
                var s = curve.Steps[k - 1];
                figures.Add($"{label} {name} lower [{Time(s)}]", s.Limits?.Low);
                figures.Add($"{label} {name} upper [{Time(s)}]", s.Limits?.High);
            }

            var median = curve.Median;
            figures.Named($"{label} median, {name}", ("median", median.Value), ("lower", median.Low), ("upper", median.High));
        }

        var mean = KaplanMeier.Fit(subjects).Value.RestrictedMean(horizon).Value;
        figures.Named($"{label} restricted mean to {horizon}", ("rmst", mean.Value), ("se", StandardError(mean)));
    }

    private static double StandardError(Estimate e) => e.Width / 2 / 1.959963984540054;
}
