namespace CareRecords.Statistics;

/// <summary>
/// The Kaplan-Meier (product-limit) estimate of the chance of being without the event beyond t:
/// S(t) = Π (1 − d/n) over event times up to t; Greenwood's standard error S·sqrt(Σ d/(n(n−d))).
/// Source: Kaplan EL, Meier P (1958), J Am Stat Assoc 53:457-481; log-log limits: Kalbfleisch JD, Prentice RL (1980).
/// Assumes that censoring has nothing to do with the time of the event. Smallest data: one subject; with no event the curve
/// is 1 throughout and has no steps.
/// </summary>
public static class KaplanMeier
{
    /// <summary>The curve with pointwise limits.</summary>
    /// <param name="subjects">Subjects in any order.</param>
    /// <param name="level">The confidence level.</param>
    /// <param name="scale">The scale of the limits.</param>
    public static Outcome<SurvivalCurve> Fit(
        IReadOnlyCollection<FollowUp> subjects, double level = 0.95, LimitScale scale = LimitScale.LogLog)
    {
        Require.Level(level);
        var rows = RiskTable.Of(subjects);
        if (rows.Count == 0)
        {
            return new TooLittleData("Kaplan-Meier curve", 0, 1, "no subjects");
        }

        var z = Gaussian.Critical(level);
        var (survival, greenwood) = (1.0, 0.0);
        List<SurvivalStep> steps = [];
        foreach (var row in rows.Where(r => r.Events > 0))
        {
            survival *= (double)(row.AtRisk - row.Events) / row.AtRisk;
            greenwood += row.Events / ((double)row.AtRisk * (row.AtRisk - row.Events));
            var last = row.AtRisk == row.Events;
            steps.Add(new(
                row.Time,
                row.AtRisk,
                row.Events,
                last ? 0 : survival,
                last ? null : survival * Math.Sqrt(greenwood),
                last ? null : Limits(survival, Math.Sqrt(greenwood), z, level, scale)));
        }

        return new SurvivalCurve(steps, rows[^1].Time, subjects.Count, level, scale);
    }

    private static Interval Limits(double s, double logError, double z, double level, LimitScale scale)
    {
        switch (scale)
        {
            case LimitScale.Plain:
                return new(Math.Max(0, s - (z * s * logError)), Math.Min(1, s + (z * s * logError)), level);
            case LimitScale.Log:
                return new(s * Math.Exp(-z * logError), Math.Min(1, s * Math.Exp(z * logError)), level);
            default:
                var spread = Math.Exp(z * logError / Math.Log(s));
                return new(Math.Pow(s, 1 / spread), Math.Pow(s, spread), level);
        }
    }
}
