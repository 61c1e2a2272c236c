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

    /// <summary>"lower 4, upper 3, vibration 1" where the plan sets a part apart (the dates stand under what changed); else the minutes of every area.</summary>
    public static CellContent MinutesInForce(ChildFindings findings)
    {
        if (PlanItems.MinutesOfParts.All(i => Last(findings, i) is null)) return InForce(findings, PlanItem.MinutesPerArea);
        string Of(PlanItem item) => (Last(findings, item) ?? Last(findings, PlanItem.MinutesPerArea))?.Value ?? "not said";
        var (lower, upper) = (Of(PlanItem.MinutesLower), Of(PlanItem.MinutesUpper));
        return CellContent.Of((lower == upper ? $"{lower} minutes" : $"lower {lower}, upper {upper}") + $", vibration {Of(PlanItem.MinutesVibration)}");
    }

    private static PlanValueInForce? Last(ChildFindings findings, PlanItem item) =>
        findings.Plan.Where(p => p.Item == item && (p.From is null || p.From <= findings.Span.To)).OrderBy(p => p.From ?? NodaTime.LocalDate.MinIsoValue).LastOrDefault();

    private static string Unit(PlanItem item) => item switch
    {
        PlanItem.SessionsPerDay => "",
        _ => PlanItems.Describe(item).Unit,
    };
}
