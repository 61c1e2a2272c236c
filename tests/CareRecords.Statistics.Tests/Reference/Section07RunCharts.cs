namespace CareRecords.Statistics.Tests.Reference;

internal static class Section07RunCharts
{
    public static IEnumerable<Figures> All()
    {
        yield return Limits();
        yield return Critical();
        yield return LunchCounter();
        yield return OrangeJuice();
        yield return Peaches();
    }

    private static Figures Limits()
    {
        var figures = new Figures("7.1");
        figures.Add("spot: longest limit n=24", RunChart.Limits(24).LongestRun);
        figures.Add("spot: crossings limit n=13 ('less than three crossings')", RunChart.Limits(13).Crossings);
        return figures;
    }

    private static Figures Critical()
    {
        var figures = new Figures("7.2");
        for (var n = 5; n <= 20; n++)
        {
            figures.Add($"lower, n1=n2 [{n}]", RunsTest.Critical(n, n).Lower);
            figures.Add($"upper, n1=n2 [{n}]", RunsTest.Critical(n, n).Upper);
        }

        foreach (var (n1, n2) in new[] { (5, 10), (8, 12), (10, 15), (12, 18) })
        {
            var (lower, upper) = RunsTest.Critical(n1, n2);
            figures.Named($"n1={n1},n2={n2}", ("lower", lower), ("upper", upper));
        }

        for (var r = 2; r <= 4; r++)
        {
            figures.Add($"P(R<=r), n1=n2=2 [{r}]", RunsTest.AtMost(r, 2, 2));
        }

        figures.Add("P(R<=3), n1=2,n2=5", RunsTest.AtMost(3, 2, 5));
        return figures;
    }

    private static Figures LunchCounter()
    {
        var figures = new Figures("7.3");
        var r = RunsTest.Of([.. "EOEEOEEEOEEEOEOE".Select(c => c == 'E')]).Value;
        figures.Named("runs, n1, n2", ("runs", r.Count), ("n1", r.First), ("n2", r.Second));
        figures.Add("exact one-sided P(R>=11)", r.AtLeast);
        figures.Named("normal approximation: mean, sd", ("mean", r.Mean), ("sd", r.StandardDeviation));
        figures.Add("one-sided p with continuity correction", r.NormalAtLeast);
        return figures;
    }

    private static Figures OrangeJuice()
    {
        var figures = new Figures("7.4");
        var t = CsvTable.Data("orange_juice_cans.csv");
        (int D, int Size)[] cans = [.. t.Wholes("D").Zip(t.Wholes("size"))];
        ControlChart Chart(string quantity, (int, int)[] samples)
        {
            var chart = ProportionChart.Of(samples).Value;
            figures.Named(quantity, ("total", chart.Successes), ("pbar", chart.Centre), ("LCL", chart.Points[0].Low), ("UCL", chart.Points[0].High));
            return chart;
        }

        var trial = Chart("trial limits", cans[..30]);
        int[] outside = [.. Enumerable.Range(0, 30).Where(i => trial.Points[i].Outside)];
        figures.Named("samples beyond limits", ("first", outside[0] + 1), ("second", outside[1] + 1));
        var kept = Chart("revised without samples 15 and 23", [.. cans[..30].Where((_, i) => !outside.Contains(i))]);
        var after = Chart("after adjustment, 24 samples", cans[30..]);
        figures.Add("Montgomery's test of improvement, |Z|", Math.Abs(PooledZ.Test(after.Successes, after.Trials, kept.Successes, kept.Trials).Value.Statistic));
        var run = RunChart.Signals([.. trial.Points.Select(p => p.Proportion)]).Value;
        figures.Named(
            "run chart of the 30 proportions",
            ("n.useful", run.Useful),
            ("longest.run", run.LongestRun),
            ("crossings", run.Crossings),
            ("runs", run.Crossings + 1),
            ("longest.run.limit", run.LongestRunLimit),
            ("crossings.limit", run.CrossingsLimit));
        return figures;
    }

    private static Figures Peaches()
    {
        var figures = new Figures("7.5");
        var t = CsvTable.Data("peaches.csv");
        (int Bruised, int N)[] shipments = [.. t.Wholes("bruised").Zip(t.Wholes("n"))];
        var chart = ProportionChart.Of(shipments).Value;
        figures.Named("totals, pbar", ("bruised", chart.Successes), ("n", chart.Trials), ("pbar", chart.Centre));
        foreach (var size in new[] { 250, 500 })
        {
            var point = chart.Points[Array.FindIndex(shipments, s => s.N == size)];
            figures.Named($"limits n={size}", ("LCL", point.Low), ("UCL", point.High));
        }

        figures.Add("points outside", chart.Points.Count(p => p.Outside));
        return figures;
    }
}
