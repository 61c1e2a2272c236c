namespace CareRecords.Statistics.Tests.Reference;

internal static class Section06Robust
{
    public static IEnumerable<Figures> All()
    {
        yield return Sleep();
        yield return Depression();
        yield return Copper();
        yield return SenExample();
        yield return GreatLakes();
        yield return Tuna();
        yield return NewHaven();
    }

    private static Figures SenExample()
    {
        var figures = new Figures("6.1");
        var t = CsvTable.Data("sen1968.csv");
        var (x, y) = (t.Numbers("x"), t.Numbers("y"));
        var line = TheilSen.Fit(x, y, 0.93, SlopeLimits.Rounded).Value;
        figures.Add("slope", line.Slope.Value);
        figures.Limits("93% interval, order statistics by rounding", line.Slope);
        var slopes = TheilSen.Slopes(x, y).Length;
        var (low, high) = TheilSen.Ranks(x, y, slopes, 0.93);
        figures.Named(
            "Var(S), C, M1, M2", ("varS", TheilSen.SenVariance(x, y)), ("C", slopes - (2 * low)), ("M1", low), ("M2", high - 1));
        figures.Add("intercept median(y)-slope*median(x)", line.InterceptOfMedians);
        figures.Add("intercept median(y-slope*x)", line.Intercept);
        Both(figures, "95% interval: rounding / interpolated", x, y);
        return figures;
    }

    private static Figures GreatLakes()
    {
        var figures = new Figures("6.2");
        var t = CsvTable.Data("greatlakes_precip.csv");
        var (year, inches) = (t.Numbers("year"), t.Numbers("inches"));
        Trend(figures, "Mann-Kendall", "R cor.test kendall tau-b, p (no continuity correction)", year, inches);
        var line = TheilSen.Fit(year, inches).Value;
        var rounded = TheilSen.Fit(year, inches, 0.95, SlopeLimits.Rounded).Value.Slope;
        figures.Named(
            "Theil-Sen slope and 95% CI (interpolated ranks)",
            ("slope", line.Slope.Value),
            ("lower", line.Slope.Low),
            ("upper", line.Slope.High),
            ("round.lo", rounded.Low),
            ("round.hi", rounded.High));
        return figures;
    }

    private static Figures NewHaven()
    {
        var figures = new Figures("6.7");
        var t = CsvTable.Data("nhtemp.csv");
        var (year, temperature) = (t.Numbers("year"), t.Numbers("temp"));
        Trend(figures, "Mann-Kendall", "cor.test tau-b, p", year, temperature);
        figures.Add("Theil-Sen [slope]", TheilSen.Fit(year, temperature).Value.Slope.Value);
        Both(figures, "Theil-Sen", year, temperature);
        var rho = RankCorrelation.Spearman(year, temperature).Value;
        figures.Named("Spearman rho, t-approximation p", ("rho", rho.Coefficient), ("p", rho.PValue));
        return figures;
    }

    private static Figures Tuna()
    {
        var figures = new Figures("6.6");
        var t = CsvTable.Data("hollander_tuna.csv");
        var (x, y) = (t.Numbers("x"), t.Numbers("y"));
        var tau = RankCorrelation.Kendall(x, y, Alternative.Greater).Value;
        figures.Named("Kendall one-sided exact", ("T", tau.Statistic), ("p", tau.PValue), ("tau", tau.Coefficient));
        var rho = RankCorrelation.Spearman(x, y).Value;
        figures.Named("Spearman exact two-sided", ("S", rho.Statistic), ("p", rho.PValue), ("rho", rho.Coefficient));
        var lakes = CsvTable.Data("greatlakes_precip.csv");
        var tied = RankCorrelation.Spearman(lakes.Numbers("year"), lakes.Numbers("inches")).Value;
        figures.Named("Spearman with ties (Great Lakes): rho and t-approximation p", ("rho", tied.Coefficient), ("p", tied.PValue));
        return figures;
    }

    private static void Trend(Figures figures, string mannKendall, string kendall, double[] time, double[] values)
    {
        var test = MannKendall.Test(time, values).Value;
        figures.Named(mannKendall, ("S", test.S), ("varS", test.Variance), ("z", test.Z), ("p", test.PValue), ("tau.b", test.TauB));
        var tau = RankCorrelation.Kendall(time, values).Value;
        figures.Named(kendall, ("tau", tau.Coefficient), ("p", tau.PValue));
    }

    private static void Both(Figures figures, string quantity, double[] x, double[] y)
    {
        var (rounded, between) = (TheilSen.Fit(x, y, 0.95, SlopeLimits.Rounded).Value.Slope, TheilSen.Fit(x, y).Value.Slope);
        figures.Named(
            quantity, ("round.lo", rounded.Low), ("round.hi", rounded.High), ("interp.lo", between.Low), ("interp.hi", between.High));
    }

    private static Figures Sleep()
    {
        var figures = new Figures("6.3");
        var t = CsvTable.Data("sleep.csv");

        // Recorded to one decimal: rounding removes the noise of subtraction, so that ties are ties.
        double[] d = [.. t.Numbers("g2").Zip(t.Numbers("g1"), (b, a) => Math.Round(b - a, 10))];
        var normal = SignedRankNormal.Interval(d).Value;
        figures.Named(
            "normal approximation with continuity correction (ties and zero present)",
            ("V", SignedRankNormal.Test(d).Value.Statistic),
            ("p", SignedRankNormal.Test(d).Value.PValue),
            ("HL", normal.Value),
            ("lower", normal.Low),
            ("upper", normal.High));
        figures.Add("exact permutation p with midranks, zero dropped (two-sided)", SignedRank.Test(d).Value.PValue);
        figures.Add("median of the 55 Walsh averages of all 10 differences", SignedRank.Interval(d).Value.Value);
        figures.Add("median of the 45 Walsh averages of the 9 non-zero differences", SignedRank.Interval([.. d.Where(x => x != 0)]).Value.Value);
        var paired = MeanInterval.Test(d).Value;
        figures.Named("paired t", ("t", paired.Statistic), ("p", paired.PValue));
        return figures;
    }

    private static Figures Depression()
    {
        var figures = new Figures("6.4");
        var t = CsvTable.Data("hollander_depression.csv");
        double[] d = [.. t.Numbers("x").Zip(t.Numbers("y"), (x, y) => x - y)];
        var greater = SignedRank.Test(d, Alternative.Greater).Value;
        figures.Named("one-sided exact", ("V", greater.Statistic), ("p", greater.PValue));
        var interval = SignedRank.Interval(d).Value;
        var law = new SignedRankLaw(Enumerable.Range(1, 9).Select(i => (double)i));
        var depth = SignedRank.WalshAverages(d).Count(w => w < interval.Low) + 1;
        figures.Named(
            "two-sided exact, Hodges-Lehmann, CI",
            ("p", SignedRank.Test(d).Value.PValue),
            ("HL", interval.Value),
            ("lower", interval.Low),
            ("upper", interval.High),
            ("exact coverage", 1 - (2 * law.AtMost(depth - 1))));
        figures.Limits("90% CI", SignedRank.Interval(d, 0.9).Value);
        figures.Limits("99% CI", SignedRank.Interval(d, 0.99).Value);
        foreach (var v in new[] { 0, 3, 5, 8, 22 })
        {
            figures.Add($"exact signed-rank tail P(V<=v), n=9 [{v}]", law.AtMost(v));
        }

        return figures;
    }

    private static Figures Copper()
    {
        var figures = new Figures("6.5");
        var x = CsvTable.Data("chem.csv").Numbers("x");
        figures.Named(
            "mean, median, MAD (x1.4826), raw MAD, IQR",
            ("mean", MeanInterval.Of(x).Value.Value),
            ("median", Quantiles.Median(x).Value),
            ("mad", Quantiles.MedianAbsoluteDeviation(x).Value),
            ("rawmad", Quantiles.MedianAbsoluteDeviation(x, 1).Value),
            ("iqr", Quantiles.InterquartileRange(x).Value));
        var huber = HuberLocation.Of(x).Value;
        figures.Named("Huber location (k=1.5)", ("mu", huber.Location), ("s", huber.Scale));
        foreach (var type in new[] { 7, 6, 8 })
        {
            foreach (var percent in new[] { 5, 10, 25, 50, 75, 90, 95 })
            {
                figures.Add($"quantile type {type} [{percent}%]", Quantiles.At(x, percent / 100.0, type).Value);
            }
        }

        return figures;
    }
}
