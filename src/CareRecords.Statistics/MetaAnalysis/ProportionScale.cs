namespace CareRecords.Statistics;

/// <summary>The scale on which proportions are pooled.</summary>
public enum ProportionScaleKind
{
    /// <summary>log(p/(1−p)), variance 1/x + 1/(n−x), with ½ added to both counts of a study with none or all.</summary>
    Logit,

    /// <summary>Freeman and Tukey's double arcsine, variance 1/(4n+2).</summary>
    FreemanTukey,

    /// <summary>arcsin √p, variance 1/(4n).</summary>
    Arcsine,

    /// <summary>p itself, variance p(1−p)/n, with ½ added to both counts of a study with none or all.</summary>
    Raw,
}

/// <summary>
/// Proportions carried to a scale on which they can be pooled, and back. The way back from Freeman and Tukey's scale uses
/// the harmonic mean of the sample sizes (Miller JJ 1978, Am Stat 32:138); with very unequal sizes it can mislead
/// (Schwarzer G et al. 2019, Res Synth Methods 10:476-483): prefer the logit or <see cref="RandomInterceptLogistic"/>.
/// Source: Freeman MF, Tukey JW (1950), Ann Math Stat 21:607-611. Smallest data: one trial in each study.
/// </summary>
public static class ProportionScale
{
    /// <summary>The effect of one study.</summary>
    /// <param name="kind">The scale.</param>
    /// <param name="successes">Successes.</param>
    /// <param name="trials">Trials, at least 1.</param>
    /// <param name="addHalf">
    /// Whether a study with none or all gets ½ added to both counts; null does so on the scales that need it (logit, raw).
    /// </param>
    public static StudyEffect Effect(ProportionScaleKind kind, int successes, int trials, bool? addHalf = null)
    {
        Require.Counts(successes, trials);
        ArgumentOutOfRangeException.ThrowIfZero(trials);
        double x = successes, n = trials;
        if ((successes == 0 || successes == trials) && (addHalf ?? kind is ProportionScaleKind.Logit or ProportionScaleKind.Raw))
        {
            (x, n) = (x + 0.5, n + 1);
        }

        return kind switch
        {
            ProportionScaleKind.Logit => new(Math.Log(x / (n - x)), (1 / x) + (1 / (n - x))),
            ProportionScaleKind.FreemanTukey => new(DoubleArcsine(x, n), 1 / ((4 * n) + 2)),
            ProportionScaleKind.Arcsine => new(Math.Asin(Math.Sqrt(x / n)), 1 / (4 * n)),
            _ => new(x / n, x / n * (1 - (x / n)) / n),
        };
    }

    /// <summary>The proportion that belongs to a value of the scale.</summary>
    /// <param name="kind">The scale.</param>
    /// <param name="value">The value.</param>
    /// <param name="trials">The trials of every study; only Freeman and Tukey's scale uses them.</param>
    public static double Proportion(ProportionScaleKind kind, double value, IReadOnlyCollection<int> trials) => kind switch
    {
        ProportionScaleKind.Logit => 1 / (1 + Math.Exp(-value)),
        ProportionScaleKind.FreemanTukey => FromDoubleArcsine(value, trials.Count / trials.Sum(n => 1.0 / n)),
        ProportionScaleKind.Arcsine => Math.Pow(Math.Sin(Math.Clamp(value, 0, Math.PI / 2)), 2),
        _ => value,
    };

    private static double DoubleArcsine(double x, double n) => 0.5 * (Math.Asin(Math.Sqrt(x / (n + 1))) + Math.Asin(Math.Sqrt((x + 1) / (n + 1))));

    private static double FromDoubleArcsine(double value, double n)
    {
        // Beyond what no or all successes of n give, the proportion is 0 or 1.
        if (value <= DoubleArcsine(0, n) || value >= DoubleArcsine(n, n))
        {
            return value <= DoubleArcsine(0, n) ? 0 : 1;
        }

        var sine = Math.Sin(2 * value);
        var inner = sine + ((sine - (1 / sine)) / n);
        return 0.5 * (1 - (Math.Sign(Math.Cos(2 * value)) * Math.Sqrt(Math.Max(0, 1 - (inner * inner)))));
    }
}
