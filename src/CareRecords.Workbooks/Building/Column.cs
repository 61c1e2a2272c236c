namespace CareRecords.Workbooks.Building;

/// <summary>Where a column's cells come from.</summary>
internal enum ColumnRole
{
    /// <summary>Written by the family and open to correction.</summary>
    Editable,

    /// <summary>Says where and how it was read.</summary>
    Trace,

    /// <summary>Worked out by a formula or by the findings.</summary>
    Worked,

    /// <summary>Worked out only for other formulas; grouped at the right end and folded away.</summary>
    Working,
}

/// <summary>A table's column.</summary>
/// <param name="Heading">The heading; in tables that are read back from <see cref="WorkbookLayout"/> or the canonical tables.</param>
/// <param name="Width">Width in characters.</param>
/// <param name="Content">The cell for a row.</param>
internal sealed record Column<T>(string Heading, double Width, Func<T, CellContent> Content)
{
    public ColumnRole Role { get; init; } = ColumnRole.Worked;

    public string? Format { get; init; }

    public bool Wrap { get; init; }

    public CellCheck? Check { get; init; }

    /// <summary>A remark shown when the heading is selected: units, definition.</summary>
    public string? Remark { get; init; }
}

/// <summary>What may be typed into a cell.</summary>
internal abstract record CellCheck
{
    private CellCheck() { }

    /// <summary>A number from low to high, both included.</summary>
    public sealed record Number(double Low, double High, string Unit) : CellCheck;

    /// <summary>A local date and time between two days.</summary>
    public sealed record Time : CellCheck;

    /// <summary>One of a few words; other words are allowed after a warning.</summary>
    public sealed record OneOf(IReadOnlyList<string> Words) : CellCheck;
}
