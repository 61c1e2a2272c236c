namespace CareRecords.Statistics.Tests.Reference;

internal static class Section06Robust
{
    public static IEnumerable<Figures> All()
    {
        yield return Sleep();
        yield return Depression();
        yield return Copper();
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
