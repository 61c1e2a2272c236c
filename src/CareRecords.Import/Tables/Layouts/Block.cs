using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>One table within a sheet: its columns and its records, whichever way round it lies.</summary>
internal sealed record Block
{
    /// <summary>What each column states; for a table with its dates across, each line of labels.</summary>
    public required IReadOnlyList<ColumnMeaning> Columns { get; init; }

    /// <summary>Its records.</summary>
    public required IReadOnlyList<BlockRow> Rows { get; init; }

    /// <summary>What the titles above it, or the sheet's name, say that it is about; null when they do not.</summary>
    public TableKind? About { get; init; }

    /// <summary>The contract's header that its heading is; null for a table of its own layout.</summary>
    public CanonicalHeader? Contract { get; init; }

    /// <summary>The words that stand directly above it.</summary>
    public IReadOnlyList<string> Titles { get; init; } = [];

    /// <summary>True for hours by days: each record is a day, an hour and one cell.</summary>
    public bool IsGrid { get; init; }

    /// <summary>True for a tick chart: the rows are the hours of a day, and what is in a cell happened within its hour.</summary>
    public bool AreHours { get; init; }

    /// <summary>True when all of it is of the one day that stands above it.</summary>
    public bool IsOfOneDay { get; init; }

    /// <summary>Lines of hours, or columns of hours, that stand after midnight at the end of a day that began in the morning.</summary>
    public IReadOnlySet<int> AfterMidnight { get; init; } = new HashSet<int>();

    /// <summary>True for the label of an hour that is of the next day.</summary>
    public bool IsNextDay(CellAt label) => AfterMidnight.Count > 0 && AfterMidnight.Contains(HoursRunDown ? label.Row.Line : label.Column);

    /// <summary>True where the hours of a grid stand one below another.</summary>
    public bool HoursRunDown { get; init; }

    /// <summary>True where the headings of its saturations, or the words around it, say that they are in air.</summary>
    public bool InAir { get; init; }

    /// <summary>True when its dates run across.</summary>
    public bool IsAcross { get; init; }
}

/// <summary>One record of a block.</summary>
/// <param name="Cells">The cell of each column.</param>
internal sealed record BlockRow(IReadOnlyList<CellAt> Cells)
{
    /// <summary>The cell of a column; an empty one for −1.</summary>
    public CellAt this[int column] => column >= 0 && column < Cells.Count ? Cells[column] : new CellAt(Cells[0].Place, Cells[0].Row, -1);

    /// <summary>True when nothing is in it.</summary>
    public bool IsBlank => Cells.All(c => c.Cell.IsEmpty);

    /// <summary>The source of the row as a whole.</summary>
    public SourceLine Source => Cells[0].Place.Of(Cells[0].Row);
}
