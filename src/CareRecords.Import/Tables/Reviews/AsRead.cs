namespace CareRecords.Import.Tables.Reviews;

/// <summary>The very hidden sheet of a review workbook: each cell of its tables as the review wrote it.</summary>
internal sealed class AsRead
{
    /// <summary>The sheet's name.</summary>
    public const string SheetName = "As read";

    private readonly Dictionary<(string Row, string Column), string> _values = [];
    private readonly HashSet<string> _rows = [];
    private readonly HashSet<(char Table, string Column)> _columns = [];

    /// <summary>Reads the sheet's rows; null when they are not the sheet of a review.</summary>
    public static AsRead? Read(IEnumerable<GridRow> rows)
    {
        AsRead? read = null;
        foreach (var row in rows)
        {
            if (read is null)
            {
                if (row[0].Words != "row id" || row[1].Words != "column" || row[2].Words != "value") return null;
                read = new AsRead();
            }
            else if (row[0].Words is { } id && row[1].Words is { } column)
            {
                read._values[(id, column)] = row[2].Text;
                read._rows.Add(id);
                read._columns.Add((id[0], column));
            }
        }

        return read;
    }

    /// <summary>Whether the review wrote this row.</summary>
    public bool Wrote(string rowId) => _rows.Contains(rowId);

    /// <summary>The value as the review wrote it; null when the cell was empty.</summary>
    public string? Value(string rowId, string column) => _values.GetValueOrDefault((rowId, column));

    /// <summary>Whether the column of a table is one that a person may mend (a column that is empty in every row is not known to be).</summary>
    public bool IsEditable(string rowId, string column) => _columns.Contains((rowId[0], column));
}
