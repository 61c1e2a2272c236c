using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The plan in words: what holds at the end, and what changed.</summary>
internal static class PlanWords
{
    private const string NotSaid = "the notes do not say";

    /// <summary>The value in force at the end of the period, with its date or "default, not your plan".</summary>
    public static CellContent InForce(ChildFindings findings, PlanItem item)
    {
        if (Last(findings, item) is not { } value) return CellContent.Of(NotSaid);
        var words = item == PlanItem.TargetSaturationLow && Last(findings, PlanItem.TargetSaturationHigh) is { } high
            ? $"{value.Value} to {high.Value} %"
            : $"{value.Value} {Unit(item)}".TrimEnd();
        return CellContent.Of(words + (value.IsDefault ? " (default, not your plan)" : value.From is { } from && from > findings.Span.From ? $" (since {TimeWords.Day(from)})" : ""));
    }

    /// <summary>Sentences on what changed: the plan's steps, oxygen, cells corrected.</summary>
    public static IEnumerable<string> Changes(ReviewRows rows)
    {
        var findings = rows.Findings;
        var any = false;
        foreach (var item in findings.Plan.Where(p => !p.IsDefault).GroupBy(p => p.Item))
        {
            var values = item.OrderBy(v => v.From ?? findings.Span.From).ToList();
            if (values.Count < 2) continue;
            any = true;
            yield return $"Plan, {values[0].Name}: {values[0].Value}" + string.Concat(values.Skip(1).Select(v => $", {v.Value} from {TimeWords.Day(v.From ?? findings.Span.From)}")) + ".";
        }

        if (!any) yield return "The plan did not change in what was written.";
        var flows = findings.Days.Where(d => d.HighestOxygen is not null).GroupBy(d => Weeks.MondayOf(d.Day)).Select(w => TimeWords.Number(w.Max(d => d.HighestOxygen)!.Value)).ToList();
        if (flows.Count > 1) yield return $"Highest oxygen written, week by week: {string.Join(", ", flows)} L/min.";
        if (rows.Log.Corrections.Count > 0) yield return $"{rows.Log.Corrections.Count} cells of the last review were corrected: sheet {WorkbookLayout.Sheet.WhatWasRead}.";
    }

    private static PlanValueInForce? Last(ChildFindings findings, PlanItem item) =>
        findings.Plan.Where(p => p.Item == item && (p.From is null || p.From <= findings.Span.To)).OrderBy(p => p.From ?? NodaTime.LocalDate.MinIsoValue).LastOrDefault();

    private static string Unit(PlanItem item) => item switch
    {
        PlanItem.SessionsPerDay => "",
        _ => PlanItems.Describe(item).Unit,
    };
}
