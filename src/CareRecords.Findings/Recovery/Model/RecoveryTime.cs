namespace CareRecords.Findings.Modelling;

/// <summary>
/// The posterior of the moment from which the deficit stays under one point and oxygen is back at usual, and its calibrated interval.
/// </summary>
/// <remarks>
/// The interval is printed in days from the start of the onset's care day. It holds as well for the time from the onset itself, whose hour
/// nobody wrote: its lower limit is the lower of the two, its upper limit the higher. It is widened by the chain's own step of six hours.
/// Assumes that within an episode the child does not come back to well and fall ill again (that is a new episode), and that flows and
/// saturations err independently. The tail that is cut was chosen on simulated children apart from those reported in docs/calibration.md.
/// </remarks>
internal static class RecoveryTime
{
    /// <summary>The level that the printed interval is calibrated to.</summary>
    public const double Level = 0.95;

    /// <summary>The posterior tail that is cut on each side.</summary>
    private const double Tail = 0.02;

    /// <summary>Recovery counts as established when this much of the posterior lies before the last 48 hours of the record.</summary>
    private const double Established = 0.99;

    private const double SustainedHours = 48, StepHours = 24 * DeficitTransitions.StepDays;

    /// <summary>The estimate, in days from the start of the onset's care day.</summary>
    public static RecoveryEstimate Of(EpisodeRun run, EpisodeCourse course, RaisedOxygen oxygen, OnsetTime onset, bool isLast)
    {
        var start = run.Surest * StepHours;
        var by = HourByHour(run, course, oxygen);
        double? Quantile(double share) => Array.FindIndex(by, b => b >= share) is >= 0 and var hour ? start + hour : null;

        var end = start + by.Length - 1;
        var origin = Math.Floor(onset.Quantile(0.5) * DeficitTransitions.StepDays) * 24;
        var low = Math.Min((Quantile(Tail) ?? end) - origin - StepHours, LowFromOnset(by, start, onset));
        if (isLast && by[Math.Max(0, by.Length - 1 - (int)SustainedHours)] < Established)
            return new RecoveryEstimate(null, InDays(low), null, Level, Censored: true);
        return new RecoveryEstimate(
            InDays((Quantile(0.5) ?? end) - origin), InDays(low), InDays((Quantile(1 - Tail) ?? end) - origin + (StepHours * 2 / 3)), Level, Censored: false);
    }

    private static double InDays(double hours) => Math.Max(0, hours / 24);

    /// <summary>Hour by hour from the surest step to the end of the run's reach, the probability of being recovered for good.</summary>
    private static double[] HourByHour(EpisodeRun run, EpisodeCourse course, RaisedOxygen oxygen)
    {
        var steps = run.To - run.Surest + 1;
        var saturation = new double[steps + 1];
        saturation[^1] = 1 - course.NotBack(run.To);
        for (var t = run.To; t >= run.Surest; t--) saturation[t - run.Surest] = Math.Min(saturation[t - run.Surest + 1], 1 - course.NotBack(t));
        var (from, to) = (Math.Max(0, oxygen.IndexAt(run.First * StepHours)), oxygen.IndexAt((run.To + 1) * StepHours));
        var hours = new double[(int)(steps * StepHours) + 1];
        for (var h = 0; h < hours.Length; h++)
        {
            // A step's value is that of its middle.
            var at = Math.Clamp((h / StepHours) - 0.5, 0, steps);
            var below = (int)at;
            var above = Math.Min(below + 1, steps);
            var back = saturation[below] + ((at - below) * (saturation[above] - saturation[below]));
            hours[h] = back * oxygen.BackBy((run.Surest * StepHours) + h, from, to);
        }

        return hours;
    }

    /// <summary>The tail of recovery less onset, both uncertain, in hours.</summary>
    private static double LowFromOnset(double[] by, double start, OnsetTime onset)
    {
        var begins = onset.Steps.Select(s => (Hours: (s.Step + 0.5) * StepHours, s.Probability)).ToList();
        double Share(double hours)
        {
            var sum = 0.0;
            foreach (var (begin, p) in begins)
                if ((int)Math.Floor(begin + hours - start) is >= 0 and var h) sum += p * by[Math.Min(h, by.Length - 1)];
            return sum;
        }

        var (low, high) = (start - begins[^1].Hours, start + by.Length - begins[0].Hours);
        while (high - low > 0.5)
        {
            var middle = (low + high) / 2;
            if (Share(middle) >= Tail) high = middle; else low = middle;
        }

        return low - (StepHours / 2);
    }
}
