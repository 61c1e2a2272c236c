namespace CareRecords.Findings.Modelling;

/// <summary>An episode's onset, peak, recovery and curve, read off the posterior.</summary>
internal static class EpisodeEstimate
{
    private const double CurveAfterDays = 4;

    private static int StepsPerDay => (int)Math.Round(1 / DeficitTransitions.StepDays);

    /// <summary>The estimate for one run.</summary>
    public static ModelEpisode Of(EpisodeRun run, DeficitPosterior posterior, RaisedOxygen oxygen, UsualSaturation usual, EpisodeCourse course)
    {
        var peak = Enumerable.Range(run.First, run.Last - run.First + 1).MaxBy(posterior.MeanDeficit);
        var (low, onset, high) = Onset(run, peak, course, oxygen);
        var recovery = RecoveryTime.Of(run, course, oxygen, onset, run.To == posterior.Steps - 1);
        return new ModelEpisode
        {
            OnsetDay = onset,
            OnsetLow = low,
            OnsetHigh = high,
            PeakDay = Math.Max(onset, peak / StepsPerDay),
            LastDay = run.Last / StepsPerDay,
            Recovery = recovery,
            Curve = ReturnCurve.Of(onset, Math.Min(posterior.Steps - 1, run.Last + (int)(CurveAfterDays * StepsPerDay)), posterior, usual),
        };
    }

    /// <summary>Care days of the 2.5 %, 50 % and 97.5 % points of the moment by which illness had begun.</summary>
    private static (int Low, int Middle, int High) Onset(EpisodeRun run, int peak, EpisodeCourse course, RaisedOxygen oxygen)
    {
        int? low = null, middle = null;
        var begun = 0.0;
        for (var t = run.From; t <= peak; t++)
        {
            var raised = oxygen.At(((t + 1) * 24 * DeficitTransitions.StepDays) - 1e-6);
            begun = Math.Max(begun, Math.Max(1 - course.NotBegun(t), raised));
            if (begun >= 0.025) low ??= t;
            if (begun >= 0.5) middle ??= t;
            if (begun >= 0.975) return (low!.Value / StepsPerDay, (middle ?? t) / StepsPerDay, t / StepsPerDay);
        }

        var first = middle ?? run.First;
        return (Math.Min(low ?? first, first) / StepsPerDay, first / StepsPerDay, Math.Max(first, peak) / StepsPerDay);
    }
}
