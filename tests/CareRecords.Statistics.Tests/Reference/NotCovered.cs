namespace CareRecords.Statistics.Tests.Reference;

/// <summary>Figures of results.csv that this library does not reproduce, each with the reason.</summary>
internal static class NotCovered
{
    private const string SurvfitLeftover = "A mass that survfit leaves where the maximum has none, because it stops early (see the README).";

    public static IReadOnlyList<Exclusion> Rules { get; } =
    [
        new("10.1", "", "Time zones are no statistics; the tests of the import compare them with NodaTime."),
        new("13.1", "", "A comparison of two other programs with each other."),
        new("3.3", "survfit interval2 jumps [time=17.5]", SurvfitLeftover),
        new("3.3", "survfit interval2 jumps [time=36.5]", SurvfitLeftover),
        new("3.3", "survfit interval2 jumps [time=42]", SurvfitLeftover),
        new("5.", "smallest LRE over estimates", "How near another program came to the certified values, not a figure of the data; the certified digits are tested apart."),
    ];

    public static string? Reason(ReferenceFigure figure) => Rules.FirstOrDefault(r => r.Matches(figure))?.Reason;
}

/// <summary>Data sets and quantities whose names begin so.</summary>
internal sealed record Exclusion(string Dataset, string Quantity, string Reason)
{
    public bool Matches(ReferenceFigure f) =>
        f.Dataset.StartsWith(Dataset, StringComparison.Ordinal) && f.Quantity.StartsWith(Quantity, StringComparison.Ordinal);
}
