using CareRecords.Records;

namespace CareRecords.Import.Tables;

/// <summary>A delimited text or one sheet of a workbook.</summary>
/// <param name="File">The input's name as it stands in sources.</param>
/// <param name="Sheet">The sheet; null for a text.</param>
internal sealed record Place(string File, string? Sheet)
{
    /// <summary>The sheet's column that is the first of these rows: more than 0 for a table that stands to the right of another.</summary>
    public int FirstColumn { get; init; }

    /// <summary>The source of a whole row.</summary>
    public SourceLine Of(GridRow row) =>
        Sheet is null ? SourceLine.InText(File, row.Line, row.Written ?? row.Text)
        : SourceLine.InSheet(File, Sheet, FormattableString.Invariant($"R{row.Line}"), row.Written ?? row.Text);

    /// <summary>The source of one cell: the cell of a sheet, the line of a text.</summary>
    public SourceLine Of(GridRow row, int column) =>
        Sheet is null || column < 0 ? Of(row) : SourceLine.InSheet(File, Sheet, CellName(FirstColumn + column, row.Line), row[column].Text);

    /// <summary>"C7" for zero-based column 2 and row 7.</summary>
    public static string CellName(int column, int row)
    {
        Span<char> letters = stackalloc char[8];
        var at = letters.Length;
        for (var rest = column + 1; rest > 0; rest = (rest - 1) / 26)
            letters[--at] = (char)('A' + (rest - 1) % 26);
        return string.Concat(letters[at..], row.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }
}
