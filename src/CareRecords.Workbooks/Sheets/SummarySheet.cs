using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Building;
using Format = CareRecords.Workbooks.Building.Look.Format;
using SheetName = CareRecords.Workbooks.WorkbookLayout.Sheet;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The front page: one printed page, in the order in which a clinic asks.</summary>
internal static class SummarySheet
{
    private const int MostEpisodes = 4;
    private const int MostFlows = 5;
    private const int MostSteps = 6;
    private const int MostQuestions = 4;

    public static void Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(SheetName.Summary);
        var page = new FrontPage(book, sheet);
        page.SetWidths();
        Who(page, rows);
        Plan(page, rows.Findings);
        WhatChanged(page, rows);
        Illness(page, rows.Findings);
        SummaryShares.Write(page, rows);
        Saturation(page, rows);
        Taper(page, rows.Findings);
        Trust(page, rows);
        FamilyQuestions(page, rows.FamilyQuestions);
        page.Band("Decided today");
        page.WritingLines(["What we agreed", "Who does what, by when", "To look at next time"]);
        page.Sentence(CellContent.Of(OnPaper), size: 8);
        page.Sentence(CellContent.Of(Look.ShortCaution), size: 8);
        PageDress.Apply(sheet, landscape: false, Look.Blue);
        sheet.PageSetup.FitToPages(1, 1);
        sheet.PageSetup.Margins.Top = 0.3;
        sheet.PageSetup.CenterHorizontally = true;
        sheet.PageSetup.PrintAreas.Add(1, 1, page.Row - 1, FrontPage.Columns);
    }

    /// <summary>Links lead nowhere on paper: there the bars name the sheet, the feet of the pages name theirs, and this is their order.</summary>
    private static string OnPaper { get; } =
        $"On paper: each bar names its sheet, and the foot of every page its own. In order: {string.Join(", ", WorkbookLayout.Order.Where(s => s != SheetName.AsRead))}.";

    private static void Who(FrontPage page, ReviewRows rows)
    {
        var findings = rows.Findings;
        var span = findings.Span;
        var child = rows.Log.Plan.RowFor(PlanItem.ChildCalled, span.To)?.Value;
        var who = child is null ? "" : child.Trim() + ", ";
        page.Title(CellContent.Of($"Chest clearance at home: {who}{TimeWords.LongDay(span.From)} to {TimeWords.LongDay(span.To)}"));
        page.Sentence(SummarySentences.Notes(rows));
    }

    private static void Plan(FrontPage page, ChildFindings findings)
    {
        page.Band("The plan as the family understands it, at the end of this period", $"'{SheetName.Plan}'!A1");
        (string Name, PlanItem Item)[] left =
            [("Sessions a day", PlanItem.SessionsPerDay), ("Minutes per area", PlanItem.MinutesPerArea), ("Feed stopped before", PlanItem.FeedGapMinutes), ("Inhaler before", PlanItem.InhalerGapMinutes)];
        (string Name, PlanItem Item)[] right =
            [("Usual oxygen", PlanItem.UsualOxygen), ("Target saturation", PlanItem.TargetSaturationLow), ("Stop below", PlanItem.StopSaturation), ("Inhaler meant", PlanItem.MedicineBeforeSession)];
        for (var i = 0; i < left.Length; i++) page.Pair(left[i].Name, left[i].Item == PlanItem.MinutesPerArea ? PlanWords.MinutesInForce(findings) : PlanWords.InForce(findings, left[i].Item), right[i].Name, PlanWords.InForce(findings, right[i].Item));
    }

    private static void WhatChanged(FrontPage page, ReviewRows rows)
    {
        page.Band(rows.Findings.SinceLastReview is { } since ? $"What changed since the last review (to {TimeWords.Day(since.LastDay)}), and in this period" : "What changed in this period (no earlier review was given)", $"'{SheetName.Taper}'!A1");
        foreach (var sentence in ChangeWords.Of(rows)) page.Sentence(CellContent.Of(sentence));
    }

    private static void Illness(FrontPage page, ChildFindings findings)
    {
        page.Band("Illness and recovery", $"'{SheetName.Illness}'!A1");
        var episodes = findings.Illness.Episodes;
        if (episodes.Count == 0)
        {
            page.Sentence(CellContent.Of("No illness episode by the definition used: " + findings.Illness.MainDefinition));
            return;
        }

        page.Headings("episode", "first day", "earliest to latest", "lowest SpO2, %", "highest oxygen", "by the record: first day", "by the record: days to recovery", "by the model: days to recovery (95 % limits)");
        page.JoinLastTwo();
        foreach (var episode in episodes.Take(MostEpisodes))
        {
            var at = IllnessSheet.RowOf(findings.Illness, episode);
            CellContent From(CellContent content, string heading) => content.Value is null || at is null ? content : content.By($"INDEX({IllnessSheet.Table}[{heading}],{at + 1})");
            var link = at is { } row ? FormattableString.Invariant($"'{SheetName.Illness}'!A{WorkbookLayout.HeadingRow + 1 + row}") : null;
            var record = findings.Illness.OfRecord(episode);
            page.Line(
                CellContent.Of(episode.Id + (episode.RelapseOf is { } of ? $", relapse of {of}" : "")).To(link),
                (From(CellContent.Of(episode.Onset), "onset"), "d mmm"),
                (CellContent.Of(episode.OnsetLow == episode.OnsetHigh ? "that day" : TimeWords.Days(episode.OnsetLow, episode.OnsetHigh)), Format.Text),
                (From(CellContent.Of(episode.LowestSpO2), "lowest SpO2, %"), Format.UpToTwo), (From(CellContent.Of(episode.HighestOxygen), "highest oxygen, L/min"), "0.## \"L/min\""),
                (CellContent.Of(record?.Onset), "d mmm"),
                (CellContent.Of(record is null ? "none" : RecordDays(record.Recovery)), Format.Text),
                (CellContent.Of(ModelDays(episode.Recovery)), Format.Text));
            page.JoinLastTwo();
        }

        page.Sentence(CellContent.Of("Days to recovery run from each definition's own first day, as on the sheet Illness."), size: 8);

        foreach (var episode in episodes.Take(MostEpisodes)) page.Sentence(CellContent.Of(EpisodeWords.Of(findings, episode)));
        var more = episodes.Count > MostEpisodes ? $" {episodes.Count - MostEpisodes} more on the sheet Illness." : "";
        page.Sentence(CellContent.Of($"By two definitions: {findings.Illness.Spread}{more}"));
    }

    private static void Saturation(FrontPage page, ReviewRows rows)
    {
        var findings = rows.Findings;
        page.Band("Saturation, with the oxygen it was read on", $"'{SheetName.Saturation}'!A1");
        page.Headings("oxygen", "readings", "days", "median, %", "middle half from", "to", "lowest, %", "highest, %");
        foreach (var (flow, i) in findings.SaturationByFlow.Select((f, i) => (f, i)).Take(MostFlows))
        {
            string From(string heading) => $"INDEX({SaturationSheet.Table}[{heading}],{i + 1})";
            page.Line(
                CellContent.Of(FindingWords.Flow(flow.OxygenLitresPerMinute)).To($"'{SheetName.Saturation}'!A{WorkbookLayout.HeadingRow + 1 + i}"),
                (CellContent.Of(flow.Readings).By(From("readings")), Format.Whole), (CellContent.Of(flow.Days).By(From("days")), Format.Whole),
                (CellContent.Of(flow.Median).By(From("median SpO2, %")), Format.OneDecimal), (CellContent.Of(flow.LowerQuartile).By(From("lower quartile, %")), Format.OneDecimal),
                (CellContent.Of(flow.UpperQuartile).By(From("upper quartile, %")), Format.OneDecimal),
                (CellContent.Of(flow.Lowest).By(From("lowest, %")), Format.UpToTwo), (CellContent.Of(flow.Highest).By(From("highest, %")), Format.UpToTwo));
        }

        page.Sentence(CellContent.Of(SummarySentences.Usual(findings)));
        page.Sentence(CellContent.Of(SummarySentences.OffUsual(rows)));
    }

    private static void Taper(FrontPage page, ChildFindings findings)
    {
        page.Band("Taper: steps up and down, as done", $"'{SheetName.Taper}'!A1");
        var steps = findings.Taper.Done;
        if (steps.Count > 0) page.Headings("step", "from", "to", "sessions a day", "plan", "minutes per area", "plan", "hours stable before", TaperSheet.Within7);
        var first = Math.Max(0, steps.Count - MostSteps);
        for (var i = first; i < steps.Count; i++)
        {
            var step = steps[i];
            var index = i + 1;
            CellContent At(CellContent content, string heading) => content.Value is null ? content : content.By($"INDEX({TaperSheet.Table}[{heading}],{index})");
            CellContent Planned(double? most, string? inWords, string heading) => inWords is null ? At(CellContent.Of(most), heading) : CellContent.Of("changed");
            page.Line(
                CellContent.Of($"{step.Id}: {FindingWords.Direction(step)}{(step.Episode is { } e ? $", day {step.DayOfEpisode} of {e}" : "")}").To($"'{SheetName.Taper}'!A{WorkbookLayout.HeadingRow + index}"),
                (At(CellContent.Of(step.From), "from"), "d mmm"), (At(CellContent.Of(step.To), "to"), "d mmm"),
                (At(CellContent.Of(step.SessionsPerDay), "sessions a day"), Format.UpToTwo), (Planned(step.PlannedSessionsPerDay, step.PlannedSessionsInWords, "sessions a day planned"), Format.UpToTwo),
                (At(CellContent.Of(step.MinutesPerArea), "minutes per area"), Format.UpToTwo), (Planned(step.PlannedMinutesPerArea, step.PlannedMinutesInWords, "minutes per area planned"), Format.UpToTwo),
                (At(CellContent.Of(step.StableHoursBefore), "hours stable before"), Format.Whole), (step.Direction == StepDirection.Down ? At(CellContent.Of(FindingWords.Outcome(step, step.FollowedBy)), TaperSheet.Within7) : CellContent.Blank, Format.Text));
        }

        var earlier = first > 0 ? $" {first} earlier on the sheet Taper." : "";
        page.Sentence(CellContent.Of(findings.Taper.WeanInWords + earlier));
        var details = steps.Skip(first).Where(s => s.Direction == StepDirection.Down && (s.StableInWords ?? s.PlannedSessionsInWords ?? s.PlannedMinutesInWords ?? s.DiffersFromPlan) is not null).Select(Detail).ToList();
        if (details.Count > 0) page.Sentence(CellContent.Of(string.Join(" ", details)), size: 9);
    }

    /// <summary>What a step down's hours are counted from, and where it differs from the plan.</summary>
    private static string Detail(TaperStep step) =>
        $"{step.Id}: " + string.Join(". ", new[]
        {
            step.StableInWords is { } stable ? "hours stable are counted " + stable : null,
            step.PlannedSessionsInWords is { } sessions ? $"Planned sessions a day: {sessions}" : null,
            step.PlannedMinutesInWords is { } minutes ? $"Planned minutes an area: {minutes}" : null,
            step.DiffersFromPlan is { } differs ? "Done: " + differs : null,
        }.OfType<string>()) + ".";

    private static void Trust(FrontPage page, ReviewRows rows)
    {
        page.Band("How complete, and how far to trust this", $"'{SheetName.ChecksOfTotals}'!A1");
        foreach (var sentence in SummarySentences.Trust(rows)) page.Sentence(sentence);
    }

    private static void FamilyQuestions(FrontPage page, IReadOnlyList<Numbered<SourceLine>> questions)
    {
        page.Band("The family's questions", $"'{SheetName.QuestionsForClinic}'!A1");
        foreach (var question in questions.Take(MostQuestions)) page.Sentence(CellContent.Of("• " + SummarySentences.Clip(question.Item.Text)));
        if (questions.Count > MostQuestions) page.Sentence(CellContent.Of($"{questions.Count - MostQuestions} more on the sheet Questions for clinic."));
        if (questions.Count == 0) page.Sentence(CellContent.Of("None written."));
    }

    /// <summary>The record's bracket, in days from the record's own first day.</summary>
    private static string RecordDays(RecoveryFinding recovery) =>
        recovery.RecordHigh is null ? $"not by {Rounded(recovery.RecordLow)}" : RoundedRange(recovery.RecordLow, recovery.RecordHigh);

    private static string ModelDays(RecoveryFinding recovery) => recovery switch
    {
        { Estimate: null } => "none",
        { Low: null, High: null } => $"{Rounded(recovery.Estimate)}, no limits",
        _ => $"{Rounded(recovery.Estimate)} ({(recovery.High is null ? Rounded(recovery.Low) + "+" : Rounded(recovery.Low) + "–" + Rounded(recovery.High))})",
    };

    private static string Rounded(double? days) => days is { } d ? TimeWords.Number(Math.Round(d, 1)) : "";

    private static string RoundedRange(double? low, double? high) =>
        TimeWords.Range(low is { } l ? Math.Round(l, 1) : null, high is { } h ? Math.Round(h, 1) : null).Replace(" to ", "–", StringComparison.Ordinal);
}
