namespace CareRecords.Pooling;

/// <summary>One of the shared tables: its columns, and its rows for a child. One definition serves shared workbooks, CSV, Parquet and the data package.</summary>
public abstract class SharedTable
{
    private protected SharedTable(string name, string meaning, IReadOnlyList<TableColumn> columns) =>
        (Name, Meaning, Columns) = (name, meaning, columns);

    /// <summary>The table's name.</summary>
    public string Name { get; }

    /// <summary>What one row is.</summary>
    public string Meaning { get; }

    /// <summary>Its columns in order.</summary>
    public IReadOnlyList<TableColumn> Columns { get; }

    /// <summary>Its rows for a child; a cell is a <see cref="long"/>, <see cref="double"/>, <see cref="bool"/> or <see cref="string"/> as its column says, or null.</summary>
    public abstract IEnumerable<object?[]> Rows(SharedFindings findings);
}

/// <summary>A shared table of one kind of row.</summary>
internal sealed class SharedTable<T> : SharedTable
{
    private readonly Func<SharedFindings, IEnumerable<T>> _rows;
    private readonly IReadOnlyList<Func<T, object?>> _cells;
    private readonly Func<CellReader, T> _read;

    public SharedTable(string name, string meaning, Func<SharedFindings, IEnumerable<T>> rows, ColumnList<T> columns, Func<CellReader, T> read)
        : base(name, meaning, columns.Columns) => (_rows, _cells, _read) = (rows, columns.Cells, read);

    public override IEnumerable<object?[]> Rows(SharedFindings findings) => _rows(findings).Select(CellsOf);

    /// <summary>Reads the rows of one child.</summary>
    /// <exception cref="InvalidDataException">A cell is not what its column says.</exception>
    public IReadOnlyList<T> Read(IEnumerable<object?[]> rows)
    {
        var cells = new CellReader(this);
        return [.. rows.Select(row => _read(cells.On(row)))];
    }

    private object?[] CellsOf(T row)
    {
        var cells = new object?[_cells.Count];
        for (var i = 0; i < cells.Length; i++) cells[i] = _cells[i](row);
        return cells;
    }
}
