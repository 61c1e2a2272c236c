namespace CareRecords.Findings.Modelling;

/// <summary>The child's usual saturation and the spread of one reading about it, from readings weighted by how surely the child was well.</summary>
internal sealed record UsualSaturation(double Centre, double Sd, double Dependence, double WellDays, double Readings)
{
    private const double LeastSd = 0.35, MostSd = 4, MostDependence = 8;

    /// <summary>Standard error of the centre, points.</summary>
    public double StandardError => Sd * Math.Sqrt(Dependence / Math.Max(1, Readings));

    /// <summary>
    /// A first guess before any day is known to be well: the highest well-filled peak of the daily means (illness only lowers them), and the
    /// spread within days.
    /// </summary>
    public static UsualSaturation FirstGuess(IReadOnlyList<WeightedReading> readings, double? guess)
    {
        var days = readings.GroupBy(r => r.Day).Select(d => (Mean: Middle(d), Values: d.Select(r => r.SpO2).ToList())).ToList();
        var centres = days.Select(d => d.Mean).Concat(guess is { } g ? [g, g] : []).ToList();
        var within = days.SelectMany(d => d.Values.Select(v => Math.Abs(v - d.Mean))).Order().ToList();
        var sd = Math.Clamp(within.Count == 0 ? 1 : 1.6 * within[within.Count / 2], 0.6, 2.5);
        double Density(double x) => centres.Sum(c => Math.Exp(-(x - c) * (x - c) / (2 * 0.4 * 0.4)));
        var grid = Enumerable.Range(0, (int)(10 * (centres.Max() - centres.Min())) + 1).Select(i => centres.Min() + (i / 10.0)).ToList();
        var most = grid.Max(Density);
        var centre = grid.Last(x => Density(x) >= 0.4 * most && Density(x) >= Density(x - 0.1) && Density(x) >= Density(x + 0.1));
        return new UsualSaturation(centre, sd, 1.5, days.Count, readings.Count);
    }

    /// <summary>
    /// The maximum-likelihood centre and spread (rounding, the limit at 100 and loose probes allowed for), and the dependence: the mean over
    /// days of the squared standardised daily mean, which is 1 for independent readings; five days' worth of 1.3 steadies it.
    /// </summary>
    public static UsualSaturation Fit(IReadOnlyList<WeightedReading> readings, UsualSaturation previous, double half)
    {
        var counts = readings.GroupBy(r => r.SpO2).Select(g => (SpO2: g.Key, Weight: g.Sum(r => r.Weight))).Where(c => c.Weight > 1e-3).OrderBy(c => c.SpO2).ToList();
        var total = counts.Sum(c => c.Weight);
        if (total < 3) return previous with { Readings = total, WellDays = WellDaysOf(readings) };
        double Score(double centre, double sd) => counts.Sum(c => c.Weight * Math.Log(ReadingLikelihood.Of(c.SpO2, centre, sd, half)));
        var (best, spread) = (previous.Centre, previous.Sd);
        for (var (reach, ratio) = (1.0, 1.6); reach > 0.004; (reach, ratio) = (reach / 2.5, Math.Pow(ratio, 1 / 2.5)))
        {
            (best, spread) = (from a in Enumerable.Range(-3, 7)
                              from b in Enumerable.Range(-3, 7)
                              let centre = best + (a * reach / 3)
                              let sd = Math.Clamp(spread * Math.Pow(ratio, b / 3.0), LeastSd, MostSd)
                              select (centre, sd)).MaxBy(p => Score(p.centre, p.sd));
        }

        return new UsualSaturation(best, spread, DependenceOf(readings, best, spread), WellDaysOf(readings), total);
    }

    private static double WellDaysOf(IReadOnlyList<WeightedReading> readings) => readings.GroupBy(r => r.Day).Sum(d => d.Average(r => r.Weight));

    private static double DependenceOf(IReadOnlyList<WeightedReading> readings, double centre, double sd)
    {
        double sum = 5 * 1.3, weight = 5;
        foreach (var day in readings.GroupBy(r => r.Day))
        {
            var well = day.Sum(r => r.Weight);
            if (well < 1.5) continue;
            var off = day.Sum(r => r.Weight * Math.Clamp(r.SpO2 - centre, -3 * sd, 3 * sd)) / well;
            var share = well / day.Count();
            sum += share * Math.Min(12, well * off * off / (sd * sd));
            weight += share;
        }

        return Math.Clamp(sum / weight, 1, MostDependence);
    }

    private static double Middle(IEnumerable<WeightedReading> day)
    {
        var values = day.Select(r => r.SpO2).Order().ToList();
        var cut = values.Count / 4;
        return values.Skip(cut).Take(values.Count - (2 * cut)).Average();
    }
}

/// <summary>A reading with the probability that the child was well and at usual oxygen.</summary>
internal readonly record struct WeightedReading(int Day, double SpO2, double Weight);
