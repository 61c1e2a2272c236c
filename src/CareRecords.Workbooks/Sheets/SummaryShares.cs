using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Building;
using Format = CareRecords.Workbooks.Building.Look.Format;
using SheetName = CareRecords.Workbooks.WorkbookLayout.Sheet;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The front page's part on what was kept, not kept and cannot be told.</summary>
internal static class SummaryShares
{
    /// <summary>A child fed by tube is seldom without a feed for so long: a later one may not have been written (common practice, no source).</summary>
    private const int LongAgoMinutes = 240;

    public static void Write(FrontPage page, ReviewRows rows)
    {
        var findings = rows.Findings;
        var overall = findings.Adherence.Overall;
        page.Band("Kept, not kept, cannot tell", $"'{SheetName.Gaps}'!A1");
        page.Headings("before a session", "kept", "not kept", "cannot tell", "share kept", "95 % limits from", "to", "worst case*", "best case*");
        Share(page, "Feed stopped in time", "feed gap", overall.FeedGap);
        Share(page, "Inhaler in time", "inhaler gap", overall.InhalerGap);
        page.Sentence(NotKept(findings));
        page.Sentence(CellContent.Of($"* Share if none, and if all, of the 'cannot tell' were kept. The limits are not recalculated by the sheet; how they are reckoned: sheet {SheetName.HowWorkedOut}."), size: 8);
        page.Headings("", "done", "planned", "share", "days counted", "minutes a day, median", "minutes, least", "minutes, most", "sessions begun at night");
        Done(page, "Sessions", overall.Sessions, Days("sessions done", ""), Days("sessions planned", ""), Counted(""), findings.Adherence.Effort.All, "");
        foreach (var state in findings.Adherence.ByState.Where(g => g.Sessions is { DaysCounted: > 0 }))
        {
            // By name: the day's illness cell is empty on well days.
            var which = state.Label == "illness days" ? ",Days[illness],\"?*\"" : state.Label == "well days" ? ",Days[illness],\"=\"" : null;
            Done(page, "Sessions, " + state.Label, state.Sessions, which is null ? null : Days("sessions done", which), which is null ? null : Days("sessions planned", which), which is null ? null : Counted(which),
                state.Label == "illness days" ? findings.Adherence.Effort.Illness : findings.Adherence.Effort.Well, state.Label == "illness days" ? "*({0}[illness]<>\"\")" : "*({0}[illness]=\"\")");
        }

        if (overall.Sessions?.Planned is not null) page.Sentence(DaysFull(findings));
        const string minutes = $"Gaps[{GapsSheet.MinutesCompared}],\">=0\",Gaps[{GapsSheet.MinutesPlanned}],\">0\"";
        Done(page, "Minutes, where written", overall.Minutes, $"SUMIFS(Gaps[{GapsSheet.MinutesCompared}],{minutes})", $"SUMIFS(Gaps[{GapsSheet.MinutesPlanned}],{minutes})", null, null, "");
        if (overall.Minutes is { } compared)
        {
            page.Sentence(MinutesNotWritten(compared, minutes));
            page.Sentence(CellContent.Of(SummarySentences.MinutesReckoned(findings)), size: 9);
        }

        page.Sentence(AtNight(rows));
        page.Sentence(SummarySentences.NotDone(findings));
        if (SummarySentences.Reasons(findings) is { } reasons) page.Sentence(CellContent.Of(reasons));
    }

    private static string Days(string column, string which) => $"SUMIFS(Days[{column}],Days[anything written],\"yes\",Days[sessions planned],\">0\"{which})";

    private static string Counted(string which) => $"COUNTIFS(Days[anything written],\"yes\",Days[sessions planned],\">0\"{which})";

    private static void Share(FrontPage page, string label, string gap, ShareKept share)
    {
        var kept = $"COUNTIFS(Gaps[{gap}],\"{FindingWords.Kept}\")";
        var unknown = $"COUNTIFS(Gaps[{gap}],\"{FindingWords.CannotTell}\")";
        var rows = "COUNTIFS(Gaps[session],\"?*\")";
        page.Line(
            CellContent.Of(label).To($"'{SheetName.Gaps}'!A1"),
            (CellContent.Of(share.Kept).By(kept), Format.Whole),
            (CellContent.Of(share.Judged - share.Kept).By($"{rows}-{kept}-{unknown}"), Format.Whole),
            (CellContent.Of(share.Unknown).By(unknown), Format.Whole),
            (CellContent.Of(share.Proportion).By($"IF({rows}={unknown},\"\",{kept}/({rows}-{unknown}))"), Format.Percent),
            (CellContent.Of(share.Low), Format.Percent),
            (CellContent.Of(share.High), Format.Percent),
            (CellContent.Of(share.WorstCase).By($"IF({rows}=0,\"\",{kept}/{rows})"), Format.Percent),
            (CellContent.Of(share.BestCase).By($"IF({rows}=0,\"\",({kept}+{unknown})/{rows})"), Format.Percent));
    }

    private static void Done(FrontPage page, string label, DoneOfPlanned? done, string? doneFormula, string? plannedFormula, string? daysFormula, Effort? effort, string which)
    {
        if (done is null) return;
        var live = done.Planned is not null && doneFormula is not null && plannedFormula is not null;
        page.Line(
            CellContent.Of(label).To(label.StartsWith("Minutes", StringComparison.Ordinal) ? $"'{SheetName.Gaps}'!A1" : $"'{SheetName.Days}'!A1"),
            [(live ? CellContent.Of(done.Done).By(doneFormula!) : CellContent.Of(done.Done), Format.UpToTwo),
            (done.Planned is { } planned ? live ? CellContent.Of(planned).By(plannedFormula!) : CellContent.Of(planned) : CellContent.Of("not said"), Format.UpToTwo),
            (live ? CellContent.Of(done.Proportion).By($"{doneFormula}/{plannedFormula}") : CellContent.Of(done.Proportion), Format.Percent),
            (live && daysFormula is not null ? CellContent.Of(done.DaysCounted).By(daysFormula) : CellContent.Of(done.DaysCounted), Format.Whole),
            .. effort is null ? [] : Minutes(effort, which)]);
    }

    /// <summary>Minutes of the days whose sessions' minutes are all known, and sessions begun at night.</summary>
    private static IEnumerable<(CellContent, string)> Minutes(Effort effort, string which)
    {
        var ofDays = string.Format(System.Globalization.CultureInfo.InvariantCulture, which, "Days");
        CellContent Live(double? value, string function) =>
            CellContent.Of(value).ByArray($"IFERROR({function}(IF(ISNUMBER(Days[minutes])*(Days[sessions without minutes]=0){ofDays},Days[minutes])),\"\")");
        var ofSessions = string.Format(System.Globalization.CultureInfo.InvariantCulture, which, "Gaps");
        var clock = "ROUND(MOD(Gaps[started],1)*1440,0)";
        var night = CellContent.Of(effort.NightSessions);
        return
        [
            effort.Days == 0 ? (CellContent.Of("not known"), Format.Text) : (Live(effort.MedianMinutes, "MEDIAN"), Format.UpToTwo),
            effort.Days == 0 ? (CellContent.Blank, Format.Text) : (Live(effort.LeastMinutes, "MIN"), Format.UpToTwo),
            effort.Days == 0 ? (CellContent.Blank, Format.Text) : (Live(effort.MostMinutes, "MAX"), Format.UpToTwo),
            (effort.NightSessions == 0 ? night : night.By($"SUMPRODUCT((({clock}>=1320)+({clock}<360)){ofSessions})"), Format.Whole),
        ];
    }

    /// <summary>Planned minutes of which nobody wrote whether they were done: unknown, and neither done nor missed.</summary>
    private static CellContent MinutesNotWritten(DoneOfPlanned minutes, string counted)
    {
        var (unknown, percent) = (minutes.NotWritten ?? 0, (minutes.WorstCase ?? 0) * 100);
        if (unknown == 0) return CellContent.Of("Every planned minute of the sessions written is accounted for.");
        const string Head = "Not written, so unknown and in neither figure: ", Middle = " planned minutes of parts whose minutes nobody wrote. Were none of them done, the share would be ", Tail = " %.";
        const string NotWritten = $"SUM(Gaps[{GapsSheet.MinutesNotWritten}])";
        var worst = $"100*SUMIFS(Gaps[{GapsSheet.MinutesCompared}],{counted})/(SUMIFS(Gaps[{GapsSheet.MinutesPlanned}],{counted})+{NotWritten})";
        return CellContent.Of($"{Head}{TimeWords.Number(Math.Round(unknown, 1))}{Middle}{Math.Round(percent, MidpointRounding.AwayFromZero):0}{Tail}")
            .By($"{Formula.Text(Head)}&ROUND({NotWritten},1)&{Formula.Text(Middle)}&ROUND({worst},0)&{Formula.Text(Tail)}");
    }

    /// <summary>A night without a session may still be a night of readings, feeds and medicines.</summary>
    private static CellContent AtNight(ReviewRows rows)
    {
        static bool Night(CareEntry entry) => entry.When.Precision != TimePrecision.DayOnly && entry.When.Stated.Hour is >= 22 or < 6;
        int Count<T>(IReadOnlyList<Numbered<T>> entries) where T : CareEntry => entries.Count(e => Night(e.Item));
        var nights = rows.Sessions.Select(e => (CareEntry)e.Item).Concat(rows.Feeds.Select(e => e.Item)).Concat(rows.Doses.Select(e => e.Item)).Concat(rows.Checks.Select(e => e.Item))
            .Where(Night).Select(e => rows.TimeLine.CareDay(e.When.Stated)).Distinct().Count();
        return CellContent.Of($"At night (22:00 to before 06:00): {Count(rows.Sessions)} sessions begun, {Count(rows.Checks)} checks, {Count(rows.Doses)} doses, {Count(rows.Feeds)} feeds begun; something written on {nights} of {rows.Findings.Days.Count} nights.");
    }

    /// <summary>Days with all, more and fewer sessions than planned: a share of sessions sets more against fewer.</summary>
    private static CellContent DaysFull(ChildFindings findings)
    {
        var counted = findings.Days.Where(d => d.HasRecords && d.SessionsPlanned is > 0).ToList();
        const string Head = "Days with all planned sessions: ", Of = " of ", More = "; with more than planned: ", Fewer = "; with fewer: ", Tail = ". The share of sessions sets more against fewer.";
        const string Live = "(Days[anything written]=\"yes\")*ISNUMBER(Days[sessions planned])*(Days[sessions planned]>0)";
        string Cell(string sign) => $"SUMPRODUCT({Live}*(Days[sessions done]{sign}Days[sessions planned]))";
        return CellContent.Of($"{Head}{counted.Count(d => d.SessionsDone >= d.SessionsPlanned)}{Of}{counted.Count}{More}{counted.Count(d => d.SessionsDone > d.SessionsPlanned)}{Fewer}{counted.Count(d => d.SessionsDone < d.SessionsPlanned)}{Tail}")
            .By($"{Formula.Text(Head)}&{Cell(">=")}&{Formula.Text(Of)}&{Counted("")}&{Formula.Text(More)}&{Cell(">")}&{Formula.Text(Fewer)}&{Cell("<")}&{Formula.Text(Tail)}");
    }

    /// <summary>What "not kept" is made of, and how many kept feed gaps rest on a feed written long before; sessions whose gap cannot be told are in none of these.</summary>
    private static CellContent NotKept(ChildFindings findings)
    {
        int Count(GapVerdict verdict) => findings.Sessions.Count(s => s.InhalerGap.Verdict == verdict);
        string Cell(string verdict) => $"COUNTIFS(Gaps[inhaler gap],\"{verdict}\")";
        var running = findings.Sessions.Count(s => s.FeedGap.FeedRunning);
        var kept = findings.Sessions.Where(s => s.FeedGap.Verdict == GapVerdict.Kept).ToList();
        const string Late = "Inhaler not kept: ", Early = $" {FindingWords.TooLate} (too near the session), ", None = $" {FindingWords.Early}, ", Rest = $" {FindingWords.None} (other medicines were that day).";
        const string Feed = " Feed: in ", Of = " of the ", Long = " kept, the last written feed ended over 4 h before; a feed that nobody wrote is not seen.";
        var during = running == 0 ? "" : $" Feed still running at the start: {running}.";
        const string KeptCells = "COUNTIFS(Gaps[feed gap],\"kept\"";
        return CellContent.Of($"{Late}{Count(GapVerdict.Short)}{Early}{Count(GapVerdict.Early)}{None}{Count(GapVerdict.None)}{Rest}{Feed}{kept.Count(s => s.FeedGap.LowMinutes > LongAgoMinutes)}{Of}{kept.Count}{Long}{during}")
            .By($"{Formula.Text(Late)}&{Cell(FindingWords.TooLate)}&{Formula.Text(Early)}&{Cell(FindingWords.Early)}&{Formula.Text(None)}&{Cell(FindingWords.None)}&{Formula.Text(Rest + Feed)}"
                + $"&{KeptCells},Gaps[feed gap least, min],\">{LongAgoMinutes}\")&{Formula.Text(Of)}&{KeptCells})&{Formula.Text(Long + during)}");
    }
}
