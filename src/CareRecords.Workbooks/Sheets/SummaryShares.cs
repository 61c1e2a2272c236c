using CareRecords.Findings;
using CareRecords.Workbooks.Building;
using Format = CareRecords.Workbooks.Building.Look.Format;
using SheetName = CareRecords.Workbooks.WorkbookLayout.Sheet;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The front page's part on what was kept, not kept and cannot be told.</summary>
internal static class SummaryShares
{
    public static void Write(FrontPage page, ChildFindings findings)
    {
        var overall = findings.Adherence.Overall;
        page.Band("Kept, not kept, cannot tell", $"'{SheetName.Gaps}'!A1");
        page.Headings("", "kept", "not kept", "cannot tell", "share kept", "95 % from", "to", "if all unknown short", "if all unknown kept");
        Share(page, "Feed stopped in time", "feed gap", overall.FeedGap);
        Share(page, "Inhaler in time", "inhaler gap", overall.InhalerGap);
        page.Headings("", "done", "planned", "share", "days counted");
        Done(page, "Sessions", overall.Sessions, "sessions done", "sessions planned");
        foreach (var state in findings.Adherence.ByState) Done(page, "Sessions, " + state.Label, state.Sessions, null, null);
        Done(page, "Minutes", overall.Minutes, null, null);
        page.Sentence(CellContent.Of(SummarySentences.Reasons(findings)));
    }

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

    private static void Done(FrontPage page, string label, DoneOfPlanned? done, string? doneColumn, string? plannedColumn)
    {
        if (done is null) return;
        _ = (doneColumn, plannedColumn);
        page.Line(
            CellContent.Of(label),
            (CellContent.Of(done.Done), Format.UpToTwo),
            (done.Planned is { } planned ? CellContent.Of(planned) : CellContent.Of("not said"), Format.UpToTwo),
            (CellContent.Of(done.Proportion), Format.Percent),
            (CellContent.Of(done.DaysCounted), Format.Whole));
    }
}
