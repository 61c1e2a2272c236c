using CareRecords.Records;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;
using Heading = CareRecords.Workbooks.WorkbookLayout.Heading;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Feeds as read, one row each.</summary>
internal static class FeedsSheet
{
    public const string Table = "Feeds";

    public static IReadOnlyList<Column<Numbered<Feed>>> Columns(ReviewRows rows) =>
    [
        TraceColumns.RowId<Feed>(),
        DataCells.Time<Feed>("started", f => f.Start?.Stated),
        DataCells.Time<Feed>("ended", f => f.End?.Stated),
        DataCells.Number<Feed>("ml", 8, f => f.Millilitres, 0, 2000, "ml"),
        DataCells.Number<Feed>("ml per hour", 9, f => f.MillilitresPerHour, 0, 500, "ml an hour"),
        DataCells.Choice<Feed>("route", 10, f => RouteWord(f.Route), "oral", "tube", "pump", "bolus"),
        DataCells.Words<Feed>(Heading.By, 10, f => f.By),
        DataCells.Words<Feed>("note", 18, f => f.Note),
        .. TraceColumns.Reading<Feed>(rows),
        .. IntervalColumns.StartAndEnd<Feed>(rows, Table, "started", "ended"),
        .. FeedOnOff.Columns(rows),
    ];

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Feeds);
        var columns = Columns(rows);
        TableSheet.Dress(sheet, "Feeds", DataCells.Use("ml is the whole feed"));
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Feeds);
        PageDress.Apply(sheet, landscape: true, Green);
        return place;
    }

    private static string? RouteWord(FeedRoute route) => route switch
    {
        FeedRoute.Oral => "oral",
        FeedRoute.Tube => "tube",
        FeedRoute.PumpedTube => "pump",
        FeedRoute.BolusTube => "bolus",
        _ => null,
    };
}
