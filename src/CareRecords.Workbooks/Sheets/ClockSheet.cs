using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The zone's offsets over the records, which the gap formulas use.</summary>
internal static class ClockSheet
{
    public const string Table = "Clock";

    /// <summary>The name of the cell with the local time that elapsed minutes are counted from.</summary>
    public const string Start = "Clock_start";

    /// <summary>The name of the cell with the clock time at which a care day starts, as a part of a day.</summary>
    public const string DayStarts = "Day_starts";

    /// <summary>The names of the cells with the first and the last care day of the review.</summary>
    public const string SpanFrom = "Review_from";
    public const string SpanTo = "Review_to";

    /// <summary>The name of the cell with the normal quantile of the 95 % limits.</summary>
    public const string Quantile = "Normal_quantile_95";

    public static void Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Clock);
        var stretches = rows.TimeLine.Stretches;
        IReadOnlyList<Column<ClockStretch>> columns =
        [
            new("earliest from", 20, s => CellContent.Of(s.EarliestFrom)) { Format = Look.Format.Time },
            new("latest from", 20, s => CellContent.Of(s.LatestFrom)) { Format = Look.Format.Time },
            new("offset", 12, s => CellContent.Of(s.OffsetMinutes)) { Format = Look.Format.Whole },
            new("until", 20, s => CellContent.Of(s.Until)) { Format = Look.Format.Time },
        ];
        TableSheet.Dress(sheet, $"Clock of {rows.Log.Zone}", "Minutes ahead of universal time, from which local time on. The gap formulas use it, so that a clock change makes no gap longer or shorter.", 0);
        TableSheet.Write(book, sheet, Table, columns, stretches);
        book.Put(sheet.Cell(4, 6), "minutes are counted from");
        book.Put(sheet.Cell(4, 7), CellContent.Of(stretches[0].EarliestFrom));
        sheet.Cell(4, 7).Style.NumberFormat.Format = Look.Format.Time;
        sheet.Column(6).Width = 30;
        sheet.Column(7).Width = 18;
        sheet.Cell(4, 7).AddToNamed(Start, ClosedXML.Excel.XLScope.Workbook);
        book.Put(sheet.Cell(5, 6), "a care day starts at");
        book.Put(sheet.Cell(5, 7), CellContent.Of(rows.Findings.Span.DayStarts.TickOfDay / (double)NodaTime.NodaConstants.TicksPerDay));
        sheet.Cell(5, 7).Style.NumberFormat.Format = "hh:mm";
        sheet.Cell(5, 7).AddToNamed(DayStarts, ClosedXML.Excel.XLScope.Workbook);
        book.Put(sheet.Cell(6, 6), "normal quantile of 95 % limits");
        book.Put(sheet.Cell(6, 7), CellContent.Of(1.9599639845400545).By("_xlfn.NORM.S.INV(0.975)"));
        sheet.Cell(6, 7).Style.NumberFormat.Format = "0.0000";
        sheet.Cell(6, 7).AddToNamed(Quantile, ClosedXML.Excel.XLScope.Workbook);
        Named(7, "first care day of the review", SpanFrom, rows.Findings.Span.From);
        Named(8, "last care day of the review", SpanTo, rows.Findings.Span.To);
        PageDress.Apply(sheet, landscape: false, Look.Grey);

        void Named(int row, string words, string name, NodaTime.LocalDate day)
        {
            book.Put(sheet.Cell(row, 6), words);
            book.Put(sheet.Cell(row, 7), CellContent.Of(day));
            sheet.Cell(row, 7).Style.NumberFormat.Format = Look.Format.ShortDay;
            sheet.Cell(row, 7).AddToNamed(name, ClosedXML.Excel.XLScope.Workbook);
        }
    }
}
