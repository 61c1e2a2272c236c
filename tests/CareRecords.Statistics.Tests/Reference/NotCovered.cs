namespace CareRecords.Statistics.Tests.Reference;

/// <summary>Figures of results.csv that this library does not reproduce, each with the reason.</summary>
internal static class NotCovered
{
    public static IReadOnlyList<Exclusion> Rules { get; } =
    [
        new("10.1", "", "Time zones are no statistics; the tests of the import compare them with NodaTime."),
        new("13.1", "", "A comparison of two other programs with each other."),
        new("6.1", "", "Not written yet."),
        new("6.2", "", "Not written yet."),
        new("6.6", "", "Not written yet."),
        new("6.7", "", "Not written yet."),
        new("2.1", "", "Not written yet."),
        new("2.2", "", "Not written yet."),
        new("3.1", "", "Not written yet."),
        new("3.2", "", "Not written yet."),
        new("3.3", "", "Not written yet."),
        new("3.4", "", "Not written yet."),
        new("4.", "", "Not written yet."),
        new("5.", "", "Not written yet."),
        new("8.", "", "Not written yet."),
        new("9.", "", "Not written yet."),
        new("11.", "", "Not written yet."),
    ];

    public static string? Reason(ReferenceFigure figure) => Rules.FirstOrDefault(r => r.Matches(figure))?.Reason;
}

/// <summary>Data sets and quantities whose names begin so.</summary>
internal sealed record Exclusion(string Dataset, string Quantity, string Reason)
{
    public bool Matches(ReferenceFigure f) =>
        f.Dataset.StartsWith(Dataset, StringComparison.Ordinal) && f.Quantity.StartsWith(Quantity, StringComparison.Ordinal);
}
