using CareRecords.Workbooks.Building;
using NodaTime;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The zone's offsets over the records, which the gap formulas use.</summary>
internal static class ClockSheet
{
    public const string Table = "Clock";

    /// <summary>The name of the cell with the local time that elapsed minutes are counted from.</summary>
    public const string Start = "Clock_start";

    public static void Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Clock);
        var (from, to) = ClockTable.DaysTouched(rows.Log, rows.Findings.Span.From, rows.Findings.Span.To);
        var stretches = ClockTable.For(DateTimeZoneProviders.Tzdb[rows.Log.Zone], from, to);
        IReadOnlyList<Column<ClockStretch>> columns =
        [
            new("earliest from", 20, s => CellContent.Of(s.EarliestFrom)) { Format = Look.Format.Time },
            new("latest from", 20, s => CellContent.Of(s.LatestFrom)) { Format = Look.Format.Time },
            new("offset", 12, s => CellContent.Of(s.OffsetMinutes)) { Format = Look.Format.Whole },
        ];
        TableSheet.Dress(sheet, $"Clock of {rows.Log.Zone}", "Minutes ahead of universal time, from which local time on. The gap formulas use it, so that a clock change makes no gap longer or shorter.", columns.Count, 0);
        TableSheet.Write(book, sheet, Table, columns, stretches);
        book.Put(sheet.Cell(4, 5), "minutes are counted from");
        book.Put(sheet.Cell(4, 6), CellContent.Of(stretches[0].EarliestFrom));
        sheet.Cell(4, 6).Style.NumberFormat.Format = Look.Format.Time;
        sheet.Column(5).Width = 26;
        sheet.Column(6).Width = 18;
        sheet.Cell(4, 6).AddToNamed(Start, ClosedXML.Excel.XLScope.Workbook);
        PageDress.Apply(sheet, landscape: false, Look.Grey);
    }
}
