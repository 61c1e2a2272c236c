using CareRecords.Records;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;
using Heading = CareRecords.Workbooks.WorkbookLayout.Heading;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Signs as read, one row each.</summary>
internal static class SignsSheet
{
    public const string Table = "Signs";

    public static IReadOnlyList<Column<Numbered<Sign>>> Columns(ReviewRows rows) =>
    [
        TraceColumns.RowId<Sign>(),
        DataCells.Time<Sign>("noticed", s => s.Start?.Stated),
        DataCells.Words<Sign>("sign", 16, s => s.What),
        DataCells.Words<Sign>("value", 24, s => s.Value),
        DataCells.Words<Sign>(Heading.By, 10, s => s.By),
        DataCells.Words<Sign>("note", 18, s => s.Note),
        .. TraceColumns.Reading<Sign>(rows),
        new("number", 9, r => CellContent.Of(r.Item.Number)) { Role = ColumnRole.Trace, Format = Format.OneDecimal, Remark = "Degrees Celsius for a temperature, breaths a minute for a breathing rate." },
        .. IntervalColumns.Start<Sign>(rows, Table, "noticed"),
    ];

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Signs);
        var columns = Columns(rows);
        TableSheet.Dress(sheet, "Signs", DataCells.Use("what was noticed, in the words written"));
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Signs);
        PageDress.Apply(sheet, landscape: true, Green);
        return place;
    }
}
