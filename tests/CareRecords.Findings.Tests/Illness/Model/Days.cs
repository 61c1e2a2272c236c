using CareRecords.Findings.Modelling;

namespace CareRecords.Findings.Tests.Illness.Model;

/// <summary>Readings made by rule, not by chance: six a day with errors that repeat, so that a test says the same on every machine.</summary>
internal static class Days
{
    private static readonly double[] Errors = [0.4, -0.9, 1.1, -0.3, 0.8, -1.2, 0.1, 0.6, -0.7, 0.2, -0.5];

    public static List<Observation> Of(int days, double usual, Func<double, double> deficitAt, Func<double, double?>? flowAt = null) =>
        [.. from day in Enumerable.Range(0, days)
            from n in Enumerable.Range(0, 6)
            let at = day + ((n + 1) / 8.0)
            select new Observation(at * 24, Math.Min(100, Math.Round(usual - deficitAt(at) + Errors[((day * 6) + n) % Errors.Length])), flowAt?.Invoke(at), false)];

    /// <summary>Five points under from a day on, back evenly over some days.</summary>
    public static Func<double, double> Illness(double onset, double plateau = 2, double back = 5, double depth = 5) => at =>
        at <= onset ? 0 : at < onset + 1 ? depth * (at - onset) : at < onset + 1 + plateau ? depth : Math.Max(0, depth * (1 - ((at - onset - 1 - plateau) / back)));

    public static IllnessModelResult Fit(List<Observation> observations, int days, double? usualOxygen = null) =>
        IllnessModel.Fit(observations, new IllnessModelInput { CareDays = days, UsualOxygen = usualOxygen is { } u ? [.. Enumerable.Repeat(u, days)] : null });
}
