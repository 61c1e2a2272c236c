using CareRecords.Records;

namespace CareRecords.Import.Tables;

/// <summary>A row seen through its table's columns.</summary>
/// <param name="Place">The text or sheet.</param>
/// <param name="Row">The row.</param>
/// <param name="ColumnOf">The zero-based column of each <see cref="Field"/>; −1 where there is none.</param>
internal readonly record struct RowCells(Place Place, GridRow Row, int[] ColumnOf)
{
    /// <summary>The cell of a field; empty when the table has no such column.</summary>
    public Cell this[Field field] => Row[ColumnOf[(int)field]];

    /// <summary>The words of a field without spaces around them; null when empty.</summary>
    public string? Words(Field field) => this[field].Words;

    /// <summary>A field's cell with its place.</summary>
    public CellAt At(Field field) => new(Place, Row, ColumnOf[(int)field]);

    /// <summary>The source of the row.</summary>
    public SourceLine Source => Place.Of(Row);
}

/// <summary>A cell in its row.</summary>
/// <param name="Place">The text or sheet.</param>
/// <param name="Row">The row.</param>
/// <param name="Column">The zero-based column; −1 for none.</param>
internal readonly record struct CellAt(Place Place, GridRow Row, int Column)
{
    /// <summary>True for no cell at all (the type's default).</summary>
    public bool IsNone => Row is null;

    /// <summary>The cell; empty when there is none.</summary>
    public Cell Cell => IsNone ? Cell.Empty : Row[Column];

    /// <summary>Its source, made only when it is asked for: most cells have no problem.</summary>
    public SourceLine Source => Place.Of(Row, Column);
}
