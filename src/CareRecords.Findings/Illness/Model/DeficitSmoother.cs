using static CareRecords.Findings.Modelling.DeficitStates;

namespace CareRecords.Findings.Modelling;

/// <summary>
/// The forward-backward recursion over the illness chain (Rabiner 1989), scaled at each step. Forward probabilities are kept
/// for a year at a time and worked out again on the way back, so that twenty years fit in little memory.
/// </summary>
internal static class DeficitSmoother
{
    private const int Block = 1500;

    /// <summary>The posterior of every step, given all that was written.</summary>
    public static DeficitPosterior Smooth(StepEvidence evidence)
    {
        var chain = DeficitTransitions.Instance;
        var steps = evidence.Steps;
        var kept = new double[(steps + Block - 1) / Block][];
        var (now, next) = (Start(), new double[Count]);
        kept[0] = [.. now];
        for (var t = 0; t < (kept.Length - 1) * Block; t++)
        {
            if (t % Block == 0) kept[t / Block] = [.. now];
            Step(chain, evidence, t, ref now, ref next);
        }

        kept[^1] = now;
        var posterior = new DeficitPosterior(steps);
        var back = new double[Count];
        var earlier = new double[Count];
        Array.Fill(back, 1);
        var filtered = new double[Math.Min(Block, steps)][];
        for (var block = kept.Length - 1; block >= 0; block--)
        {
            var first = block * Block;
            var last = Math.Min(steps, first + Block) - 1;
            (now, next) = (kept[block], new double[Count]);
            for (var t = first; t <= last; t++)
            {
                evidence.Weigh(t, now);
                Scale(now);
                filtered[t - first] = [.. now];
                chain.Forward(now, next);
                (now, next) = (next, now);
            }

            for (var t = last; t >= first; t--)
            {
                posterior.Set(t, filtered[t - first], back);
                evidence.Weigh(t, back);
                Scale(back);
                chain.Backward(back, earlier);
                (back, earlier) = (earlier, back);
            }
        }

        return posterior;
    }

    private static void Step(DeficitTransitions chain, StepEvidence evidence, int t, ref double[] now, ref double[] next)
    {
        evidence.Weigh(t, now);
        Scale(now);
        chain.Forward(now, next);
        (now, next) = (next, now);
    }

    /// <summary>A record may begin in illness: one in ten does, at any stage.</summary>
    public static double[] Start()
    {
        var start = new double[Count];
        Array.Fill(start, 0.1 / (Count - 1));
        start[Well] = 0.9;
        return start;
    }

    /// <summary>Makes the values sum to 1.</summary>
    public static void Scale(double[] states)
    {
        var sum = 0.0;
        foreach (var p in states) sum += p;
        for (var s = 0; s < states.Length; s++) states[s] /= sum;
    }
}
