using System.Globalization;

namespace CareRecords.Statistics.Tests.Reference;

internal static class Section08ChangePoints
{
    public static IEnumerable<Figures> All()
    {
        yield return Coal();
        yield return Nile();
        yield return NewHaven();
    }

    private static Figures Coal()
    {
        var figures = new Figures("8.1");
        var t = CsvTable.Data("coal_annual.csv");
        var (years, counts) = (t.Wholes("year"), t.Numbers("count"));
        var n = counts.Length;
        var cost = SegmentCost.Poisson(counts);
        figures.Named("total, years", ("total", counts.Sum()), ("n", n));
        var single = SingleChange.Of(cost).Value;
        figures.Add("single change: last year of segment 1", years[single.Before - 1]);
        figures.Named("rates", ("before", single.LevelBefore), ("after", single.LevelAfter));

        // The cost leaves out 2·Σ log x!; the log-likelihood has it.
        var constant = counts.Sum(x => MathNet.Numerics.SpecialFunctions.FactorialLn((int)x));
        var none = (-cost.Of(0, n) / 2) - constant;
        figures.Named(
            "log-likelihoods with constants",
            ("none", none),
            ("one", none + (single.LikelihoodRatio / 2)),
            ("LR", single.LikelihoodRatio));
        foreach (var year in new[] { 1891, 1890, 1889, 1887, 1892 })
        {
            figures.Add($"profile, best five (log-lik minus maximum) [{year}]", single.Profile[Array.IndexOf(years, year)]);
        }

        var (first, last) = single.Plausible();
        figures.Named("approximate 95% set (within 1.92 of the maximum): first and last year", ("first", years[first - 1]), ("last", years[last - 1]));
        foreach (var (text, times) in new[] { ("4.718498871", 1), ("9.436997743", 2), ("14.15549661", 3) })
        {
            var best = Segmentation.Penalized(cost, times * Math.Log(n)).Value;
            figures.Named(
                $"optimal partitioning, beta={text}: number of changes, objective", ("K", best.Changes.Count), ("objective", best.Objective));
            Years(figures, "  change after year", best, years);
        }

        for (var k = 0; k <= 5; k++)
        {
            var best = Segmentation.WithChanges(cost, k).Value;
            figures.Add($"best segmentation with K={k} changes: cost", best.Cost);
            Years(figures, $"  K={k} change after year", best, years);
        }

        return figures;
    }

    private static void Years(Figures figures, string quantity, SegmentedSeries best, int[] years)
    {
        for (var i = 0; i < best.Changes.Count; i++)
        {
            figures.Add(best.Changes.Count == 1 ? quantity : $"{quantity} [{i + 1}]", years[best.Changes[i] - 1]);
        }
    }

    private static Figures Nile()
    {
        var figures = new Figures("8.2");
        var t = CsvTable.Data("nile.csv");
        var (years, flow) = (t.Wholes("year"), t.Numbers("flow"));
        var n = flow.Length;
        var cost = SegmentCost.Gaussian(flow);

        // strucchange: stretches of at least 15 % of the series.
        var one = Segmentation.WithChanges(cost, 1, 15).Value;
        figures.Named("strucchange break index (last index before change), year", ("index", one.Changes[0]), ("year", years[one.Changes[0] - 1]));
        for (var k = 0; k <= 5; k++)
        {
            var rss = Segmentation.WithChanges(cost, k, 15).Value.Cost;
            figures.Add($"RSS by number of breaks (h=0.15) [{k}]", rss);
            figures.Add($"BIC by number of breaks [{k}]", (n * (Math.Log(2 * Math.PI * rss / n) + 1)) + (2 * (k + 1) * Math.Log(n)));
        }

        figures.Named("segment means", ("before", one.Segments[0].Level), ("after", one.Segments[1].Level));
        var best = Segmentation.WithChanges(cost, 1).Value;
        figures.Named("exact DP one change: index, RSS", ("k", best.Changes[0]), ("RSS", best.Cost));
        Penalized(figures, flow, years, "optimal partitioning, sigma2 = mad(diff)^2/2 = {0}, beta = {1}");
        return figures;
    }

    private static Figures NewHaven()
    {
        var figures = new Figures("8.3");
        var t = CsvTable.Data("nhtemp.csv");
        var (years, temperature) = (t.Wholes("year"), t.Numbers("temp"));
        for (var k = 1; k <= 3; k++)
        {
            var best = Segmentation.WithChanges(SegmentCost.Gaussian(temperature), k).Value;
            figures.Add($"K={k} RSS and last years [RSS]", best.Cost);
            for (var i = 0; i < k; i++)
            {
                figures.Add($"K={k} RSS and last years [after{i + 1}]", years[best.Changes[i] - 1]);
            }
        }

        Penalized(figures, temperature, years, "sigma2={0}, beta={1}");
        return figures;
    }

    private static void Penalized(Figures figures, double[] values, int[] years, string quantity)
    {
        var variance = NoiseVariance.FromDifferences(values).Value;
        foreach (var times in new[] { 2, 3 })
        {
            var penalty = times * Math.Log(values.Length);
            var best = Segmentation.Penalized(SegmentCost.Gaussian(values, variance), penalty).Value;
            var name = string.Format(
                CultureInfo.InvariantCulture, quantity, variance.ToString("G10", CultureInfo.InvariantCulture), penalty.ToString("G8", CultureInfo.InvariantCulture));
            figures.Named(name, ("K", best.Changes.Count), ("objective", best.Objective));
            for (var i = 0; i < best.Changes.Count; i++)
            {
                figures.Add($"{name} [after{i + 1}]", years[best.Changes[i] - 1]);
            }
        }
    }
}
