using CareRecords.Findings;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Sentences on what changed: since the last review where one came in, then the plan's steps and oxygen within the period.</summary>
internal static class ChangeWords
{
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
            if (values.Count < 2) continue;
            any = true;
            yield return $"Plan, {values[0].Name}: {values[0].Value}" + string.Concat(values.Skip(1).Select(v => $", {v.Value} from {TimeWords.Day(v.From ?? findings.Span.From)}")) + ".";
        }

        if (!any) yield return "The plan did not change in what was written.";
        var flows = findings.Days.Where(d => d.HighestOxygen is not null).GroupBy(d => Weeks.MondayOf(d.Day))
            .Select(w => $"{TimeWords.Day(w.Key)} {TimeWords.Number(w.Max(d => d.HighestOxygen)!.Value)}").ToList();
        if (flows.Count > 1) yield return $"Highest oxygen written, L/min, in the week from {string.Join("; ", flows)}.";
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
