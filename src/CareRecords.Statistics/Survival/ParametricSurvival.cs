namespace CareRecords.Statistics;

/// <summary>
/// Maximum-likelihood fit of a Weibull, lognormal, loglogistic or exponential distribution to times known to lie in
/// intervals (Left, Right], exact and right-censored ones included: Σ log[F(Right) − F(Left)], the log density for an exact
/// time. Newton steps on a concave form of the likelihood, so the maximum is the only one; standard errors from the
/// observed information.
/// Source: Kalbfleisch JD, Prentice RL (2002), The Statistical Analysis of Failure Time Data, chapter 3; Burridge J (1981),
/// J R Stat Soc B 43:41-45.
/// Assumes the family and looks that have nothing to do with the time. Smallest data: two intervals that no single time
/// lies in (for the exponential: one with a finite right end and a positive time at risk); a spread that the data leave
/// open, or no longer finite, is <see cref="TooLittleData"/>.
/// </summary>
public static class ParametricSurvival
{
    private const int MostSteps = 500;

    /// <summary>The fit.</summary>
    /// <param name="intervals">What is known of each time; an exact time must be above 0.</param>
    /// <param name="family">The family.</param>
    public static Outcome<ParametricFit> Fit(IReadOnlyCollection<CensoredInterval> intervals, SurvivalFamily family)
    {
        var copy = CensoredInterval.Validated(intervals);
        if (Array.Exists(copy, i => i.Right <= 0))
        {
            throw new ArgumentException("A time of exactly 0 has no logarithm; give (0, first look] instead.", nameof(intervals));
        }

        if (TooLittle(copy, family) is { } missing)
        {
            return missing;
        }

        var law = StandardLaw.Of(family);
        var (a, r) = Start(copy, family);
        return Climb(law, copy, family == SurvivalFamily.Exponential, ref a, ref r)
            ? ParametricFit.FromConcaveForm(family, a, r, CensoredLikelihood.At(law, copy, a, r), copy.Length)
            : new TooLittleData(Name(family), copy.Length, 2, "the likelihood has no maximum: the data leave the spread open");
    }

    /// <summary>
    /// The same fit with standard errors that respect clusters of alike observations and the shape's misfit: the sandwich of scores added up by cluster
    /// (White H 1982, Econometrica 50:1-25; Lin DY, Wei LJ 1989, J Am Stat Assoc 84:1074-1078); intervals widen by √(k/(k − 1)) and take t on k − 1
    /// for k clusters (Cameron AC, Miller DL 2015, J Hum Resour 50:317-372). The place of the maximum is that of the plain fit. Smallest data: two clusters.
    /// </summary>
    /// <param name="intervals">What is known of each time, cluster by cluster.</param>
    /// <param name="family">The family.</param>
    public static Outcome<ParametricFit> FitClusters(IReadOnlyCollection<IReadOnlyCollection<CensoredInterval>> intervals, SurvivalFamily family)
    {
        ArgumentNullException.ThrowIfNull(intervals);
        var clusters = intervals.Where(c => c.Count > 0).ToList();
        if (clusters.Count < 2)
        {
            return new TooLittleData(Name(family), clusters.Count, 2, "two clusters are needed to see how clusters differ");
        }

        var plain = Fit([.. clusters.SelectMany(c => c)], family);
        if (!plain.TryGet(out var fit))
        {
            return plain;
        }

        var (law, a, r) = (StandardLaw.Of(family), fit.Location / fit.Scale, 1 / fit.Scale);
        return fit.Robust([.. clusters.Select(c =>
        {
            // a = location/scale and r = 1/scale: da = r·dlocation − a·dlog scale, dr = −r·dlog scale.
            var at = CensoredLikelihood.At(law, [.. c], a, r);
            return (r * at.ByA, -(a * at.ByA) - (r * at.ByR));
        })]);
    }

    internal static string Name(SurvivalFamily family) => $"{family.ToString().ToLowerInvariant()} fit to intervals";

    private static TooLittleData? TooLittle(CensoredInterval[] x, SurvivalFamily family)
    {
        if (x.Length == 0 || x.All(i => i.IsRightCensored))
        {
            return new(Name(family), x.Length, 2, "no time is bounded above");
        }

        if (x.All(i => i.Left == 0))
        {
            return new(Name(family), x.Length, 2, "no time is bounded below");
        }

        var oneTimeFitsAll = x.Max(i => i.Left) <= x.Min(i => i.Right);
        return oneTimeFitsAll && family != SurvivalFamily.Exponential
            ? new(Name(family), x.Length, 2, "one time fits all intervals, so the spread is unknown")
            : null;
    }

    /// <summary>Location and spread of the logs of middle times (right-censored ones at their left end).</summary>
    private static (double A, double R) Start(CensoredInterval[] x, SurvivalFamily family)
    {
        var logs = Array.ConvertAll(x, i => Math.Log(i.IsRightCensored ? Math.Max(i.Left, 1e-3) : 0.5 * (i.Left + i.Right)));
        var mean = logs.Average();
        var spread = Math.Sqrt(logs.Average(v => (v - mean) * (v - mean)));
        var r = family == SurvivalFamily.Exponential ? 1 : 1 / Math.Max(spread, 0.1);
        return (mean * r, r);
    }

    private static bool Climb(StandardLaw law, CensoredInterval[] x, bool scaleFixed, ref double a, ref double r)
    {
        var here = CensoredLikelihood.At(law, x, a, r);
        while (!scaleFixed && !double.IsFinite(here.Value) && r > 1e-6)
        {
            // A wider start, until every interval has some probability.
            (a, r) = (a / 2, r / 2);
            here = CensoredLikelihood.At(law, x, a, r);
        }

        for (var step = 0; step < MostSteps; step++)
        {
            var (da, dr) = Direction(here, scaleFixed);
            if (!double.IsFinite(da) || !double.IsFinite(dr))
            {
                return false;
            }

            var small = Math.Abs(da) <= 1e-13 * Math.Max(1, Math.Abs(a)) && Math.Abs(dr) <= 1e-13 * r;
            var length = 1.0;
            while (r + (length * dr) <= 0)
            {
                length /= 2;
            }

            var next = CensoredLikelihood.At(law, x, a + (length * da), r + (length * dr));

            // Within rounding of the maximum a full step is still the better point.
            while (!(next.Value >= here.Value - (1e-14 * Math.Abs(here.Value))) && length > 1e-12)
            {
                length /= 2;
                next = CensoredLikelihood.At(law, x, a + (length * da), r + (length * dr));
            }

            (a, r, here) = (a + (length * da), r + (length * dr), next);
            if (small)
            {
                return r is > 1e-6 and < 1e6 && double.IsFinite(here.Value);
            }
        }

        // Rounding can keep the last digit moving; that is convergence, a gradient that stays large is not.
        return Math.Abs(here.ByA) < 1e-8 * x.Length && (scaleFixed || Math.Abs(here.ByR) < 1e-8 * x.Length) && r is > 1e-6 and < 1e6;
    }

    private static (double A, double R) Direction(CensoredLikelihood at, bool scaleFixed)
    {
        if (scaleFixed)
        {
            return (-at.ByA / at.AA, 0);
        }

        var determinant = (at.AA * at.RR) - (at.AR * at.AR);
        return (((at.AR * at.ByR) - (at.RR * at.ByA)) / determinant, ((at.AR * at.ByA) - (at.AA * at.ByR)) / determinant);
    }
}
