using CareRecords.Records;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;
using Heading = CareRecords.Workbooks.WorkbookLayout.Heading;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Checks as read, one row each.</summary>
internal static class ChecksSheet
{
    public const string Table = "Checks";

    /// <summary>Hidden working column: the reading, or the middle of a range.</summary>
    public const string Middle = "spo2 middle";

    private static string MiddleFormula { get; } =
        $"IF(ISNUMBER({Formula.This(Table, "spo2")}),IF(ISNUMBER({Formula.This(Table, "spo2 high")}),({Formula.This(Table, "spo2")}+{Formula.This(Table, "spo2 high")})/2,{Formula.This(Table, "spo2")}),\"\")";

    public static IReadOnlyList<Column<Numbered<Check>>> Columns(ReviewRows rows) =>
    [
        TraceColumns.RowId<Check>(),
        DataCells.Time<Check>("checked", c => c.Start?.Stated),
        DataCells.Number<Check>("spo2", 8, c => c.SpO2, 40, 100, "%") with { Remark = "Saturation, %. The lower end where a range was written." },
        DataCells.Number<Check>("spo2 high", 8, c => c.SpO2High, 40, 100, "%") with { Remark = "The upper end, where a range was written, %." },
        DataCells.Number<Check>("pulse", 8, c => c.Pulse, 20, 300, "beats a minute"),
        DataCells.Number<Check>("oxygen", 8, c => c.OxygenLitresPerMinute, 0, 15, "L/min") with { Remark = "L/min; 0 is air; empty: not written." },
        DataCells.Choice<Check>("phase", 9, c => c.Phase == CheckPhase.None ? null : c.Phase.ToString().ToLowerInvariant(), "before", "during", "after"),
        DataCells.Words<Check>(Heading.By, 10, c => c.By),
        DataCells.Words<Check>("note", 18, c => c.Note),
        .. TraceColumns.Reading<Check>(rows),
        .. IntervalColumns.Start<Check>(rows, Table, "checked"),
        new(Middle, 9, r => CellContent.Of((r.Item.SpO2 + (r.Item.SpO2High ?? r.Item.SpO2)) / 2)
            .By(MiddleFormula)) { Role = ColumnRole.Working },
    ];

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Checks);
        var columns = Columns(rows);
        TableSheet.Dress(sheet, "Checks", DataCells.Use("saturation in %, pulse in beats a minute, oxygen in L/min (0 is air)"));
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Checks);
        PageDress.Apply(sheet, landscape: true, Green);
        return place;
    }
}
