using CareRecords.Records;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Formula;

namespace CareRecords.Workbooks.Sheets;

/// <summary>
/// Hidden working columns of the feeds: between which minutes of the time line a feed went on and went off. A feed with only a start goes off
/// between that start and the plan's usual feed minutes after it; one with only an end went on at most that long before.
/// </summary>
internal static class FeedOnOff
{
    public const string OnLow = "on low";
    public const string OnHigh = "on high";
    public const string OffLow = "off low";
    public const string OffHigh = "off high";
    private const string Usual = "usual feed minutes";

    private const string Longest = "longest, min";

    public static IEnumerable<Column<Numbered<Feed>>> Columns(ReviewRows rows) =>
    [
        Working(Usual, f => rows.Twins.UsualFeedMinutes(f), PlanFormulas.On(PlanItem.UsualFeedMinutes, Cell(IntervalColumns.CareDay))),
        Working(Longest, f => rows.Twins.LongestMinutes(f), LongestFormula),
        Working(OnLow, f => rows.Twins.FeedTimes(f).OnLow, Either(IntervalColumns.StartLow, $"MIN({Cell(IntervalColumns.StartLow)},{Cell(IntervalColumns.EndHigh)})", $"{Cell(IntervalColumns.EndLow)}-{Cell(Longest)}")),
        Working(OnHigh, f => rows.Twins.FeedTimes(f).OnHigh, Either(IntervalColumns.StartHigh, $"MIN({Cell(IntervalColumns.StartHigh)},{Cell(IntervalColumns.EndHigh)})", Cell(IntervalColumns.EndHigh))),
        Working(OffLow, f => rows.Twins.FeedTimes(f).OffLow, Either(IntervalColumns.EndLow, $"MAX({Cell(IntervalColumns.EndLow)},{Cell(IntervalColumns.StartLow)})", Cell(IntervalColumns.StartLow))),
        Working(OffHigh, f => rows.Twins.FeedTimes(f).OffHigh, Either(IntervalColumns.EndHigh, $"MAX({Cell(IntervalColumns.EndHigh)},{Cell(IntervalColumns.StartLow)})", $"{Cell(IntervalColumns.StartHigh)}+{Cell(Longest)}")),
    ];

    /// <summary>Usual minutes, or the volume over the rate where that is longer; a rate alone may run for twelve hours.</summary>
    private static string LongestFormula =>
        $"IF(ISNUMBER({Cell("ml per hour")}),IF(ISNUMBER({Cell("ml")}),MAX({Cell(Usual)},IFERROR(60*{Cell("ml")}/{Cell("ml per hour")},0)),IF(ISNUMBER({Cell("ended")}),{Cell(Usual)},MAX({Cell(Usual)},720))),{Cell(Usual)})";

    private static string Cell(string heading) => This(FeedsSheet.Table, heading);

    private static string Either(string first, string then, string otherwise) => $"IFERROR(IF(ISNUMBER({Cell(first)}),{then},{otherwise}),\"\")";

    private static Column<Numbered<Feed>> Working(string heading, Func<Feed, double> value, string formula) =>
        new(heading, 12, r => CellContent.Of(value(r.Item)).By(formula)) { Role = ColumnRole.Working };
}
