using CareRecords.Findings;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Illness episodes under both definitions, recovery as a bracket and as an estimate.</summary>
internal static class IllnessSheet
{
    public const string Table = "Episodes";

    /// <summary>The sentences under the table run over so many columns: the first printed page.</summary>
    private const int SentenceColumns = 10;

    /// <summary>The row, from 0, in which an episode stands; null when it is not one of the two definitions' own.</summary>
    public static int? RowOf(IllnessFindings illness, EpisodeFinding episode)
    {
        var at = illness.ByRecord.Concat(illness.ByModel).ToList().FindIndex(e => ReferenceEquals(e, episode));
        if (at < 0) at = illness.ByRecord.Concat(illness.ByModel).ToList().IndexOf(episode);
        return at < 0 ? null : at;
    }

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Illness);
        var illness = rows.Findings.Illness;
        var columns = Columns(rows);
        IReadOnlyList<(string Definition, EpisodeFinding Episode)> episodes =
            [.. illness.ByRecord.Select(e => ("by the record", e)), .. illness.ByModel.Select(e => ("by the model", e))];
        TableSheet.Dress(
            sheet, "Illness and recovery",
            "Two definitions, both shown. Days are counted from the start of the row's own onset day: two rows of one illness may count from different days. Worked out by CareRecords; these rows are not recalculated by the sheet.", 2);
        var place = TableSheet.Write(book, sheet, Table, columns, episodes);
        var at = place.LastRow + 2;
        foreach (var sentence in Sentences(rows.Findings))
        {
            var across = sheet.Range(at, 1, at, SentenceColumns).Merge();
            book.Put(sheet.Cell(at, 1), sentence);
            across.Style.Alignment.WrapText = true;
            across.Style.Alignment.Vertical = ClosedXML.Excel.XLAlignmentVerticalValues.Top;
            sheet.Row(at).Height = 2 + (13 * TableSheet.LinesOf(sentence, columns.Take(SentenceColumns).Sum(c => c.Width)));
            at++;
        }

        PageDress.Apply(sheet, landscape: true, Blue);
        return place;
    }

    private static IEnumerable<string> Sentences(ChildFindings findings)
    {
        var illness = findings.Illness;
        yield return "Definition used on the front page: " + illness.MainDefinition;
        if (illness.ModelMissing is { } missing) yield return "By the model: " + missing;
        yield return $"Illness days: {illness.IllnessDays.ByRecord} by the record, {illness.IllnessDays.ByModel} by the model, {illness.IllnessDays.ByBoth} by both.";
        yield return illness.Spread;
        var all = findings.Recovery;
        yield return all.Median is { } median
            ? $"Over {all.Episodes} episodes ({all.Censored} not recovered by the end of the record): median {TimeWords.Number(median)} days to recovery, 95 % limits {TimeWords.Range(all.MedianLow, all.MedianHigh)}. {all.Method}"
            : $"Over {all.Episodes} episodes ({all.Censored} not recovered by the end of the record): no median can be given. {all.Method}";
        yield return findings.Baseline is { } usual
            ? $"The child's own usual: {TimeWords.Number(usual.SpO2)} % (band {TimeWords.Number(usual.SpO2Low)} to {TimeWords.Number(usual.SpO2High)} %) on {FindingWords.Flow(usual.Oxygen)}, from {usual.DaysUsed} well days{(usual.Provisional ? "; provisional" : "")}. {usual.Method}"
            : "No usual saturation: " + findings.BaselineMissing;
    }

    private static IReadOnlyList<Column<(string Definition, EpisodeFinding Episode)>> Columns(ReviewRows rows) =>
    [
        new("episode", 9, e => CellContent.Of(e.Episode.Id)),
        new("definition", 12, e => CellContent.Of(e.Definition)),
        new("onset", 11, e => CellContent.Of(e.Episode.Onset)) { Format = Format.ShortDay },
        new("onset earliest", 11, e => CellContent.Of(e.Episode.OnsetLow)) { Format = Format.ShortDay },
        new("onset latest", 11, e => CellContent.Of(e.Episode.OnsetHigh)) { Format = Format.ShortDay },
        new("what was written on the first day", 30, e => CellContent.Of(e.Episode.Evidence)) { Wrap = true },
        new("worst day", 11, e => CellContent.Of(e.Episode.Peak)) { Format = Format.ShortDay },
        new("lowest SpO2, %", 8, e => CellContent.Of(e.Episode.LowestSpO2)) { Format = Format.UpToTwo },
        new("highest oxygen, L/min", 8, e => CellContent.Of(e.Episode.HighestOxygen)) { Format = Format.Flow },
        new("most sessions a day", 9, e => CellContent.Of(e.Episode.MostSessions)) { Format = Format.Whole },
        new("by the record: not recovered until, days", 11, e => CellContent.Of(e.Episode.Recovery.RecordLow)) { Format = Format.OneDecimal },
        new("by the record: recovered from, days", 11, e => CellContent.Of(e.Episode.Recovery.RecordHigh)) { Format = Format.OneDecimal },
        new("recovery", 13, e => CellContent.Of(e.Episode.Recovery.Censored ? "not by the end of the record" : "recovered")) { Wrap = true },
        new("model estimate, days", 10, e => CellContent.Of(e.Episode.Recovery.Estimate)) { Format = Format.OneDecimal, Remark = "From the model, not recalculated." },
        new("estimate low, days", 9, e => CellContent.Of(e.Episode.Recovery.Low)) { Format = Format.OneDecimal, Remark = "From the model, not recalculated." },
        new("estimate high, days", 9, e => CellContent.Of(e.Episode.Recovery.High)) { Format = Format.OneDecimal, Remark = "From the model, not recalculated. Empty: open." },
        new("back to maintenance, days", 12.5, e => CellContent.Of(e.Episode.BackToMaintenanceDays)) { Format = Format.OneDecimal },
        new("relapse of", 9, e => CellContent.Of(e.Episode.RelapseOf)),
        new("days since recovery before", 10, e => CellContent.Of(e.Episode.DaysSincePreviousRecovery)) { Format = Format.OneDecimal },
        new("method", 40, e => CellContent.Of(e.Episode.Recovery.Method)) { Wrap = true },
        new("lines", 22, e => CellContent.Of(string.Join("; ", e.Episode.Sources.Take(6).Select(s => s.Place)) + (e.Episode.Sources.Count > 6 ? $"; and {e.Episode.Sources.Count - 6} more" : "")).To(rows.Read.LinkTo(e.Episode.Sources is [var first, ..] ? first : null))) { Wrap = true },
    ];
}
