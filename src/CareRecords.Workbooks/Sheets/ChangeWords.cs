using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Sentences on what changed: since the last review where one came in, then the plan's steps and oxygen within the period.</summary>
internal static class ChangeWords
{
    private const int MostUnnamed = 3;

    public static IEnumerable<string> Of(ReviewRows rows)
    {
        var findings = rows.Findings;
        if (findings.SinceLastReview is { } since)
        {
            foreach (var sentence in Since(since)) yield return sentence;
        }

        var any = false;
        foreach (var item in findings.Plan.Where(p => !p.IsDefault).GroupBy(p => p.Item))
        {
            var values = item.OrderBy(v => v.From ?? findings.Span.From).ToList();
            var begins = PlanItems.MinutesOfParts.Contains(item.Key) && values[0].From is { } from && from > findings.Span.From;
            if (values.Count < 2 && !begins) continue;
            any = true;
            yield return $"Plan, {values[0].Name}: {(begins ? $"as every area, {values[0].Value} from {TimeWords.Day(values[0].From!.Value)}" : values[0].Value)}" + string.Concat(values.Skip(1).Select(v => $", {v.Value} from {TimeWords.Day(v.From ?? findings.Span.From)}")) + ".";
        }

        if (!any) yield return "The plan did not change in what was written.";
        if (Unnamed(rows) is { } unnamed) yield return unnamed;
        var flows = findings.Days.GroupBy(d => Weeks.MondayOf(d.Day)).Where(w => w.Any(d => d.HighestOxygen is not null))
            .Select(w => $"{TimeWords.Days(w.Min(d => d.Day), w.Max(d => d.Day))} {FindingWords.Flow(w.Max(d => d.HighestOxygen))}").ToList();
        if (flows.Count > 1) yield return $"Highest oxygen written at any time in each week: {string.Join("; ", flows)}.";
    }

    /// <summary>Medicines whose words name none of the table, with the day of the first; null when there is none.</summary>
    private static string? Unnamed(ReviewRows rows)
    {
        var days = rows.Findings.Days.Select(d => d.Day).ToHashSet();
        var unnamed = rows.Doses.Select(d => d.Item).Where(d => d.Class == MedicineClass.Unknown && days.Contains(rows.TimeLine.CareDay(d.When.Stated)))
            .GroupBy(d => (d.MedicineAsWritten ?? d.Medicine).Trim().ToLowerInvariant()).Select(g => (Words: g.Key, Times: g.Count(), First: g.Min(d => d.When.Stated.Date))).OrderBy(m => m.First).ToList();
        return unnamed.Count == 0 ? null
            : "Medicine that the notes do not name: " + string.Join(", ", unnamed.Take(MostUnnamed).Select(m => $"\u201c{SummarySentences.Clip(m.Words, 40)}\u201d {(m.Times == 1 ? "once," : FormattableString.Invariant($"{m.Times} times, first"))} {TimeWords.Day(m.First)}"))
                + (unnamed.Count > MostUnnamed ? FormattableString.Invariant($", {unnamed.Count - MostUnnamed} more") : "") + $". Sheet {WorkbookLayout.Sheet.Medicines}.";
    }

    private static IEnumerable<string> Since(SinceLastReview since)
    {
        yield return since.NewDays == 0
            ? $"No day after {TimeWords.Day(since.LastDay)} came in."
            : $"{since.NewDays} new care days, notes on {since.NewDaysWritten}. New illness: {(since.NewEpisodes.Count == 0 ? "none" : string.Join(", ", since.NewEpisodes))}. "
                + $"Feed gap kept: {Share(since.FeedGapThen)} until then, {Share(since.FeedGapSince)} since. Inhaler: {Share(since.InhalerGapThen)} until then, {Share(since.InhalerGapSince)} since.";
        if (since.Corrections + since.Answers > 0)
            yield return $"Cells of the last review corrected: {since.Corrections}. Questions answered: {since.Answers}. Sheets {WorkbookLayout.Sheet.WhatWasRead} and {WorkbookLayout.Sheet.QuestionsToCheck}.";
    }

    private static string Share(ShareKept share) => share.Proportion is { } kept
        ? FormattableString.Invariant($"{share.Kept} of {share.Judged} judged ({kept * 100:0} %, 95 % limits {share.Low * 100:0} to {share.High * 100:0} %)")
        : "none could be judged";
}
