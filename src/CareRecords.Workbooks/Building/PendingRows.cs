namespace CareRecords.Workbooks.Building;

/// <summary>
/// Rows that do not go through the workbook library: its cells cost some hundred times their text in memory, and most of a workbook is rows. The
/// library is given the first row, blank, for the looks; the package pass writes all of them in its place, one at a time.
/// </summary>
internal abstract class PendingRows(string sheet, string? table, int firstRow, int columns)
{
    public string Sheet => sheet;

    /// <summary>The table that grows with the rows; null for bare rows.</summary>
    public string? Table => table;

    /// <summary>One-based row of the first of them, which the library holds as the pattern.</summary>
    public int FirstRow => firstRow;

    public int Columns => columns;

    /// <summary>The number of rows; null when only writing them tells.</summary>
    public abstract int? Count { get; }

    /// <summary>The rows from the first on. The same array may be handed out again for the next row.</summary>
    public abstract IEnumerable<(double? Height, CellContent[] Cells)> Write();
}

/// <summary>The rows of a table whose cells columns tell.</summary>
internal sealed class TableRows<T>(string sheet, string table, int firstRow, IReadOnlyList<Column<T>> columns, IReadOnlyList<T> rows)
    : PendingRows(sheet, table, firstRow, columns.Count), ICellSource
{
    /// <summary>Lines of text that a row may grow to; longer words show when the cell is selected.</summary>
    private const int MostLines = 6;

    /// <summary>One row at least, blank when there is none: a table cannot be without.</summary>
    public override int? Count => Math.Max(rows.Count, 1);

    public int Rows => rows.Count;

    public CellContent At(int row, int column) => columns[column].Content(rows[row]);

    public override IEnumerable<(double? Height, CellContent[] Cells)> Write()
    {
        var cells = new CellContent[columns.Count];
        if (rows.Count == 0) yield return (null, cells);
        foreach (var row in rows)
        {
            var lines = 1;
            for (var c = 0; c < cells.Length; c++)
            {
                cells[c] = columns[c].Content(row);
                if (columns[c].Wrap && cells[c].Value is string words) lines = Math.Max(lines, TableSheet.LinesOf(words, columns[c].Width - 1));
            }

            yield return (1.5 + (13 * Math.Min(lines, MostLines)), cells);
        }
    }
}

/// <summary>A table's cells by place, for what is worked out from them.</summary>
internal interface ICellSource
{
    int Rows { get; }

    /// <summary>The cell by row and column, both from 0.</summary>
    CellContent At(int row, int column);
}

/// <summary>Rows of words alone, without a table.</summary>
internal sealed class WordRows(string sheet, int firstRow, int columns, IEnumerable<IReadOnlyList<string>> rows) : PendingRows(sheet, null, firstRow, columns)
{
    public override int? Count => null;

    public override IEnumerable<(double? Height, CellContent[] Cells)> Write()
    {
        var cells = new CellContent[Columns];
        foreach (var row in rows)
        {
            for (var c = 0; c < cells.Length; c++) cells[c] = CellContent.Of(row[c]);
            yield return (null, cells);
        }
    }
}
