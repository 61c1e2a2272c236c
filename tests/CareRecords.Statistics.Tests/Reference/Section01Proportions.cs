namespace CareRecords.Statistics.Tests.Reference;

internal static class Section01Proportions
{
    public static IEnumerable<Figures> All()
    {
        yield return Single();
        yield return Differences();
        yield return Tea();
        yield return SevenOfTwelve();
    }

    private static Figures Single()
    {
        var figures = new Figures("1.1");
        var table = CsvTable.Data("newcombe1998_single.csv");
        foreach (var (x, n) in table.Wholes("x").Zip(table.Wholes("n")))
        {
            figures.Limits($"{x}/{n} Wilson", Wilson.Interval(x, n).Value);
            figures.Limits($"{x}/{n} Clopper-Pearson", ClopperPearson.Interval(x, n).Value);
            figures.Limits($"{x}/{n} mid-P", MidP.Interval(x, n).Value);
        }

        figures.Limits("15/148 Wilson 90%", Wilson.Interval(15, 148, 0.90).Value);
        figures.Limits("15/148 Wilson 99%", Wilson.Interval(15, 148, 0.99).Value);
        return figures;
    }

    private static Figures Differences()
    {
        var figures = new Figures("1.2");
        var t = CsvTable.Data("newcombe1998_difference.csv");
        for (var i = 0; i < t.Count; i++)
        {
            var (x1, n1, x2, n2) = (t.Wholes("x1")[i], t.Wholes("n1")[i], t.Wholes("x2")[i], t.Wholes("n2")[i]);
            var e = NewcombeDifference.Interval(x1, n1, x2, n2).Value;
            figures.Add($"{x1}/{n1} - {x2}/{n2} [diff]", e.Value);
            figures.Limits($"{x1}/{n1} - {x2}/{n2}", e);
        }

        return figures;
    }

    private static Figures Tea()
    {
        var figures = new Figures("1.3");
        var tea = new TwoByTwo(3, 1, 1, 3);
        Exact(figures, tea, "conditional MLE odds ratio", "exact 95% CI of odds ratio");
        return figures;
    }

    private static Figures SevenOfTwelve()
    {
        var figures = new Figures("1.4");
        Exact(figures, new TwoByTwo(7, 5, 1, 11), "odds ratio (conditional MLE)", "CI");
        return figures;
    }

    private static void Exact(Figures figures, TwoByTwo table, string mle, string limits)
    {
        double P(Alternative a, bool midP) => FisherExact.Test(table, a, midP).Value.PValue;
        figures.Add("p two-sided", P(Alternative.TwoSided, false));
        figures.Add("p greater", P(Alternative.Greater, false));
        var odds = FisherExact.OddsRatio(table).Value;
        figures.Add(mle, odds.Value);
        figures.Limits(limits, odds);
        figures.Add("odds ratio and exact CI, tight root finder [mle]", odds.Value);
        figures.Limits("odds ratio and exact CI, tight root finder", odds);
        var (greater, less) = (P(Alternative.Greater, true), P(Alternative.Less, true));
        figures.Named(
            "mid-P",
            ("two.sided", P(Alternative.TwoSided, true)),
            ("greater", greater),
            ("less", less),
            ("twice.smaller", Math.Min(1, 2 * Math.Min(greater, less))));
    }
}
