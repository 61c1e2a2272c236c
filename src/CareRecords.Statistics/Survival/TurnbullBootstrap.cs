namespace CareRecords.Statistics;

/// <summary>Pointwise limits of a Turnbull curve at one time.</summary>
/// <param name="Time">The time.</param>
/// <param name="Survival">The bounds of the estimate itself.</param>
/// <param name="Limits">Bootstrap limits of the survival chance, including its indeterminacy.</param>
public sealed record TurnbullLimits(double Time, ProbabilityBounds Survival, Interval Limits);

/// <summary>
/// Percentile bootstrap limits for the Turnbull estimate: whole observations are drawn again with replacement; the lower
/// limit is a quantile of the lower bounds, the upper limit of the upper bounds.
/// Source: Efron B, Tibshirani RJ (1993), An Introduction to the Bootstrap, chapter 13; for interval censoring Sun J (2001),
/// Stat Med 20:1249-1257. Where looks are continuous in time the bootstrap of this estimator is not known to be consistent
/// (it converges at rate n^(1/3)); with a fixed set of looks it is. Prefer a parametric interval when its curve fits.
/// Smallest data: 5 observations.
/// </summary>
public static class TurnbullBootstrap
{
    /// <summary>The fewest observations.</summary>
    public const int Smallest = 5;

    /// <summary>Limits at the times asked for.</summary>
    /// <param name="intervals">What is known of each time.</param>
    /// <param name="times">Where limits are wanted.</param>
    /// <param name="level">The confidence level.</param>
    /// <param name="draws">How many bootstrap samples.</param>
    /// <param name="seed">The seed; the same seed gives the same limits everywhere.</param>
    public static Outcome<IReadOnlyList<TurnbullLimits>> Limits(
        IReadOnlyCollection<CensoredInterval> intervals, IReadOnlyList<double> times, double level = 0.95, int draws = 500, int seed = 1)
    {
        ArgumentNullException.ThrowIfNull(times);
        Require.Level(level);
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 20);
        var copy = CensoredInterval.Validated(intervals);
        if (copy.Length < Smallest)
        {
            return new TooLittleData("Turnbull bootstrap", copy.Length, Smallest, "too few observations to draw from");
        }

        var estimate = Turnbull.Fit(copy).Value;
        var random = new SeededRandom(seed);
        var samples = Enumerable.Range(0, draws).Select(_ => Resample(copy, random)).ToArray();
        TurnbullCurve[] curves = [.. samples.AsParallel().AsOrdered().Select(sample => Turnbull.Fit(sample).Value)];
        var tail = (1 - level) / 2;
        TurnbullLimits[] limits =
        [
            .. times.Select(t => new TurnbullLimits(
                t,
                estimate.SurvivalAt(t),
                new Interval(
                    Quantiles.At([.. curves.Select(c => c.SurvivalAt(t).Low)], tail).Value,
                    Quantiles.At([.. curves.Select(c => c.SurvivalAt(t).High)], 1 - tail).Value,
                    level))),
        ];
        return new(limits);
    }

    private static CensoredInterval[] Resample(CensoredInterval[] from, SeededRandom random) =>
        [.. Enumerable.Range(0, from.Length).Select(_ => from[random.Below(from.Length)])];
}
