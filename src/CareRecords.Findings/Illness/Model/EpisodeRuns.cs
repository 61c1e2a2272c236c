namespace CareRecords.Findings.Modelling;

/// <summary>A run of steps of illness, both ends included, with the steps on which its onset and recovery may lie.</summary>
/// <param name="First">The first step more probably ill than not.</param>
/// <param name="Last">The last such step.</param>
/// <param name="Surest">The step, in the last stretch without a clear step, at which the child was most surely not well.</param>
/// <param name="From">The first step that its onset may lie in.</param>
/// <param name="To">The last step that its recovery may lie in.</param>
internal readonly record struct EpisodeRun(int First, int Last, int Surest, int From, int To);

/// <summary>Cuts the posterior into episodes.</summary>
/// <remarks>
/// A step is an illness step when "deficit a point or more, or oxygen raised" is more probable than not. Illness steps less than 48 hours
/// apart are one episode (definitions: two clear days end it). A run counts as an episode when it lasts a day, and either the expected
/// deficit reaches two points or two readings stood on raised oxygen.
/// </remarks>
internal static class EpisodeRuns
{
    private const double ClearDays = 2, LeastDays = 0.75, LeastDeficit = 2, LeastRaised = 1.5, LookBackDays = 6, LookAheadDays = 30;

    /// <summary>The runs in order.</summary>
    public static IReadOnlyList<EpisodeRun> Of(DeficitPosterior posterior, RaisedOxygen oxygen, IReadOnlyList<Observation> observations)
    {
        var ill = IllProbability(posterior, oxygen, observations);
        var runs = new List<(int First, int Last, int LastBegins)>();
        for (var t = 0; t < ill.Length; t++)
        {
            if (ill[t] <= 0.5) continue;
            if (runs.Count > 0 && t - runs[^1].Last <= ClearDays / DeficitTransitions.StepDays) runs[^1] = (runs[^1].First, t, t == runs[^1].Last + 1 ? runs[^1].LastBegins : t);
            else runs.Add((t, t, t));
        }

        var counted = runs.Where(r => Counts(r, posterior, oxygen, observations)).ToList();
        var back = (int)(LookBackDays / DeficitTransitions.StepDays);
        var ahead = (int)(LookAheadDays / DeficitTransitions.StepDays);
        return [.. counted.Select((r, i) => new EpisodeRun(
            r.First, r.Last, Enumerable.Range(r.LastBegins, r.Last - r.LastBegins + 1).MinBy(posterior.Well),
            Math.Max(i == 0 ? 0 : counted[i - 1].Last + 1, r.First - back),
            Math.Min(r.Last + ahead, i + 1 < counted.Count ? counted[i + 1].First - 1 : posterior.Steps - 1)))];
    }

    /// <summary>By step, the probability of a deficit of a point or more, or of raised oxygen.</summary>
    public static double[] IllProbability(DeficitPosterior posterior, RaisedOxygen oxygen, IReadOnlyList<Observation> observations)
    {
        var ill = new double[posterior.Steps];
        for (var t = 0; t < ill.Length; t++) ill[t] = posterior.NotBack(t);
        for (var i = 0; i < observations.Count; i++)
        {
            var step = StepEvidence.StepAt(observations[i].Hours);
            ill[step] = Math.Max(ill[step], oxygen.AtObservation[i]);
        }

        return ill;
    }

    private static bool Counts((int First, int Last, int LastBegins) run, DeficitPosterior posterior, RaisedOxygen oxygen, IReadOnlyList<Observation> observations)
    {
        if ((run.Last - run.First + 1) * DeficitTransitions.StepDays < LeastDays) return false;
        var raised = 0.0;
        for (var i = 0; i < observations.Count; i++)
            if (StepEvidence.StepAt(observations[i].Hours) is var step && step >= run.First && step <= run.Last) raised += oxygen.AtObservation[i];
        return raised >= LeastRaised || Enumerable.Range(run.First, run.Last - run.First + 1).Max(posterior.MeanDeficit) >= LeastDeficit;
    }
}
