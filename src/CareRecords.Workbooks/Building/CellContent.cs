using NodaTime;

namespace CareRecords.Workbooks.Building;

/// <summary>
/// What goes into one cell: words, a number, a local time or a day; or a formula, with the value that the findings give for it.
/// A null value is an empty cell (for a formula: one that shows nothing).
/// </summary>
internal readonly record struct CellContent(object? Value, string? Formula = null, string? Link = null, bool IsArray = false)
{
    public static CellContent Blank => default;

    public static CellContent Of(string? words) => new(string.IsNullOrEmpty(words) ? null : words);

    public static CellContent Of(double? number) => new(number);

    public static CellContent Of(int? number) => new((double?)number);

    public static CellContent Of(LocalDateTime? at) => new(at?.ToDateTimeUnspecified());

    public static CellContent Of(LocalDate? day) => new(day?.ToDateTimeUnspecified());

    /// <summary>A number for a chart: the formula gives "not available" where the other cell is empty.</summary>
    public static CellContent ForChart(double? number, string cell) => new((object?)number ?? NotAvailable.Here, $"IF(ISNUMBER({cell}),{cell},NA())");

    /// <summary>The same cell as a formula (without "="); the value stays as the stored one.</summary>
    public CellContent By(string formula) => this with { Formula = formula };

    /// <summary>The same cell as a formula worked out over whole columns at once.</summary>
    public CellContent ByArray(string formula) => this with { Formula = formula, IsArray = true };

    /// <summary>The same cell leading to another place in the workbook ("'Feeds'!A7"); null for none.</summary>
    public CellContent To(string? place) => this with { Link = place };
}
