using CareRecords.Records;
using CareRecords.Workbooks.Building;
using Heading = CareRecords.Workbooks.WorkbookLayout.Heading;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Sessions that the notes say did not take place, with the reason where one was written.</summary>
internal static class NotDoneSheet
{
    public const string Table = "NotDone";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.NotDone);
        IReadOnlyList<Column<Numbered<OmittedSession>>> columns =
        [
            TraceColumns.RowId<OmittedSession>(),
            DataCells.Time<OmittedSession>("due", o => o.When.Stated),
            DataCells.Words<OmittedSession>("reason", 40, o => o.Reason),
            new(Heading.HowExact, 13, r => CellContent.Of(WorkbookLayout.PrecisionWords[r.Item.When.Precision])) { Role = ColumnRole.Trace },
            .. TraceColumns.Sources<Numbered<OmittedSession>>(rows, r => [r.Item.Source]),
            new(Heading.Earliest, 16.5, r => CellContent.Of(r.Item.When.Earliest)) { Format = Look.Format.Time },
            new(Heading.Latest, 16.5, r => CellContent.Of(r.Item.When.Latest)) { Format = Look.Format.Time },
            IntervalColumns.CareDayOf<Numbered<OmittedSession>>(Formula.This(Table, "due"), r => rows.TimeLine.CareDay(r.Item.When.Stated)),
        ];
        TableSheet.Dress(sheet, "Sessions written as not done", "A reason is a reason, not a mark against anyone. A session that nobody wrote down is not listed here: it is unknown.");
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Omitted);
        PageDress.Apply(sheet, landscape: true, Look.Green);
        return place;
    }
}
