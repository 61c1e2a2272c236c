namespace CareRecords.Statistics.Tests.Reference;

/// <summary>One row of results.csv. Occurrence tells apart rows of one name within a data set, from 0.</summary>
internal sealed record ReferenceFigure(string Section, string Dataset, string Quantity, int Occurrence, double Value)
{
    public static IReadOnlyList<ReferenceFigure> All { get; } = Load();

    public (string, string, int) Key => (Dataset, Quantity, Occurrence);

    private static List<ReferenceFigure> Load()
    {
        var table = CsvTable.Read("results.csv");
        var (sections, datasets, quantities, values) = (table.Text("section"), table.Text("dataset"), table.Text("quantity"), table.Numbers("value"));
        Dictionary<(string, string), int> seen = [];
        List<ReferenceFigure> figures = [];
        for (var i = 0; i < table.Count; i++)
        {
            var occurrence = seen.GetValueOrDefault((datasets[i], quantities[i]));
            seen[(datasets[i], quantities[i])] = occurrence + 1;
            figures.Add(new(sections[i], datasets[i], quantities[i], occurrence, values[i]));
        }

        return figures;
    }
}
