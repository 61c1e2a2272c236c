namespace CareRecords.Import.Tables;

/// <summary>One row as read, before anything is made of it.</summary>
/// <param name="Line">One-based: the first physical line of a text, or the row of a sheet.</param>
/// <param name="LineCount">How many physical lines it spans (more than one for a quoted cell with line breaks); 1 for a sheet.</param>
/// <param name="Cells">Its cells, first column first.</param>
/// <param name="Text">The whole as written; for a sheet its cells joined by " | ".</param>
internal sealed record GridRow(int Line, int LineCount, Cell[] Cells, string Text)
{
    /// <summary>The whole row as written, where this is only a part of it; null for a whole row.</summary>
    public string? Written { get; init; }

    /// <summary>Comments on its cells; empty for a text.</summary>
    public IReadOnlyList<CellComment> Comments { get; init; } = [];

    /// <summary>Its cells that are merged with those to their right, with the last column of each; empty for a text.</summary>
    public IReadOnlyList<(int From, int To)> Spans { get; init; } = [];

    /// <summary>True when every cell is empty.</summary>
    public bool IsBlank
    {
        get
        {
            foreach (var cell in Cells)
                if (!cell.IsEmpty)
                    return false;
            return true;
        }
    }

    /// <summary>The cell of a zero-based column; empty beyond the row's end or for −1.</summary>
    public Cell this[int column] => column >= 0 && column < Cells.Length ? Cells[column] : Cell.Empty;
}
