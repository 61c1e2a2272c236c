namespace CareRecords.Pooling;

/// <summary>A way to put children into groups; every child is in exactly one, so that a table of the groups adds up.</summary>
/// <param name="Name">The grouping in words ("study group").</param>
/// <param name="Groups">The groups in order, each with its children.</param>
internal sealed record ChildGroups(string Name, IReadOnlyList<(string Label, IReadOnlyList<ChildSummary> Children)> Groups)
{
    public const string NotGiven = "not given";
    public const string CannotBeTold = "cannot be told";

    private static readonly string[] AgeLabels = [NotGiven, "under 1 year", "1 to 4 years", "5 to 9 years", "10 to 14 years", "15 to 17 years"];

    public static ChildGroups ByStudyGroup(IReadOnlyList<ChildSummary> children) =>
        new("study group", Grouped(children, c => c.StudyGroup is { } group ? $"group {group}" : NotGiven, label => label == NotGiven ? "~" : label));

    public static ChildGroups ByAgeBand(IReadOnlyList<ChildSummary> children) =>
        new("age band", Grouped(children, c => AgeLabels[(int)c.AgeBand], label => label == NotGiven ? "~" : Array.IndexOf(AgeLabels, label).ToString("00", System.Globalization.CultureInfo.InvariantCulture)));

    public static ChildGroups ByStability(IReadOnlyList<ChildSummary> children) =>
        new("stable hours before steps down", Grouped(children, c => StableBand.LabelOf(c.UsualStableHours), StableBand.OrderOf));

    /// <summary>Whether the grouping says anything: two groups at least, those not given or not told aside.</summary>
    public bool IsGiven => Groups.Any(g => g.Label is not (NotGiven or CannotBeTold));

    private static List<(string, IReadOnlyList<ChildSummary>)> Grouped(
        IReadOnlyList<ChildSummary> children, Func<ChildSummary, string> label, Func<string, string> order) =>
        [.. children.GroupBy(label).OrderBy(g => order(g.Key), StringComparer.Ordinal).Select(g => (g.Key, (IReadOnlyList<ChildSummary>)[.. g]))];
}

/// <summary>Bands of stable hours.</summary>
internal static class StableBand
{
    public static IReadOnlyList<string> Labels { get; } = ["under 24 h", "24 to under 48 h", "48 to under 96 h", "96 h and more", ChildGroups.CannotBeTold];

    public static string LabelOf(double? hours) => hours switch
    {
        null => Labels[4],
        < 24 => Labels[0],
        < 48 => Labels[1],
        < 96 => Labels[2],
        _ => Labels[3],
    };

    public static string OrderOf(string label) => Labels.ToList().IndexOf(label).ToString(System.Globalization.CultureInfo.InvariantCulture);
}
