namespace CareRecords.Findings.Modelling;

/// <summary>What is usual before any day is known to be well.</summary>
/// <remarks>
/// Illness only lowers saturation, so the usual is taken from the highest well-filled peak of the daily means (a kernel density): over a year
/// about each day, and over two months about it where the record is long enough to show a drift; the two may differ by 1.25 points, and what
/// lies lower than that is illness.
/// </remarks>
internal static class UsualFirstGuess
{
    private const int NearDays = 30, FarDays = 180, Every = 10, LeastForDrift = 90;
    private const double MostDrift = 1.25, WellFilled = 0.4, KernelSd = 0.4;

    /// <summary>The guess over all care days; <paramref name="guess"/> counts as two days' means where it is given.</summary>
    public static UsualSaturation Of(IReadOnlyList<WeightedReading> readings, int careDays, double? guess)
    {
        var days = readings.GroupBy(r => r.Day).Select(d => (Day: d.Key, Mean: Middle(d), Values: d.Select(r => r.SpO2).ToList())).OrderBy(d => d.Day).ToList();
        var within = days.SelectMany(d => d.Values.Select(v => Math.Abs(v - d.Mean))).Order().ToList();
        var sd = Math.Clamp(1.6 * within[within.Count / 2], 0.6, 2.5);
        var centres = new double[careDays];
        for (var first = 0; first < careDays; first += Every)
        {
            var middle = first + (Every / 2);
            var far = Peak(Near(days, middle, FarDays), guess);
            var near = careDays >= LeastForDrift ? Peak(Near(days, middle, NearDays), null) : far;
            var centre = far is { } f && near is { } n ? Math.Clamp(n, f - MostDrift, f + MostDrift) : far ?? Peak(days, guess)!.Value;
            Array.Fill(centres, centre, first, Math.Min(Every, careDays - first));
        }

        var overall = centres.Average();
        var offsets = centres.Select(c => c - overall).ToArray();
        var usual = new UsualSaturation(overall, 0, offsets, new double[careDays], sd, 1, days.Count, readings.Count);
        return usual with { Dependence = UsualFit.DependenceOf(readings, usual, upperOnly: true) };
    }

    private static List<(int Day, double Mean, List<double> Values)> Near(List<(int Day, double Mean, List<double> Values)> days, int middle, int reach) =>
        [.. days.Where(d => Math.Abs(d.Day - middle) <= reach)];

    private static double? Peak(List<(int Day, double Mean, List<double> Values)> days, double? guess)
    {
        var centres = days.Select(d => d.Mean).Concat(guess is { } g ? [g, g] : []).ToArray();
        if (centres.Length == 0) return null;
        var low = centres.Min() - 0.1;
        var density = new double[(int)Math.Ceiling((centres.Max() - low) * 10) + 2];
        for (var i = 0; i < density.Length; i++)
            foreach (var c in centres) density[i] += Math.Exp(-(low + (i / 10.0) - c) * (low + (i / 10.0) - c) / (2 * KernelSd * KernelSd));
        var enough = WellFilled * density.Max();
        for (var i = density.Length - 1; i > 0; i--)
            if (density[i] >= enough && density[i] >= density[i - 1] && (i + 1 == density.Length || density[i] >= density[i + 1])) return low + (i / 10.0);
        return low;
    }

    private static double Middle(IEnumerable<WeightedReading> day)
    {
        var values = day.Select(r => r.SpO2).Order().ToList();
        var cut = values.Count / 4;
        return values.Skip(cut).Take(values.Count - (2 * cut)).Average();
    }
}
