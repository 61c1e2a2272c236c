namespace CareRecords.Pooling;

/// <summary>The tests between groups; groups that are kept back, and children whose group is not known, take no part.</summary>
internal static class GroupTests
{
    /// <summary>
    /// Without a variance between children nothing differs (every gap kept, or none): half counts added would then let longer records look like a difference,
    /// so no test is done.
    /// </summary>
    public static IEnumerable<GroupTest> OfGap(string name, ChildGroups grouping, Func<ChildSummary, GapTally> tally, double? tau2, PoolOptions options) =>
        tau2 is { } between
            ? Of(name + " kept", grouping, c => tally(c).Judged > 0, GapTest.Method, options, (children, groups) => GapTest.PValue([.. children.Select(tally)], groups, between, options))
            : grouping.IsGiven ? [new(Title(name + " kept", grouping), [], null, "not done: children do not differ, or are too few")] : [];

    public static IEnumerable<GroupTest> OfRecovery(ChildGroups grouping, PoolOptions options) =>
        Of("recovery", grouping, c => c.Recoveries.Count > 0, RecoveryTest.Method, options, (children, groups) => RecoveryTest.PValue(children, groups, options));

    private static IEnumerable<GroupTest> Of(
        string what, ChildGroups grouping, Func<ChildSummary, bool> counts, string method, PoolOptions options, Func<IReadOnlyList<ChildSummary>, int[], double> pValue)
    {
        if (!grouping.IsGiven) yield break;
        var least = Math.Max(2, options.SmallestGroup);
        var groups = grouping.Groups.Where(g => g.Label is not (ChildGroups.NotGiven or ChildGroups.CannotBeTold))
            .Select(g => (g.Label, Children: g.Children.Where(counts).ToList())).Where(g => g.Children.Count >= least).ToList();
        var title = Title(what, grouping);
        if (groups.Count < 2)
        {
            yield return new(title, [], null, FormattableString.Invariant($"not done: fewer than two groups of at least {least} children"));
            yield break;
        }

        var children = groups.SelectMany(g => g.Children).ToList();
        var labels = groups.SelectMany((g, i) => Enumerable.Repeat(i, g.Children.Count)).ToArray();
        yield return new(title, [.. groups.Select(g => g.Label)], pValue(children, labels), method);
    }

    private static string Title(string what, ChildGroups grouping) => $"{what} by {grouping.Name}";
}
