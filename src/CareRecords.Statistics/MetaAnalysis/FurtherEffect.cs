namespace CareRecords.Statistics;

/// <summary>
/// Where the true effect of a further study would lie when τ² is not taken as known. The usual interval, mean ± t·√(error² + τ²), holds less than it says
/// when τ² is small, because its estimate is then often 0 (Partlett C, Riley RD 2017, Stat Med 36:301-317). Here τ² runs through its confidence
/// distribution, with mean(τ²) and Hartung and Knapp's error(τ²) following it, and the limits are quantiles of mean(τ²) + t·error(τ²) + z·τ, t on k − 1.
/// Source: Nagashima K, Noma H, Furukawa TA (2019), Stat Methods Med Res 28:1689-1702. One thing differs from theirs: the confidence distribution is that of
/// the generalised Q statistic (Viechtbauer W 2007, Stat Med 26:37-52), whose quantiles are the Q-profile interval of τ², and not of Cochran's Q. On
/// an example that they publish each limit lies within 2 % of the interval's width of theirs.
/// Assumes independent studies, known sampling variances, normal true effects. Smallest data: two studies (the limits are then very wide).
/// Effects that are all the same, or differ by rounding only, give no range: its error is drawn from how they differ, so it would have no width.
/// </summary>
public static class FurtherEffect
{
    private const int Points = 100;

    // Effects nearer to each other than this part of their smallest error differ by rounding.
    private const double Rounding = 1e-9;

    /// <summary>The interval.</summary>
    /// <param name="studies">The studies.</param>
    /// <param name="level">The level.</param>
    public static Outcome<Interval> Of(IReadOnlyCollection<StudyEffect> studies, double level = 0.95)
    {
        var copy = RandomEffects.Validated(studies);
        Require.Level(level);
        if (copy.Length < 2) return new TooLittleData("range of a further study", copy.Length, 2, "one study says nothing of how studies differ");
        return AreSame(copy)
            ? new TooLittleData("range of a further study", copy.Length, 2, "effects that are all the same say nothing of how studies differ")
            : PredictiveMixture.Between([.. TauSquared(copy).Select(tau2 => At(copy, tau2))], copy.Length - 1, level);
    }

    private static bool AreSame(StudyEffect[] studies) => studies.Max(s => s.Value) - studies.Min(s => s.Value) <= Rounding * Math.Sqrt(studies.Min(s => s.Variance));

    /// <summary>Equally likely values of τ², rising: P(τ² ≤ x) = P(χ² on k − 1 ≥ Q(x)), with what is left over at 0.</summary>
    private static IEnumerable<double> TauSquared(StudyEffect[] studies) =>
        Enumerable.Range(0, Points).Select(j => Heterogeneity.WhereQIs(studies, ChiSquare.Quantile(1 - ((j + 0.5) / Points), studies.Length - 1)));

    private static PredictivePoint At(StudyEffect[] studies, double tau2)
    {
        var pooled = WeightedMean.Of(studies, tau2);
        return new(pooled.Mean, Math.Sqrt(pooled.Q / ((studies.Length - 1) * pooled.Weight)), Math.Sqrt(tau2));
    }
}
