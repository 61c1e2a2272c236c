namespace CareRecords.Pooling;

/// <summary>A shared table as it stands in a tidy folder: the child's code comes first in every table, and the table of children carries the seal.</summary>
internal sealed class TidyTable
{
    public const string ChildColumn = "child";
    public const string SealColumn = "seal";

    private readonly bool _isChildren;

    private TidyTable(SharedTable table)
    {
        Table = table;
        _isChildren = ReferenceEquals(table, SharedTables.All[0]);
        Columns = _isChildren
            ? [.. table.Columns, Code(SealColumn, "SHA-256 over the child's rows of all tables; pooling refuses a child whose rows do not fit it")]
            : [Code(ChildColumn, "The child's code"), .. table.Columns];
    }

    public static IReadOnlyList<TidyTable> All { get; } = [.. SharedTables.All.Select(t => new TidyTable(t))];

    public SharedTable Table { get; }

    public IReadOnlyList<TableColumn> Columns { get; }

    public bool IsChildren => _isChildren;

    /// <summary>The place of the child's code in a row.</summary>
    public int ChildPlace => _isChildren ? Columns.ToList().FindIndex(c => c.Name == ChildColumn) : 0;

    public IEnumerable<object?[]> Rows(SharedFindings findings, string seal) =>
        Table.Rows(findings).Select(row => _isChildren ? (object?[])[.. row, seal] : [findings.Child.Code.Text, .. row]);

    /// <summary>A row without what the tidy folder adds.</summary>
    public object?[] Shared(object?[] row) => _isChildren ? row[..^1] : row[1..];

    private static TableColumn Code(string name, string meaning) => new(name, ColumnType.Code, "", meaning, null, [], []);
}
