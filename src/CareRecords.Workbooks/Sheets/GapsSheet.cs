using CareRecords.Findings;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;

namespace CareRecords.Workbooks.Sheets;

/// <summary>One row a session: the feed gap and the inhaler gap with what the notes allow, the verdict and why.</summary>
internal static class GapsSheet
{
    public const string Table = "Gaps";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Gaps);
        var columns = Columns(rows);
        TableSheet.Dress(
            sheet, "Feed and inhaler gaps, session by session",
            "Least and most minutes that the notes allow. 'kept' and 'short' hold however the times are read; otherwise 'cannot tell'. Exactly the limit is kept.", 2);
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Findings.Sessions);
        PageDress.Apply(sheet, landscape: true, Blue);
        return place;
    }

    private static IReadOnlyList<Column<SessionFinding>> Columns(ReviewRows rows) =>
    [
        new("session", 8, s => CellContent.Of(rows.IdOf(s.Session)).To(rows.LinkOf(s.Session))),
        new("started", 16.5, s => CellContent.Of(s.Start)) { Format = Format.Time },
        new("care day", 15.5, s => CellContent.Of(s.CareDay)) { Format = Format.Day },
        new("week from", 12, s => CellContent.Of(Weeks.MondayOf(s.CareDay))) { Format = Format.ShortDay },
        new("feed", 7, s => CellContent.Of(rows.IdOf(s.FeedGap.Feed)).To(rows.LinkOf(s.FeedGap.Feed))),
        new("feed gap least, min", 8, s => CellContent.Of(s.FeedGap.LowMinutes)) { Format = Format.Whole },
        new("feed gap most, min", 8, s => CellContent.Of(s.FeedGap.HighMinutes)) { Format = Format.Whole },
        new("feed gap limit, min", 8, s => CellContent.Of(s.FeedGap.LimitMinutes)) { Format = Format.Whole },
        new("feed gap", 11, s => CellContent.Of(FindingWords.Verdict(s.FeedGap.Verdict))),
        new("feed gap: why", 38, s => CellContent.Of(s.FeedGap.Why)) { Wrap = true },
        new("dose", 7, s => CellContent.Of(rows.IdOf(s.InhalerGap.Dose)).To(rows.LinkOf(s.InhalerGap.Dose))),
        new("inhaler gap least, min", 8, s => CellContent.Of(s.InhalerGap.LowMinutes)) { Format = Format.Whole },
        new("inhaler gap most, min", 8, s => CellContent.Of(s.InhalerGap.HighMinutes)) { Format = Format.Whole },
        new("inhaler gap limit, min", 8, s => CellContent.Of(s.InhalerGap.LimitMinutes)) { Format = Format.Whole },
        new("inhaler window, min", 8, s => CellContent.Of(s.InhalerGap.WindowMinutes)) { Format = Format.Whole },
        new("inhaler gap", 12, s => CellContent.Of(FindingWords.Verdict(s.InhalerGap.Verdict))),
        new("inhaler gap: why", 38, s => CellContent.Of(s.InhalerGap.Why)) { Wrap = true },
        new("SpO2 before, %", 8, s => CellContent.Of(s.Before?.SpO2)) { Format = Format.UpToTwo },
        new("oxygen before, L/min", 8, s => CellContent.Of(s.Before?.OxygenLitresPerMinute)) { Format = Format.Flow },
        new("SpO2 after, %", 8, s => CellContent.Of(s.After?.SpO2)) { Format = Format.UpToTwo },
        new("oxygen after, L/min", 8, s => CellContent.Of(s.After?.OxygenLitresPerMinute)) { Format = Format.Flow },
        new("minutes", 8, s => CellContent.Of(s.Minutes)) { Format = Format.UpToTwo },
        new("areas left out", 18, s => CellContent.Of(string.Join(", ", s.AreasLeftOut))) { Wrap = true },
        new("illness", 8, s => CellContent.Of(s.Episode)),
        new("step", 6, s => CellContent.Of(s.Step)),
    ];
}
