using CareRecords.Pooling;

namespace CareRecords.Workbooks.Shared;

/// <summary>A sheet as plain cells: text, number or yes and no. Writer and reader both go through it, so that a changed cell shows.</summary>
/// <param name="Name">The sheet's name.</param>
/// <param name="Rows">Its rows; a cell is a <see cref="string"/>, <see cref="double"/>, <see cref="bool"/> or null.</param>
internal sealed record PlainSheet(string Name, IReadOnlyList<object?[]> Rows)
{
    /// <summary>Widths of the columns in characters; empty for the usual width.</summary>
    public IReadOnlyList<double> Widths { get; init; } = [];

    /// <summary>Whether the first row is a heading.</summary>
    public bool HasHeading { get; init; } = true;
}

/// <summary>The sheets of a shared workbook, in order.</summary>
internal static class SharedSheets
{
    /// <summary>The sheet with the seal.</summary>
    public const string Seal = "seal";

    private static readonly PlainSheet Dictionary = new("columns", [["table", "column", "type", "unit", "meaning", "an empty cell means", "codes"], .. SharedTables.All.SelectMany(ColumnsOf)])
    {
        Widths = [14, 28, 10, 8, 70, 40, 60],
    };

    /// <summary>Every sheet of a child's shared workbook.</summary>
    public static IEnumerable<PlainSheet> Of(SharedFindings findings)
    {
        yield return FirstSheet.Of(findings);
        foreach (var table in SharedTables.All) yield return new(table.Name, [HeadingOf(table), .. table.Rows(findings).Select(Plain)]);
        yield return Dictionary;
        yield return new(Seal, [["tables version", (double)SharedFindings.TablesVersion], ["seal", SharedTables.Seal(findings)]]) { HasHeading = false, Widths = [16, 70] };
    }

    /// <summary>The headings of a table's sheet.</summary>
    public static object?[] HeadingOf(SharedTable table) => [.. table.Columns.Select(c => c.Name)];

    private static object?[] Plain(object?[] row)
    {
        for (var i = 0; i < row.Length; i++)
            if (row[i] is long whole) row[i] = (double)whole;
        return row;
    }

    private static IEnumerable<object?[]> ColumnsOf(SharedTable table) => table.Columns.Select(c => new object?[]
    {
        table.Name, c.Name, c.Type.ToString().ToLowerInvariant(), c.Unit.Length == 0 ? null : c.Unit, c.Meaning, c.WhenEmpty ?? "never empty",
        c.Codes.Count == 0 ? null : string.Join(", ", c.Codes),
    });
}
