namespace CareRecords.Statistics;

/// <summary>
/// Random-effects (and common-effect) meta-analysis: yᵢ ~ N(μ, vᵢ + τ²), μ by inverse-variance weights. The interval is
/// normal, or Hartung and Knapp's: variance Σw(y−μ)²/((k−1)Σw) and t on k − 1 degrees of freedom.
/// Source: DerSimonian R, Laird N (1986), Control Clin Trials 7:177-188; Hartung J, Knapp G (2001), Stat Med 20:3875-3889;
/// Higgins JPT, Thompson SG (2002), Stat Med 21:1539-1558, for I²; Viechtbauer W (2007), Stat Med 26:37-52, for the
/// Q-profile interval. Assumes independent studies, known sampling variances, normal true effects. Smallest data: two
/// studies (with fewer than five, τ² is hardly known: look at its interval).
/// </summary>
public static class RandomEffects
{
    /// <summary>The analysis.</summary>
    /// <param name="studies">The studies.</param>
    /// <param name="method">How τ² is estimated.</param>
    /// <param name="hartungKnapp">True for Hartung and Knapp's interval, recommended for fewer than twenty studies.</param>
    /// <param name="level">The confidence level.</param>
    public static Outcome<MetaAnalysisResult> Fit(
        IReadOnlyCollection<StudyEffect> studies,
        HeterogeneityMethod method = HeterogeneityMethod.RestrictedMaximumLikelihood,
        bool hartungKnapp = true,
        double level = 0.95)
    {
        var copy = Validated(studies);
        Require.Level(level);
        if (copy.Length < 2)
        {
            return new TooLittleData("meta-analysis", copy.Length, 2, "one study cannot be pooled");
        }

        var tau2 = Heterogeneity.Estimate(copy, method);
        var pooled = WeightedMean.Of(copy, tau2);
        var variance = hartungKnapp ? pooled.Q / ((copy.Length - 1) * pooled.Weight) : 1 / pooled.Weight;
        return new MetaAnalysisResult(copy, pooled.Mean, Math.Sqrt(variance), tau2, method, hartungKnapp, level);
    }

    internal static StudyEffect[] Validated(IReadOnlyCollection<StudyEffect> studies)
    {
        ArgumentNullException.ThrowIfNull(studies);
        StudyEffect[] copy = [.. studies];
        return Array.Exists(copy, s => !double.IsFinite(s.Value) || !(s.Variance > 0) || double.IsInfinity(s.Variance))
            ? throw new ArgumentException("A study has a finite effect and a finite variance above 0.", nameof(studies))
            : copy;
    }
}
