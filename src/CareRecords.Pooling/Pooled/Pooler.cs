namespace CareRecords.Pooling;

/// <summary>Pools many children: one at a time in, little of each kept, and the same figures whatever the order of the files.</summary>
public static class Pooler
{
    /// <summary>Pools the inputs.</summary>
    /// <param name="inputs">Children and refusals, read as they are asked for.</param>
    /// <param name="options">How to pool.</param>
    /// <param name="taken">Called with each child that was taken in, for example to write it into a tidy folder.</param>
    /// <param name="progress">Told the number of inputs looked at.</param>
    public static PooledFindings Pool(IEnumerable<SharedInput> inputs, PoolOptions? options = null, Action<SharedChild>? taken = null, IProgress<int>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        options ??= new PoolOptions();
        ArgumentOutOfRangeException.ThrowIfLessThan(options.SmallestGroup, 1, nameof(options));
        var children = new ChildrenTaken();
        var refused = new List<RefusedInput>();
        var count = 0;
        foreach (var input in inputs)
        {
            progress?.Report(++count);
            if (input is RefusedInput refusal) refused.Add(refusal);
            else if (input is SharedChild child)
            {
                if (children.Take(child) is { } why) refused.Add(new(child.File, why)); else taken?.Invoke(child);
            }
        }

        return Estimate(children.InOrder(), [.. refused.OrderBy(r => r.File, StringComparer.Ordinal)], options);
    }

    private static PooledFindings Estimate(IReadOnlyList<ChildSummary> children, IReadOnlyList<RefusedInput> refused, PoolOptions options)
    {
        var (groups, ages, stability) = (ChildGroups.ByStudyGroup(children), ChildGroups.ByAgeBand(children), ChildGroups.ByStability(children));
        var tooFew = children.Count > 0 && children.Count < options.SmallestGroup;
        // The parts know nothing of each other and are worked out side by side, a third of a pool's time; what each keeps back is listed in their order.
        var feed = Apart(kept => GapPooling.Of("Feed gap", children, c => c.FeedGap, [groups, ages], options, kept));
        var inhaler = Apart(kept => GapPooling.Of("Inhaler gap", children, c => c.InhalerGap, [groups, ages], options, kept));
        var recovery = Apart(kept => Recovery(children, groups, ages, stability, options, kept));
        var setbacks = Apart(kept => SetbackPooling.Of(children, options, kept));
        var tests = Task.Run<IReadOnlyList<GroupTest>>(() =>
        [
            .. new[] { groups, ages }.SelectMany(g => GroupTests.OfGap("feed gap", g, c => c.FeedGap, feed.Result.Part.TwoStep.Tau2, options)),
            .. new[] { groups, ages }.SelectMany(g => GroupTests.OfGap("inhaler gap", g, c => c.InhalerGap, inhaler.Result.Part.TwoStep.Tau2, options)),
            .. new[] { groups, ages, stability }.SelectMany(g => GroupTests.OfRecovery(g, options)),
        ]);
        return new()
        {
            Children = tooFew ? null : children.Count,
            FeedGap = feed.Result.Part,
            InhalerGap = inhaler.Result.Part,
            Recovery = recovery.Result.Part,
            Setbacks = setbacks.Result.Part,
            GroupTests = tests.Result,
            Completeness = CompletenessPooling.Of(children, options),
            Disclosure = new(options.SmallestGroup,
            [
                .. tooFew ? [new SuppressedCell("All tables", "all children", Suppression.TooFew(options.SmallestGroup))] : Array.Empty<SuppressedCell>(),
                .. feed.Result.KeptBack, .. inhaler.Result.KeptBack, .. recovery.Result.KeptBack, .. setbacks.Result.KeptBack,
            ]),
            Refused = refused,
            Notes = [.. Notes(children)],
            Options = options,
        };
    }

    // A part of the findings, and the cells that it keeps back.
    private static Task<(T Part, List<SuppressedCell> KeptBack)> Apart<T>(Func<List<SuppressedCell>, T> part) => Task.Run(() =>
    {
        var keptBack = new List<SuppressedCell>();
        return (part(keptBack), keptBack);
    });

    private static PooledRecovery Recovery(
        IReadOnlyList<ChildSummary> children, ChildGroups groups, ChildGroups ages, ChildGroups stability, PoolOptions options, List<SuppressedCell> suppressed)
    {
        var withEpisodes = children.Count(c => c.Recoveries.Count > 0);
        var why = withEpisodes > 0 && withEpisodes < options.SmallestGroup ? Suppression.TooFew(options.SmallestGroup) : null;
        if (why is not null) suppressed.Add(new("Recovery", "all children", why));
        return new()
        {
            All = RecoveryPooling.Of("all children", children, why, options),
            ByStudyGroup = Curves(groups, options, suppressed),
            ByAgeBand = Curves(ages, options, suppressed),
            ByStability = Curves(stability, options, suppressed),
        };
    }

    private static List<RecoveryCurve> Curves(ChildGroups grouping, PoolOptions options, List<SuppressedCell> suppressed)
    {
        if (!grouping.IsGiven) return [];
        var keptBack = Suppression.Of([.. grouping.Groups.Select(g => g.Children.Count(c => c.Recoveries.Count > 0))], options.SmallestGroup);
        var curves = new List<RecoveryCurve>();
        foreach (var ((label, children), why) in grouping.Groups.Zip(keptBack))
        {
            if (why is not null) suppressed.Add(new($"Recovery by {grouping.Name}", label, why));
            curves.Add(RecoveryPooling.Of(label, children, why, options));
        }

        // The count over all children is shown: one group's hidden count could be taken from it and the others'.
        return curves.Exists(c => c.Censored is null) ? curves.ConvertAll(c => c with { Censored = null }) : curves;
    }

    private static IEnumerable<string> Notes(IReadOnlyList<ChildSummary> children)
    {
        if (children.Count == 0) yield return "There is no child to pool.";
        var versions = children.Select(c => c.Definitions).Distinct().Order().ToList();
        if (versions.Count > 1) yield return $"The children's figures follow different versions of the definitions: {string.Join(", ", versions.Select(v => v.ToString(2)))}.";
        if (children.Any(c => c.DaysWithRecords == 1)) yield return "Some children have records of one day only; they count where their sessions could be judged.";
        yield return "The child is the unit: intervals and tests treat sessions, episodes and steps of one child as belonging together.";
        yield return "Families chose to take part and to write; the figures describe these children and nobody else.";
    }
}
