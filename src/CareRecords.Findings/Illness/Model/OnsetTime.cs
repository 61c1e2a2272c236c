namespace CareRecords.Findings.Modelling;

/// <summary>The posterior of the moment at which an episode began: by step from <see cref="From"/>, the probability that it had.</summary>
internal sealed class OnsetTime
{
    private readonly double[] _begun;

    private OnsetTime(int from, double[] begun) => (From, _begun) = (from, begun);

    /// <summary>The first step looked at.</summary>
    public int From { get; }

    /// <summary>The steps in which it may have begun, each with its probability.</summary>
    public IEnumerable<(int Step, double Probability)> Steps
    {
        get
        {
            var before = 0.0;
            for (var i = 0; i < _begun.Length; i++)
            {
                if (_begun[i] - before > 1e-4) yield return (From + i, _begun[i] - before);
                before = _begun[i];
            }
        }
    }

    /// <summary>Reads it off the course up to a step at which the child was surely ill; raised oxygen is illness whatever the saturation.</summary>
    public static OnsetTime Of(EpisodeRun run, EpisodeCourse course, RaisedOxygen oxygen)
    {
        var begun = new double[run.Surest - run.From + 1];
        var most = 0.0;
        for (var t = run.From; t <= run.Surest; t++)
        {
            var raised = oxygen.At(((t + 1) * 24 * DeficitTransitions.StepDays) - 1e-6);
            begun[t - run.From] = most = Math.Max(most, Math.Max(1 - course.NotBegun(t), raised));
        }

        for (var i = 0; i < begun.Length; i++) begun[i] /= most;
        return new OnsetTime(run.From, begun);
    }

    /// <summary>The step by whose end a share of the posterior lies.</summary>
    public int Quantile(double share) => From + Math.Max(0, Array.FindIndex(_begun, b => b >= share));
}
