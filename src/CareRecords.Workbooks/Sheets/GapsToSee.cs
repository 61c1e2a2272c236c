using CareRecords.Findings;
using CareRecords.Workbooks.Building;
using ClosedXML.Excel;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Above the sheet Gaps: only the sessions whose gap is not kept or cannot be told, with the family's words.</summary>
internal static class GapsToSee
{
    private const int Most = 40;
    private const int MostOfWords = 200;
    private const int LastColumn = 19;

    /// <summary>Columns that the cells are joined over: session, started, feed, inhaler, words.</summary>
    private static readonly (int From, int To)[] Places = [(1, 1), (2, 2), (3, 7), (8, 12), (13, LastColumn)];

    /// <summary>The row in which the whole table's headings stand.</summary>
    public static int RowAfter(IReadOnlyList<SessionFinding> sessions) => Chosen(sessions) is { Count: > 0 and var count }
        ? WorkbookLayout.HeadingRow + Math.Min(count, Most) + (count > Most ? 1 : 0) + 3
        : WorkbookLayout.HeadingRow;

    public static void Write(Book book, IXLWorksheet sheet, ReviewRows rows)
    {
        var chosen = Chosen(rows.Findings.Sessions);
        if (chosen.Count == 0) return;
        var at = WorkbookLayout.HeadingRow;
        Row(book, sheet, at, CellContent.Of("session"), CellContent.Of("started"), CellContent.Of("feed, not kept or cannot tell"), CellContent.Of("inhaler, not kept or cannot tell"), CellContent.Of("as the family wrote it"));
        Look.TableHeading(sheet.Range(at, 1, at, LastColumn));
        foreach (var session in chosen.Take(Most))
        {
            at++;
            var words = SummarySentences.Clip(string.Join(WorkbookLayout.SourceSeparator, session.Session.Sources.Select(s => s.Text.Trim())), MostOfWords);
            Row(book, sheet, at, CellContent.Of(rows.IdOf(session.Session)).To(rows.LinkOf(session.Session)), CellContent.Of(session.Start), CellContent.Of(Feed(session.FeedGap)), CellContent.Of(Inhaler(session.InhalerGap)), CellContent.Of(words));
            sheet.Cell(at, 2).Style.NumberFormat.Format = Look.Format.Time;
            sheet.Row(at).Height = 2 + (13 * new[] { TableSheet.LinesOf(words, 66), TableSheet.LinesOf(Feed(session.FeedGap) ?? "", 52), TableSheet.LinesOf(Inhaler(session.InhalerGap) ?? "", 52) }.Max());
        }

        if (chosen.Count > Most) book.Put(sheet.Cell(++at, 1), CellContent.Of(FormattableString.Invariant($"{chosen.Count - Most} more: filter the table below by its verdicts.")));
        book.Put(sheet.Cell(at + 2, 1), CellContent.Of("All sessions (the rows above are as worked out from the notes and do not change when a cell is mended)"));
        sheet.Cell(at + 2, 1).Style.Font.Bold = true;
    }

    private static void Row(Book book, IXLWorksheet sheet, int row, params CellContent[] cells)
    {
        for (var c = 0; c < cells.Length; c++)
        {
            var range = sheet.Range(row, Places[c].From, row, Places[c].To);
            if (Places[c].From < Places[c].To) range.Merge();
            book.Put(sheet.Cell(row, Places[c].From), cells[c]);
            range.Style.Alignment.WrapText = true;
            range.Style.Alignment.Vertical = XLAlignmentVerticalValues.Top;
            range.Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Left;
            range.Style.Border.BottomBorder = XLBorderStyleValues.Hair;
            range.Style.Border.BottomBorderColor = Look.Line;
        }
    }

    /// <summary>Those not kept first, then those that cannot be told, each in order of time.</summary>
    private static IReadOnlyList<SessionFinding> Chosen(IReadOnlyList<SessionFinding> sessions)
    {
        static bool NotKept(GapVerdict verdict) => verdict is not (GapVerdict.Kept or GapVerdict.Unknown);
        return
        [
            .. sessions.Where(s => s.FeedGap.Verdict != GapVerdict.Kept || s.InhalerGap.Verdict != GapVerdict.Kept)
                .OrderBy(s => NotKept(s.FeedGap.Verdict) || NotKept(s.InhalerGap.Verdict) ? 0 : 1),
        ];
    }

    private static string? Feed(FeedGapFinding gap) => gap.Verdict == GapVerdict.Kept ? null
        : gap.FeedRunning ? "a feed was running"
        : FindingWords.Verdict(gap.Verdict) + (gap.LowMinutes is null || gap.HighMinutes is null ? ": " + gap.Why : "") + Minutes(gap.LowMinutes, gap.HighMinutes, gap.LimitMinutes);

    private static string? Inhaler(InhalerGapFinding gap) => gap.Verdict == GapVerdict.Kept ? null
        : gap.Verdict == GapVerdict.Unknown ? $"{FindingWords.CannotTell}: {gap.Why}"
        : FindingWords.InhalerVerdict(gap.Verdict) + (gap.Verdict == GapVerdict.None ? "" : Minutes(gap.LowMinutes, gap.HighMinutes, gap.LimitMinutes));

    private static string Minutes(double? low, double? high, double limit) => low is null || high is null ? ""
        : $": {TimeWords.Range(low is { } l ? Math.Round(l) : null, high is { } h ? Math.Round(h) : null)} min, limit {TimeWords.Number(limit)}";
}
