using CareRecords.Findings;

namespace CareRecords.Pooling;

/// <summary>What followed steps down, by hours stable before the step.</summary>
internal static class SetbackPooling
{
    private const string TrendMethod =
        "each child's sum of (setback less the mean) times (stable hours less the mean), signs turned child by child; hours are what the families chose, so this is no comparison of like with like";

    public static PooledSetbacks Of(IReadOnlyList<ChildSummary> children, PoolOptions options, List<SuppressedCell> suppressed) =>
        new()
        {
            Bands = [.. StableBand.Labels.Select(label => Band(label, children, options, suppressed))],
            Trend = Trend(children, options),
        };

    private static SetbackBand Band(string label, IReadOnlyList<ChildSummary> children, PoolOptions options, List<SuppressedCell> suppressed)
    {
        var tallies = children.Select(c => TallyOf(c.StepsDown.Where(s => StableBand.LabelOf(s.StableHours) == label))).Where(t => t.Judged + t.Unknown > 0).ToList();
        var judged = tallies.Where(t => t.Judged > 0).ToList();
        if (tallies.Count == 0) return new(label, 0, 0, 0, null, null, null, 0, "no such step");
        if (WhyKeptBack(tallies.Count, judged, options.SmallestGroup) is { } why)
        {
            suppressed.Add(new("Setbacks after steps down", label, why));
            return new(label, null, null, null, null, null, null, null, "kept back: " + why);
        }

        var share = ShareModels.Model([.. judged]);
        return new(label, tallies.Count, judged.Sum(t => t.Judged), judged.Sum(t => t.Kept), share.Pooled, share.Low, share.High, tallies.Sum(t => t.Unknown), share.Method);
    }

    /// <summary>A band rests on its children, on those with a setback and on those without: none of these may be few.</summary>
    private static string? WhyKeptBack(int children, List<GapTally> judged, int smallest)
    {
        if (children < smallest) return Suppression.TooFew(smallest);
        var (with, without) = (judged.Count(t => t.Kept > 0), judged.Count(t => t.Kept < t.Judged));
        return with > 0 && with < smallest ? Suppression.TooFew(smallest) + " had a setback"
            : without > 0 && without < smallest ? Suppression.TooFew(smallest) + " had a step without a setback"
            : null;
    }

    private static GapTally TallyOf(IEnumerable<StepDown> steps)
    {
        var all = steps.ToList();
        var unknown = all.Count(s => s.Outcome == StepOutcome.Unknown);
        return new(all.Count(s => s.Outcome == StepOutcome.Setback), all.Count - unknown, unknown);
    }

    private static GroupTest Trend(IReadOnlyList<ChildSummary> children, PoolOptions options)
    {
        const string what = "setbacks after steps down by stable hours before";
        var steps = children.Select(c => c.StepsDown.Where(s => s.StableHours is not null && s.Outcome != StepOutcome.Unknown).ToList()).Where(s => s.Count > 0).ToList();
        var least = Math.Max(6, options.SmallestGroup);
        if (steps.Count < least) return new(what, [], null, FormattableString.Invariant($"not done: fewer than {least} children with a step whose hours and outcome are known"));
        var all = steps.SelectMany(s => s).ToList();
        var (meanHours, meanSetback) = (all.Average(s => s.StableHours ?? 0), all.Average(Setback));
        var contributions = steps.Select(child => child.Sum(s => (Setback(s) - meanSetback) * ((s.StableHours ?? 0) - meanHours))).ToList();
        return new(what, [], ChildPermutation.OfSigns(contributions, options.Permutations, options.Seed), TrendMethod);
    }

    private static double Setback(StepDown step) => step.Outcome == StepOutcome.Setback ? 1 : 0;
}
