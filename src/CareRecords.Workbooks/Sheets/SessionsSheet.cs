using CareRecords.Records;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Formula;
using static CareRecords.Workbooks.Building.Look;
using Heading = CareRecords.Workbooks.WorkbookLayout.Heading;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The sessions as read, one row each.</summary>
internal static class SessionsSheet
{
    public const string Table = "Sessions";

    /// <summary>Hidden working column: minutes as written, else the sum of the areas.</summary>
    public const string MinutesInAll = "minutes in all";

    /// <summary>The six area columns.</summary>
    public const string Areas = "Sessions[[left lower]:[right vibration]]";

    private static string ThisAreas { get; } = "Sessions[[#This Row],[left lower]:[right vibration]]";

    private static string MinutesInAllFormula { get; } =
        $"IF(ISNUMBER({This(Table, "minutes")}),{This(Table, "minutes")},IF({This(Table, Heading.OtherAreas)}=\"\",IF(COUNT({ThisAreas})=0,\"\",SUM({ThisAreas})),"
        + $"IF(ISNUMBER({This(Table, "other minutes as read")}),SUM({ThisAreas})+{This(Table, "other minutes as read")},\"\")))";

    public static IReadOnlyList<Column<Numbered<Session>>> Columns(ReviewRows rows) =>
    [
        TraceColumns.RowId<Session>(),
        DataCells.Time<Session>("started", s => s.Start?.Stated),
        .. SessionCells.Usual.Select((usual, i) => DataCells.Number<Session>(usual.Heading, usual.Technique == Technique.Vibration ? 10 : 7.5, s => SessionCells.Minutes(s, i), 0, 120, "minutes")),
        DataCells.Number<Session>("minutes", 9, s => s.MinutesWritten, 0, 600, "minutes in all") with { Remark = "Total minutes, where the areas were not written apart." },
        DataCells.Words<Session>(Heading.OtherAreas, 36, SessionCells.Others) with { Remark = "Areas written without saying percussion or vibration, or that have no column of their own." },
        DataCells.Words<Session>("stopped early", 12, s => s.StoppedEarly),
        DataCells.Choice<Session>("vomited", 9, s => s.Vomited switch { true => "yes", false => "no", null => null }, "yes", "no"),
        DataCells.Words<Session>("note", 18, s => s.Note),
        .. TraceColumns.Sources<Numbered<Session>>(rows, r => r.Item.Sources),
        DataCells.Time<Session>("ended", s => s.End?.Stated),
        DataCells.Words<Session>("techniques", 18, s => s.Techniques),
        DataCells.Words<Session>(Heading.By, 10, s => s.By),
        DataCells.Words<Session>("cough", 10, s => s.Cough),
        DataCells.Words<Session>("secretions", 14, s => s.Secretions),
        DataCells.Words<Session>("colour", 10, s => s.Colour),
        .. TraceColumns.HowRead<Session>(),
        .. IntervalColumns.StartAndEnd<Session>(rows, Table, "started", "ended"),
        new("other minutes as read", 9, r => CellContent.Of(SessionCells.OtherMinutes(r.Item))) { Role = ColumnRole.Working },
        new(MinutesInAll, 9, r => CellContent.Of(r.Item.TotalMinutes).By(MinutesInAllFormula)) { Role = ColumnRole.Working },
    ];

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Sessions);
        var columns = Columns(rows);
        TableSheet.Dress(sheet, "Sessions", DataCells.Use("minutes for each area; lower and upper are percussion. Areas written without saying which technique stand in 'other areas'"));
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Sessions);
        PageDress.Apply(sheet, landscape: true, Green);
        return place;
    }
}
