namespace CareRecords.Workbooks.Charts;

/// <summary>The kind of a native spreadsheet chart.</summary>
public enum NativeChartKind
{
    /// <summary>Lines with markers over categories or dates.</summary>
    Line,

    /// <summary>Columns side by side.</summary>
    Column,

    /// <summary>Columns on top of one another.</summary>
    StackedColumn,

    /// <summary>Points at numbers on both axes; the line is drawn only for a series with a dash.</summary>
    Scatter,
}

/// <summary>A native spreadsheet chart: it follows its cells, and carries their present values for viewers that do not recalculate.</summary>
public sealed record NativeChart
{
    /// <summary>A stable name, unique in the sheet ("daily-sessions"): lower-case letters, digits and hyphens.</summary>
    public required string Name { get; init; }

    /// <summary>Its kind.</summary>
    public required NativeChartKind Kind { get; init; }

    /// <summary>What is seen.</summary>
    public required string Title { get; init; }

    /// <summary>What the chart tells, in a sentence or two.</summary>
    public required string AltText { get; init; }

    /// <summary>Title of the axis along the bottom, with its unit.</summary>
    public required string CategoryAxisTitle { get; init; }

    /// <summary>Title of the axis at the side, with its unit.</summary>
    public required string ValueAxisTitle { get; init; }

    /// <summary>Number format of the bottom axis ("d mmm" for dates).</summary>
    public string CategoryNumberFormat { get; init; } = "General";

    /// <summary>Number format of the side axis ("0", "0%").</summary>
    public string ValueNumberFormat { get; init; } = "General";

    /// <summary>True when the categories are dates, whole days: the bottom axis then keeps missing days as room.</summary>
    public bool CategoriesAreDates { get; init; }

    /// <summary>Lower end of the side axis; null leaves it to the program.</summary>
    public double? ValueMin { get; init; }

    /// <summary>Upper end of the side axis; null leaves it to the program.</summary>
    public double? ValueMax { get; init; }

    /// <summary>A limit drawn as a labelled dashed line; null when there is none.</summary>
    public NativeLimit? Limit { get; init; }

    /// <summary>The series, one at least; the first is drawn first.</summary>
    public required IReadOnlyList<NativeSeries> Series { get; init; }
}

/// <summary>A limit, one cell for each category: literal values would not be drawn by every spreadsheet program.</summary>
/// <param name="Label">Its label, with its unit ("limit 30 min").</param>
/// <param name="ValuesRef">The cells of the limit, absolute.</param>
/// <param name="Values">Their present values.</param>
public sealed record NativeLimit(string Label, string ValuesRef, IReadOnlyList<double?> Values);

/// <summary>Marker of a native series.</summary>
public enum NativeMarker
{
    /// <summary>No marker.</summary>
    None,

    /// <summary>Filled circle.</summary>
    Circle,

    /// <summary>Filled square.</summary>
    Square,

    /// <summary>Filled triangle.</summary>
    Triangle,

    /// <summary>Filled diamond.</summary>
    Diamond,

    /// <summary>A cross of two strokes.</summary>
    Cross,
}

/// <summary>Line of a native series.</summary>
public enum NativeDash
{
    /// <summary>No line: markers alone.</summary>
    None,

    /// <summary>Solid.</summary>
    Solid,

    /// <summary>Dashes.</summary>
    Dash,

    /// <summary>Dots.</summary>
    Dot,
}

/// <summary>One series of a native chart.</summary>
public sealed record NativeSeries
{
    /// <summary>Its name in the legend.</summary>
    public required string Name { get; init; }

    /// <summary>The cells of the categories, absolute ("'Day by day'!$A$6:$A$35").</summary>
    public required string CategoriesRef { get; init; }

    /// <summary>The cells of the values.</summary>
    public required string ValuesRef { get; init; }

    /// <summary>The categories' present numbers (dates as serial numbers); null when they are text.</summary>
    public IReadOnlyList<double?>? CategoryNumbers { get; init; }

    /// <summary>The categories' present words; null when they are numbers.</summary>
    public IReadOnlyList<string>? CategoryTexts { get; init; }

    /// <summary>The present values; null where a cell is empty, which is never drawn as zero.</summary>
    public required IReadOnlyList<double?> Values { get; init; }

    /// <summary>Marker.</summary>
    public NativeMarker Marker { get; init; } = NativeMarker.Circle;

    /// <summary>Line; for columns, a dash or dots gives a pattern instead of a full colour.</summary>
    public NativeDash Dash { get; init; } = NativeDash.Solid;

    /// <summary>Colour as six hexadecimal digits.</summary>
    public string Colour { get; init; } = "0072B2";
}
