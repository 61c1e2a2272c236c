using CareRecords.Records;
using static CareRecords.Workbooks.Building.Formula;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The plan's number on a care day, as a formula over the sheet Plan: the latest row for the item that holds by then, else the starting value.</summary>
internal static class PlanFormulas
{
    /// <summary>Starting values are named cells: Start_feed_gap_minutes and so on.</summary>
    public static string StartName(PlanItem item) => "Start_" + PlanItems.Describe(item).Name.Replace(' ', '_').Replace('-', '_');

    /// <param name="item">A numeric item.</param>
    /// <param name="day">The formula of the care day.</param>
    /// <param name="otherwise">What holds where the plan does not say; null: the item's starting value, else nothing.</param>
    public static string On(PlanItem item, string day, string? otherwise = null)
    {
        var items = $"{Column(PlanSheet.Table, "item")},{Text(PlanItems.Describe(item).Name)}";
        var from = Column(PlanSheet.Table, PlanSheet.HoldsFrom);
        otherwise ??= PlanItems.Describe(item).Default is null ? "\"\"" : StartName(item);
        return $"IFERROR(AVERAGEIFS({Column(PlanSheet.Table, PlanSheet.Number)},{items},{from},{MaxIfs}({from},{items},{from},\"<=\"&{day})),{otherwise})";
    }

    /// <summary>Minutes planned for a part: the part's own item where the plan has it, else the minutes of every area.</summary>
    public static string MinutesOf(CarePlan plan, PlanItem part, string day)
    {
        var everyArea = On(PlanItem.MinutesPerArea, day);
        return HasRow(plan, part) ? On(part, day, everyArea) : everyArea;
    }

    /// <summary>Median minutes planned over the parts usually treated.</summary>
    public static string MinutesPerArea(CarePlan plan, IReadOnlyList<(PlanItem Item, int Parts)> usual, string day)
    {
        if (!usual.Any(u => HasRow(plan, u.Item))) return On(PlanItem.MinutesPerArea, day);
        var fewest = usual.Min(u => u.Parts);
        var each = usual.All(u => u.Parts % fewest == 0) ? fewest : 1;
        return $"IFERROR(MEDIAN({string.Join(',', usual.SelectMany(u => Enumerable.Repeat(MinutesOf(plan, u.Item, day), u.Parts / each)))}),\"\")";
    }

    private static bool HasRow(CarePlan plan, PlanItem part) => part != PlanItem.MinutesPerArea && plan.Rows.Any(r => r.Item == part);
}
