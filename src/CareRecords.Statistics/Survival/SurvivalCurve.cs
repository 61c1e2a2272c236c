namespace CareRecords.Statistics;

/// <summary>A step of a survival curve, at a time when events happened.</summary>
/// <param name="Time">The time of the events.</param>
/// <param name="AtRisk">How many were followed up to then without the event.</param>
/// <param name="Events">How many had it then.</param>
/// <param name="Survival">The chance of being without it beyond this time.</param>
/// <param name="StandardError">Greenwood's standard error; null where nobody is left.</param>
/// <param name="Limits">Pointwise limits; null where nobody is left.</param>
public sealed record SurvivalStep(double Time, int AtRisk, int Events, double Survival, double? StandardError, Interval? Limits);

/// <summary>A quantile of a survival time.</summary>
/// <param name="Value">The time; null when the curve does not come down so far.</param>
/// <param name="Low">The lower limit; null when the curve of limits does not come down so far.</param>
/// <param name="High">The upper limit; null likewise: the data set no upper limit.</param>
/// <param name="Level">The confidence level.</param>
/// <param name="Count">How many subjects.</param>
public sealed record SurvivalQuantile(double? Value, double? Low, double? High, double Level, int Count);

/// <summary>A Kaplan-Meier curve.</summary>
/// <param name="Steps">The steps at event times, in order.</param>
/// <param name="LastTime">The longest follow-up, event or not.</param>
/// <param name="Count">How many subjects.</param>
/// <param name="Level">The confidence level of the limits.</param>
/// <param name="Scale">The scale of the limits.</param>
public sealed record SurvivalCurve(IReadOnlyList<SurvivalStep> Steps, double LastTime, int Count, double Level, LimitScale Scale)
{
    // Products that should meet a probability exactly miss it by rounding.
    private const double Tie = 1.5e-8;

    /// <summary>How many had the event.</summary>
    public int Events => Steps.Sum(s => s.Events);

    /// <summary>The chance of being without the event beyond a time; unknown (null) past the longest follow-up unless it is 0.</summary>
    /// <param name="time">The time.</param>
    public double? SurvivalAt(double time)
    {
        var survival = Steps.LastOrDefault(s => s.Time <= time)?.Survival ?? 1;
        return time <= LastTime || survival == 0 ? survival : null;
    }

    /// <summary>
    /// The time at which a share <paramref name="share"/> has had the event, with the limits at which the curves of limits
    /// cross it (Brookmeyer R, Crowley J 1982, Biometrics 38:29-41). Where the curve lies exactly on it, the middle of that
    /// stretch.
    /// </summary>
    /// <param name="share">Above 0 and below 1; 0.5 for the median.</param>
    public SurvivalQuantile Quantile(double share)
    {
        if (!(share > 0 && share < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share lies between 0 and 1, both excluded.");
        }

        return new(
            Crossing(s => s.Survival, 1 - share),
            Crossing(s => s.Limits?.Low, 1 - share),
            Crossing(s => s.Limits?.High, 1 - share),
            Level,
            Count);
    }

    /// <summary>The median survival time with its limits.</summary>
    public SurvivalQuantile Median => Quantile(0.5);

    /// <summary>
    /// The restricted mean: the area under the curve up to <paramref name="horizon"/>, the mean time without the event among
    /// the first <paramref name="horizon"/> units. Squared standard error: Σ A(t)²·d/(n(n−d)) over event times t before the
    /// horizon, A(t) the area from t to it (Klein JP, Moeschberger ML 2003, Survival Analysis, section 4.5).
    /// </summary>
    /// <param name="horizon">At most the longest follow-up, unless everybody had the event.</param>
    public Outcome<Estimate> RestrictedMean(double horizon)
    {
        if (!(horizon > 0) || double.IsInfinity(horizon))
        {
            throw new ArgumentOutOfRangeException(nameof(horizon), horizon, "The horizon is a positive time.");
        }

        if (SurvivalAt(horizon) is null)
        {
            return new TooLittleData("restricted mean", Count, Count, "follow-up ends before the horizon");
        }

        var steps = Steps.Where(s => s.Time < horizon).ToArray();
        var (after, variance) = (0.0, 0.0);
        for (var i = steps.Length - 1; i >= 0; i--)
        {
            var (s, next) = (steps[i], i + 1 < steps.Length ? steps[i + 1].Time : horizon);
            after += s.Survival * (next - s.Time);
            variance += s.AtRisk > s.Events ? after * after * s.Events / ((double)s.AtRisk * (s.AtRisk - s.Events)) : 0;
        }

        var mean = after + (steps.Length > 0 ? steps[0].Time : horizon);
        var half = Gaussian.Critical(Level) * Math.Sqrt(variance);
        return new Estimate(mean, mean - half, mean + half, Level, Count, "restricted mean survival time");
    }

    /// <summary>
    /// The time at which a curve comes down to the target. Upper limits can rise again where few are left; then, as in
    /// survfit, the step that lies nearest below the target counts.
    /// </summary>
    private double? Crossing(Func<SurvivalStep, double?> curve, double target)
    {
        if (Steps.Where(s => curve(s) <= target + Tie).MaxBy(curve) is not { } reached)
        {
            return null;
        }

        if (Steps.Where(s => curve(s) < target - Tie).MaxBy(curve) is { } below)
        {
            return 0.5 * (reached.Time + below.Time);
        }

        // The curve ends on the target: its last stretch runs to the longest follow-up.
        return curve(Steps[^1]) is { } end && Math.Abs(end - target) < Tie ? 0.5 * (reached.Time + LastTime) : null;
    }
}
