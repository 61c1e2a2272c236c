using CareRecords.Findings;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>What was written that a person should look at: a sentence, a time and its source; never advice.</summary>
internal static class LinesToLookAtSheet
{
    public const string Table = "LinesToLookAt";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.LinesToLookAt);
        IReadOnlyList<Column<Flag>> columns =
        [
            new("when", 17, f => CellContent.Of(f.When)) { Format = Look.Format.Time },
            new("what was written", 46, f => CellContent.Of(f.What)) { Wrap = true },
            new("why it is listed", 46, f => CellContent.Of(f.Why)) { Wrap = true },
            .. TraceColumns.Sources<Flag>(rows, f => f.Sources),
        ];
        TableSheet.Dress(sheet, "Lines to look at", "Written things that a person may want to look at, in order of time. A list, not a judgement and not advice.");
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Findings.Flags);
        PageDress.Apply(sheet, landscape: true, Look.Blue);
        return place;
    }
}
