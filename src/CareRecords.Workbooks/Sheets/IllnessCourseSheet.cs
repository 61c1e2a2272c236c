using CareRecords.Findings;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>What was written around each illness, in order of time: which sign came first, what was begun, where the child was.</summary>
internal static class IllnessCourseSheet
{
    public const string Table = "IllnessCourse";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.IllnessCourse);
        IReadOnlyList<Column<CourseEvent>> columns =
        [
            new("episode", 9, e => CellContent.Of(e.Episode)),
            new("when", 34, e => CellContent.Of(TimeWords.Moment(e))),
            new("kind", 15, e => CellContent.Of(FindingWords.Course(e.Kind))),
            new("what was written", 40, e => CellContent.Of(e.What)) { Wrap = true },
            new("care day", 16.5, e => CellContent.Of(e.Day)) { Format = Look.Format.Day },
            .. TraceColumns.Sources<CourseEvent>(rows, e => e.Sources),
        ];
        TableSheet.Dress(
            sheet, "What was written around each illness",
            "From three days before to the recovery, in order of time. Dates are the calendar's; a line without a clock holds for its day. The order does not say what led to what.");
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Findings.Illness.Course);
        PageDress.Apply(sheet, landscape: true, Look.Blue);
        return place;
    }
}
