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

    public static IEnumerable<Column<Numbered<Feed>>> Columns(ReviewRows rows) =>
    [
        Working(Usual, f => UsualMinutes(rows, f), PlanFormulas.On(PlanItem.UsualFeedMinutes, Cell(IntervalColumns.CareDay))),
        Working(OnLow, f => f.Start is { } s ? rows.TimeLine.Earliest(s.Earliest) : rows.TimeLine.Earliest(f.End!.Earliest) - UsualMinutes(rows, f),
            Either(IntervalColumns.StartLow, $"{Cell(IntervalColumns.EndLow)}-{Cell(Usual)}")),
        Working(OnHigh, f => rows.TimeLine.Latest((f.Start ?? f.End!).Latest), Either(IntervalColumns.StartHigh, Cell(IntervalColumns.EndHigh))),
        Working(OffLow, f => rows.TimeLine.Earliest((f.End ?? f.Start!).Earliest), Either(IntervalColumns.EndLow, Cell(IntervalColumns.StartLow))),
        Working(OffHigh, f => f.End is { } e ? rows.TimeLine.Latest(e.Latest) : rows.TimeLine.Latest(f.Start!.Latest) + UsualMinutes(rows, f),
            Either(IntervalColumns.EndHigh, $"{Cell(IntervalColumns.StartHigh)}+{Cell(Usual)}")),
    ];

    private static string Cell(string heading) => This(FeedsSheet.Table, heading);

    private static string Either(string first, string otherwise) => $"IFERROR(IF(ISNUMBER({Cell(first)}),{Cell(first)},{otherwise}),\"\")";

    private static double UsualMinutes(ReviewRows rows, Feed feed) => rows.Log.Plan.NumberFor(PlanItem.UsualFeedMinutes, rows.TimeLine.CareDay(feed.When.Stated)) ?? 0;

    private static Column<Numbered<Feed>> Working(string heading, Func<Feed, double> value, string formula) =>
        new(heading, 12, r => CellContent.Of(value(r.Item)).By(formula)) { Role = ColumnRole.Working };
}
