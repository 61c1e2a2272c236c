namespace CareRecords.Findings.Modelling;

/// <summary>
/// The posterior of the moment from which the deficit stays under one point and oxygen is back at usual, and its calibrated interval.
/// </summary>
internal static class RecoveryTime
{
    /// <summary>The level that the printed interval is calibrated to.</summary>
    public const double Level = 0.95;

    /// <summary>
    /// The posterior tail that is cut on each side. Less than 2.5 %: the chain's steps and beliefs are not the child, and this tail is what made
    /// the intervals cover 95 % on simulated children of many shapes (docs/calibration.md).
    /// </summary>
    internal static double Tail { get; set; } = 0.015;

    /// <summary>Recovery counts as established when this much of the posterior lies before the last 48 hours of the record.</summary>
    internal static double Established { get; set; } = 0.99;

    private const double SustainedHours = 48, GridHours = 1;

    /// <summary>The estimate, in days from the start of the onset's care day.</summary>
    public static RecoveryEstimate Of(EpisodeRun run, EpisodeCourse course, RaisedOxygen oxygen, int onsetDay, bool isLast)
    {
        var stepHours = 24 * DeficitTransitions.StepDays;
        var peak = run.LastBegins;
        var (start, end) = (peak * stepHours, (run.To + 1) * stepHours);
        var (first, last) = (Math.Max(0, oxygen.IndexAt(run.First * stepHours)), oxygen.IndexAt(end));
        var saturation = new double[run.To - peak + 2];
        saturation[^1] = 1 - course.NotBack(run.To);
        for (var t = run.To; t >= peak; t--) saturation[t - peak] = Math.Min(saturation[t - peak + 1], 1 - course.NotBack(t));
        double By(double hours)
        {
            // A step's value is that of its middle.
            var at = Math.Clamp((hours / stepHours) - 0.5 - peak, 0, saturation.Length - 1);
            var below = (int)at;
            var above = Math.Min(below + 1, saturation.Length - 1);
            var back = saturation[below] + ((at - below) * (saturation[above] - saturation[below]));
            return back * oxygen.BackBy(hours, first, last);
        }

        double? Quantile(double share)
        {
            for (var hours = start; hours <= end; hours += GridHours)
                if (By(hours) >= share) return hours;
            return null;
        }

        var origin = onsetDay * 24.0;
        var established = !isLast || By(end - SustainedHours) >= Established;
        double InDays(double hours) => Math.Max(0, (hours - origin) / 24);
        var low = InDays((Quantile(Tail) ?? end) - GridHours);
        if (!established) return new RecoveryEstimate(null, low, null, Level, Censored: true);
        return new RecoveryEstimate(InDays(Quantile(0.5) ?? end), low, InDays(Quantile(1 - Tail) ?? end), Level, Censored: false);
    }
}
