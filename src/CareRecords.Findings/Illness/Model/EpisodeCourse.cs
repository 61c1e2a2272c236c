using static CareRecords.Findings.Modelling.DeficitStates;

namespace CareRecords.Findings.Modelling;

/// <summary>
/// One episode looked at closely: by step, the probability that it had not begun, and that its saturation was not yet back.
/// </summary>
/// <remarks>
/// The same chain, run over the episode's own steps, with two forward passes that follow only some of its paths: those that have never yet
/// risen, for the onset; and those that have not been well since, for the return. So a possible later bump in the readings is no part of
/// this episode's recovery. What is not known exactly of the usual saturation is averaged over (three points of a Gauss-Hermite rule).
/// </remarks>
internal sealed class EpisodeCourse
{
    private static readonly bool[] NotRisen = [.. Enumerable.Range(0, Count).Select(s => s < 2 || (s >= 2 + Cells && CellOf[s] <= CellsUnderOne))];
    private static readonly bool[] NotYetWell = [.. Enumerable.Range(0, Count).Select(s => s != DeficitStates.Well)];

    private readonly double[] _notBegun;
    private readonly double[] _notBack;

    private EpisodeCourse(int from, int steps) => (From, _notBegun, _notBack) = (from, new double[steps], new double[steps]);

    /// <summary>The first step looked at.</summary>
    public int From { get; }

    /// <summary>The last step looked at.</summary>
    public int To => From + _notBack.Length - 1;

    /// <summary>The probability that the illness had not begun by the end of a step.</summary>
    public double NotBegun(int step) => _notBegun[step - From];

    /// <summary>The probability that saturation was still rising away from usual, or a point or more under it, in a step.</summary>
    public double NotBack(int step) => _notBack[step - From];

    /// <summary>Looks at a run closely; <paramref name="evidences"/> are the readings seen from each weighted guess of the usual saturation.</summary>
    public static EpisodeCourse Of(EpisodeRun run, IReadOnlyList<(StepEvidence Evidence, double Weight)> evidences)
    {
        var course = new EpisodeCourse(run.From, run.To - run.From + 1);
        foreach (var (evidence, weight) in evidences) course.Add(run, evidence, weight);
        return course;
    }

    private void Add(EpisodeRun run, StepEvidence evidence, double weight)
    {
        var chain = DeficitTransitions.Instance;
        var length = _notBack.Length;
        var backward = new double[length][];
        var back = new double[Count];
        Array.Fill(back, 1);
        for (var t = length - 1; t >= 0; t--)
        {
            backward[t] = [.. back];
            evidence.Weigh(From + t, back);
            DeficitSmoother.Scale(back);
            var earlier = new double[Count];
            chain.Backward(back, earlier);
            back = earlier;
        }

        double[] all = StartOf(run), notRisen = [.. all], next = new double[Count];
        var notWell = new double[Count];
        for (var t = 0; t < length; t++)
        {
            Mask(notRisen, NotRisen);
            evidence.Weigh(From + t, all);
            evidence.Weigh(From + t, notRisen);
            if (From + t == run.Surest)
                for (var s = 0; s < Count; s++) notWell[s] = NotYetWell[s] ? all[s] : 0;
            else if (From + t > run.Surest)
            {
                evidence.Weigh(From + t, notWell);
                Mask(notWell, NotYetWell);
            }

            double total = 0, begins = 0, still = 0;
            for (var s = 0; s < Count; s++)
            {
                total += all[s] * backward[t][s];
                begins += notRisen[s] * backward[t][s];
                if (IsBack(s)) continue;
                still += (From + t < run.Surest ? all[s] : notWell[s]) * backward[t][s];
            }

            _notBegun[t] += weight * begins / total;
            _notBack[t] += weight * still / total;
            var scale = 1 / all.Sum();
            for (var s = 0; s < Count; s++) (all[s], notRisen[s], notWell[s]) = (all[s] * scale, notRisen[s] * scale, notWell[s] * scale);
            Advance(chain, ref all, ref next);
            Advance(chain, ref notRisen, ref next);
            Advance(chain, ref notWell, ref next);
        }
    }

    private static void Advance(DeficitTransitions chain, ref double[] states, ref double[] spare)
    {
        chain.Forward(states, spare);
        (states, spare) = (spare, states);
    }

    private static void Mask(double[] states, bool[] kept)
    {
        for (var s = 0; s < states.Length; s++)
            if (!kept[s]) states[s] = 0;
    }

    /// <summary>The record's own start; or after an earlier time, a child who is well or nearly.</summary>
    private static double[] StartOf(EpisodeRun run)
    {
        if (run.From == 0) return DeficitSmoother.Start();
        var start = new double[Count];
        for (var s = 2; s < Count; s++) start[s] = NotRisen[s] ? 0.1 / (Paces.Length * CellsUnderOne) : 0;
        start[DeficitStates.Well] = 0.75;
        start[Convalescent] = 0.15;
        return start;
    }
}
