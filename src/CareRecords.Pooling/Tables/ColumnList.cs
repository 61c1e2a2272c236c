namespace CareRecords.Pooling;

/// <summary>Builds a table's columns, each with the way to its cell.</summary>
internal sealed class ColumnList<T>
{
    private readonly List<TableColumn> _columns = [];
    private readonly List<Func<T, object?>> _cells = [];

    public IReadOnlyList<TableColumn> Columns => _columns;

    public IReadOnlyList<Func<T, object?>> Cells => _cells;

    public ColumnList<T> Integer(string name, Func<T, int?> cell, string meaning, string? whenEmpty = null, string unit = "1") =>
        Add(new(name, ColumnType.Integer, unit, meaning, whenEmpty, [], []), row => cell(row) is { } value ? (long)value : null);

    public ColumnList<T> Number(string name, Func<T, double?> cell, string unit, string meaning, string? whenEmpty = null, params IReadOnlyList<OpenCode> openCodes) =>
        Add(new(name, ColumnType.Number, unit, meaning, whenEmpty, [], openCodes), row => cell(row));

    public ColumnList<T> Boolean(string name, Func<T, bool?> cell, string meaning, string? whenEmpty = null) =>
        Add(new(name, ColumnType.Boolean, "", meaning, whenEmpty, [], []), row => cell(row));

    public ColumnList<T> Code<TCode>(string name, Func<T, TCode> cell, string meaning)
        where TCode : struct, Enum =>
        Add(new(name, ColumnType.Code, "", meaning, null, Codes<TCode>.All, []), row => Codes<TCode>.Of(cell(row)));

    public ColumnList<T> OpenCode(string name, Func<T, string?> cell, string meaning, string? whenEmpty = null) =>
        Add(new(name, ColumnType.Code, "", meaning, whenEmpty, [], []), cell);

    private ColumnList<T> Add(TableColumn column, Func<T, object?> cell)
    {
        _columns.Add(column);
        _cells.Add(cell);
        return this;
    }
}
