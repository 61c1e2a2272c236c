namespace CareRecords.Findings.Modelling;

/// <summary>The usual saturation from readings weighted by how surely the child was well.</summary>
internal static class UsualFit
{
    private const double LeastSd = 0.35, MostSd = 4, MostDependence = 12, PriorDays = 5, PriorDependence = 1.2;
    private const double DriftKernelDays = 20;

    /// <summary>
    /// The maximum-likelihood centre and spread (rounding, the limit at 100 and loose probes allowed for), the slow drift about it, and the
    /// dependence. With fewer than three well readings the previous answer stays.
    /// </summary>
    public static UsualSaturation Of(IReadOnlyList<WeightedReading> readings, UsualSaturation previous, double half)
    {
        var total = readings.Sum(r => r.Weight);
        var wellDays = readings.GroupBy(r => r.Day).Sum(d => d.Average(r => r.Weight));
        if (total < 3) return previous with { Readings = total, WellDays = wellDays };
        var counts = readings.Where(r => r.Weight > 1e-3)
            .GroupBy(r => (r.SpO2, Offset: Math.Round(previous.Offsets[r.Day] * 20) / 20))
            .Select(g => (g.Key.SpO2, g.Key.Offset, Weight: g.Sum(r => r.Weight)))
            .OrderBy(c => c.SpO2).ThenBy(c => c.Offset).ToArray();
        double Score(double centre, double sd)
        {
            var score = 0.0;
            foreach (var c in counts) score += c.Weight * Math.Log(ReadingLikelihood.Of(c.SpO2, centre + c.Offset, sd, half));
            return score;
        }

        var (best, spread) = (previous.Centre, previous.Sd);
        for (var (reach, ratio) = (0.6, 1.4); reach > 0.01; (reach, ratio) = (reach / 2, Math.Sqrt(ratio)))
        {
            best = Enumerable.Range(-2, 5).Select(i => best + (i * reach / 2)).MaxBy(c => Score(c, spread));
            spread = Enumerable.Range(-2, 5).Select(i => Math.Clamp(spread * Math.Pow(ratio, i / 2.0), LeastSd, MostSd)).MaxBy(s => Score(best, s));
        }

        var fitted = previous with { Centre = best, Sd = spread, WellDays = wellDays, Readings = total };
        fitted = WithDrift(readings, fitted with { Dependence = DependenceOf(readings, fitted, upperOnly: false) });
        fitted = fitted with { Dependence = Math.Max(DependenceOf(readings, fitted, upperOnly: false), DependenceOf(readings, fitted, upperOnly: true)) };
        return fitted with { StandardError = Math.Max(spread * Math.Sqrt(fitted.Dependence / total), ErrorByWeeks(readings, fitted)) };
    }

    /// <summary>The standard error of the centre with whole weeks as the independent units (a cluster-robust variance), with its small-sample factor.</summary>
    private static double ErrorByWeeks(IReadOnlyList<WeightedReading> readings, UsualSaturation usual)
    {
        var weeks = readings.GroupBy(r => r.Day / 7).Select(w => (Weight: w.Sum(r => r.Weight), Days: w)).Where(w => w.Weight > 3).ToList();
        if (weeks.Count < 4) return 0;
        var total = weeks.Sum(w => w.Weight);
        var squares = weeks.Sum(w => Math.Pow(w.Weight * MeanOff(w.Days, usual), 2));
        return Math.Sqrt(squares * weeks.Count / (weeks.Count - 1)) / total;
    }

    /// <summary>
    /// The mean over days of the squared standardised daily mean, 1 for independent readings; five days' worth of 1.2 steadies it. From the
    /// days above the centre only, it cannot be made small by calling every low day an illness.
    /// </summary>
    public static double DependenceOf(IReadOnlyList<WeightedReading> readings, UsualSaturation usual, bool upperOnly)
    {
        double sum = PriorDays * PriorDependence, weight = PriorDays;
        foreach (var day in readings.GroupBy(r => r.Day))
        {
            var well = day.Sum(r => r.Weight);
            if (well < 1.5) continue;
            var off = MeanOff(day, usual);
            if (upperOnly && off < 0) continue;
            var share = well / day.Count();
            sum += share * Math.Min(40, well * off * off / (usual.Sd * usual.Sd));
            weight += share;
        }

        return Math.Clamp(sum / weight, 1, MostDependence);
    }

    /// <summary>
    /// The drift: daily means smoothed over about seven weeks, then drawn towards none as far as their own error explains them
    /// (James and Stein 1961).
    /// </summary>
    private static UsualSaturation WithDrift(IReadOnlyList<WeightedReading> readings, UsualSaturation usual)
    {
        var days = usual.Offsets.Count;
        var (weight, value) = (new double[days], new double[days]);
        foreach (var day in readings.GroupBy(r => r.Day))
        {
            weight[day.Key] = day.Sum(r => r.Weight);
            if (weight[day.Key] > 0.5) value[day.Key] = usual.Offsets[day.Key] + MeanOff(day, usual); else weight[day.Key] = 0;
        }

        var (smooth, errors) = (new double[days], new double[days]);
        var reach = (int)(4 * DriftKernelDays);
        for (var d = 0; d < days; d++)
        {
            double sum = 0, mass = 0, squares = 0;
            for (var e = Math.Max(0, d - reach); e <= Math.Min(days - 1, d + reach); e++)
            {
                var k = weight[e] * Math.Exp(-(d - e) * (d - e) / (2 * DriftKernelDays * DriftKernelDays));
                sum += k * value[e];
                mass += k;
                squares += weight[e] > 0 ? k * k / weight[e] : 0;
            }

            smooth[d] = mass > 0 ? sum / mass : 0;
            errors[d] = mass > 0 ? usual.Sd * Math.Sqrt(usual.Dependence * squares) / mass : 10;
        }

        var average = Weighted(smooth, weight);
        var spread = Weighted([.. smooth.Select((s, d) => ((s - average) * (s - average)) - (errors[d] * errors[d]))], weight);
        var drift = Math.Max(0, spread);
        double Kept(int d) => drift / (drift + (errors[d] * errors[d]) + 1e-9);
        return usual with
        {
            Offsets = [.. smooth.Select((s, d) => (s - average) * Kept(d))],
            OffsetErrors = [.. errors.Select((e, d) => e * Math.Sqrt(Kept(d)))],
        };
    }

    private static double Weighted(double[] values, double[] weights)
    {
        var total = weights.Sum();
        return total > 0 ? values.Zip(weights, (v, w) => v * w).Sum() / total : 0;
    }

    private static double MeanOff(IEnumerable<WeightedReading> day, UsualSaturation usual)
    {
        double sum = 0, weight = 0;
        foreach (var r in day)
        {
            sum += r.Weight * Math.Clamp(r.SpO2 - usual.Centre - usual.Offsets[r.Day], -3 * usual.Sd, 3 * usual.Sd);
            weight += r.Weight;
        }

        return sum / weight;
    }
}
