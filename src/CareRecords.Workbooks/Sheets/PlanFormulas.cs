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
    public static string On(PlanItem item, string day)
    {
        var items = $"{Column(PlanSheet.Table, "item")},{Text(PlanItems.Describe(item).Name)}";
        var from = Column(PlanSheet.Table, PlanSheet.HoldsFrom);
        var otherwise = PlanItems.Describe(item).Default is null ? "\"\"" : StartName(item);
        return $"IFERROR(AVERAGEIFS({Column(PlanSheet.Table, PlanSheet.Number)},{items},{from},{MaxIfs}({from},{items},{from},\"<=\"&{day})),{otherwise})";
    }
}
