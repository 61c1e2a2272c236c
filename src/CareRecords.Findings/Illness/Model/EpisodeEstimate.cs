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
        var onset = OnsetTime.Of(run, course, oxygen);
        var day = onset.Quantile(0.5) / StepsPerDay;
        return new ModelEpisode
        {
            OnsetDay = day,
            OnsetLow = onset.Quantile(0.025) / StepsPerDay,
            OnsetHigh = onset.Quantile(0.975) / StepsPerDay,
            PeakDay = Math.Max(day, peak / StepsPerDay),
            LastDay = run.Last / StepsPerDay,
            Recovery = RecoveryTime.Of(run, course, oxygen, onset, isLast: run.To == posterior.Steps - 1),
            Curve = ReturnCurve.Of(day, Math.Min(posterior.Steps - 1, run.Last + (int)(CurveAfterDays * StepsPerDay)), posterior, usual),
        };
    }
}
