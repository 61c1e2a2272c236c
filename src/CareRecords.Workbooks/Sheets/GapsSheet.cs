using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;

namespace CareRecords.Workbooks.Sheets;

/// <summary>One row a session: the feed gap and the inhaler gap with what the notes allow, the verdict and why.</summary>
internal static class GapsSheet
{
    public const string Table = "Gaps";

    /// <summary>Hidden working columns: minutes of the parts whose minutes were written (or the total), the plan's minutes for them, and for the other parts.</summary>
    public const string MinutesCompared = "minutes compared";
    public const string MinutesPlanned = "minutes planned";
    public const string MinutesNotWritten = "minutes planned, not written";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Gaps);
        var columns = Columns(rows);
        var heading = GapsToSee.RowAfter(rows.Findings.Sessions);
        TableSheet.Dress(
            sheet, "Feed and inhaler gaps, session by session",
            "Least and most minutes that the notes allow. 'kept' and 'short' (an inhaler: 'too late', 'too early', 'none written') hold however the times are read; otherwise 'cannot tell'. Exactly the limit is kept.", 2, heading);
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Findings.Sessions, heading);
        GapsToSee.Write(book, sheet, rows);
        PageDress.Apply(sheet, landscape: true, Blue, heading);
        return place;
    }

    private static IReadOnlyList<Column<SessionFinding>> Columns(ReviewRows rows) =>
    [
        new("session", 8, s => CellContent.Of(rows.IdOf(s.Session)).To(rows.LinkOf(s.Session))),
        new("started", 16.5, s => CellContent.Of(s.Start).By($"IF(ISNUMBER({GapFormulas.Session("started")}),{GapFormulas.Session("started")},{GapFormulas.Session("ended")})")) { Format = Format.Time },
        new("feed", 7, s => CellContent.Of(rows.IdOf(s.FeedGap.Feed)).To(rows.LinkOf(s.FeedGap.Feed))) { Remark = "The feed that the notes gave the gap by. The minutes follow all feeds on the sheet Feeds." },
        new("feed gap least, min", 8, s => rows.Twins.FeedGapFollows(s) ? CellContent.Of(s.FeedGap.LowMinutes).By(GapFormulas.FeedLow) : CellContent.Of(s.FeedGap.LowMinutes)) { Format = Format.Whole },
        new("feed gap most, min", 8, s => rows.Twins.FeedGapFollows(s) ? CellContent.Of(s.FeedGap.HighMinutes).ByArray(GapFormulas.FeedHigh) : CellContent.Of(s.FeedGap.HighMinutes)) { Format = Format.Whole },
        new("feed gap limit, min", 8, s => CellContent.Of(s.FeedGap.LimitMinutes).By(PlanFormulas.On(PlanItem.FeedGapMinutes, GapFormulas.Cell("care day")))) { Format = Format.Whole },
        new("feed gap", 11, s => CellContent.Of(FindingWords.Verdict(s.FeedGap.Verdict)).By(GapFormulas.FeedVerdict)),
        new("dose", 7, s => CellContent.Of(rows.IdOf(s.InhalerGap.Dose)).To(rows.LinkOf(s.InhalerGap.Dose))) { Remark = "The dose that the notes gave the gap by. Mend its time on the sheet Medicines and the gap follows." },
        new("inhaler gap least, min", 8, s => CellContent.Of(s.InhalerGap.LowMinutes).By(GapFormulas.DoseLow)) { Format = Format.Whole },
        new("inhaler gap most, min", 8, s => CellContent.Of(s.InhalerGap.HighMinutes).By(GapFormulas.DoseHigh)) { Format = Format.Whole },
        new("inhaler gap limit, min", 8, s => CellContent.Of(s.InhalerGap.LimitMinutes).By(PlanFormulas.On(PlanItem.InhalerGapMinutes, GapFormulas.Cell("care day")))) { Format = Format.Whole },
        new("inhaler gap", 12, s => rows.Twins.InhalerVerdictFollows(s) ? CellContent.Of(FindingWords.InhalerVerdict(s.InhalerGap.Verdict)).By(GapFormulas.InhalerVerdict) : CellContent.Of(FindingWords.InhalerVerdict(s.InhalerGap.Verdict))),
        new("SpO2 before, %", 8, s => CellContent.Of(s.Before?.SpO2)) { Format = Format.UpToTwo },
        new("oxygen before, L/min", 8, s => CellContent.Of(s.Before?.OxygenLitresPerMinute)) { Format = Format.Flow },
        new("SpO2 after, %", 8, s => CellContent.Of(s.After?.SpO2)) { Format = Format.UpToTwo },
        new("oxygen after, L/min", 8, s => CellContent.Of(s.After?.OxygenLitresPerMinute)) { Format = Format.Flow },
        new("minutes", 8, s => CellContent.Of(s.Minutes).By(GapFormulas.Session(SessionsSheet.MinutesInAll))) { Format = Format.UpToTwo },
        new("illness", 8, s => CellContent.Of(s.Episode)),
        new("step", 6, s => CellContent.Of(s.Step)),
        new("feed gap: why", 60, s => CellContent.Of(s.FeedGap.Why)) { Wrap = true, Remark = "As worked out from the notes; the words do not change when a cell is mended." },
        new("inhaler gap: why", 60, s => CellContent.Of(s.InhalerGap.Why)) { Wrap = true, Remark = "As worked out from the notes; the words do not change when a cell is mended." },
        new("care day", 15.5, s => CellContent.Of(s.CareDay).By(GapFormulas.Session("care day"))) { Format = Format.Day },
        new("week from", 12, s => CellContent.Of(Weeks.MondayOf(s.CareDay)).By($"{GapFormulas.Cell("care day")}-WEEKDAY({GapFormulas.Cell("care day")},2)+1")) { Format = Format.ShortDay },
        new("inhaler window, min", 8, s => CellContent.Of(s.InhalerGap.WindowMinutes).By(PlanFormulas.On(PlanItem.InhalerWindowMinutes, GapFormulas.Cell("care day")))) { Format = Format.Whole },
        new("areas left out", 40, s => CellContent.Of(string.Join(", ", s.AreasLeftOut))) { Wrap = true },
        .. MinutesColumns(rows),
        new(GapFormulas.StartLow, 12, s => CellContent.Of(rows.TimeLine.Earliest(s.Session.When.Earliest)).By(GapFormulas.Session(IntervalColumns.StartLow))) { Role = ColumnRole.Working },
        new(GapFormulas.StartHigh, 12, s => CellContent.Of(rows.TimeLine.Latest(s.Session.When.Latest)).By(GapFormulas.Session(IntervalColumns.StartHigh))) { Role = ColumnRole.Working },
    ];

    /// <summary>
    /// Planned minutes follow the plan by so many parts of each item; how many are written is counted in the sheet Sessions where each has a column
    /// there, and is otherwise as read.
    /// </summary>
    private static IReadOnlyList<Column<SessionFinding>> MinutesColumns(ReviewRows rows)
    {
        var usual = rows.Findings.Adherence.UsualParts;
        static string Plan(PlanItem item) => $"{PlanItems.Describe(item).Name}, plan";
        string Sum(Func<PlanItem, string> parts) => string.Join('+', usual.Select(u => $"{parts(u.Item)}*N({GapFormulas.Cell(Plan(u.Item))})"));
        var all = Sum(i => Formula.Number(usual.First(u => u.Item == i).Parts));
        return
        [
            .. usual.Select(u => new Column<SessionFinding>(Plan(u.Item), 9, s => CellContent.Of(rows.Log.Plan.NumberFor(u.Item, s.CareDay) ?? rows.Log.Plan.NumberFor(PlanItem.MinutesPerArea, s.CareDay))
                .By(PlanFormulas.MinutesOf(rows.Log.Plan, u.Item, GapFormulas.Cell("care day")))) { Role = ColumnRole.Working }),
            new(MinutesCompared, 9, s => SessionMinutes.Compared(rows, s)) { Role = ColumnRole.Working },
            new(MinutesPlanned, 9, s => s.AgainstPlan is { } m ? CellContent.Of(m.Planned).By(Sum(i => SessionMinutes.Written(rows, s, i))) : CellContent.Blank) { Role = ColumnRole.Working },
            new(MinutesNotWritten, 9, s => s.AgainstPlan is { } m ? CellContent.Of(m.NotWritten).By($"{all}-{GapFormulas.Cell(MinutesPlanned)}") : CellContent.Blank) { Role = ColumnRole.Working },
        ];
    }
}
