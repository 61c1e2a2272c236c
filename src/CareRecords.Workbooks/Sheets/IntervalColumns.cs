using CareRecords.Records;
using CareRecords.Workbooks.Building;
using NodaTime;
using static CareRecords.Workbooks.Building.Formula;
using Heading = CareRecords.Workbooks.WorkbookLayout.Heading;

namespace CareRecords.Workbooks.Sheets;

/// <summary>
/// What a row's times allow, as formulas: a time that stands as it was read keeps the interval that the words gave, a time that a person typed over
/// it counts as exact. A formula is the same in every row and made once. The hidden working columns hold what was read and put both ends on the time line.
/// </summary>
internal static class IntervalColumns
{
    /// <summary>Minutes on the time line of the earliest and latest start, and of the earliest and latest end.</summary>
    public const string StartLow = "start low";
    public const string StartHigh = "start high";
    public const string EndLow = "end low";
    public const string EndHigh = "end high";
    public const string CareDay = "care day";

    public static IEnumerable<Column<Numbered<T>>> StartAndEnd<T>(ReviewRows rows, string table, string started, string ended)
        where T : CareEntry =>
    [
        .. Shown<T>(table, started, Heading.Earliest, Heading.Latest, e => e.Start),
        .. Shown<T>(table, ended, Heading.EndedEarliest, Heading.EndedLatest, e => e.End),
        .. AsRead<T>(started, Heading.Earliest, Heading.Latest, e => e.Start),
        .. AsRead<T>(ended, Heading.EndedEarliest, Heading.EndedLatest, e => e.End),
        CareDayOf<Numbered<T>>($"IF(ISNUMBER({This(table, started)}),{This(table, started)},{This(table, ended)})", r => rows.TimeLine.CareDay(r.Item.When.Stated)),
        .. OnTimeLine<T>(rows, table, Heading.Earliest, Heading.Latest, StartLow, StartHigh, e => e.Start),
        .. OnTimeLine<T>(rows, table, Heading.EndedEarliest, Heading.EndedLatest, EndLow, EndHigh, e => e.End),
    ];

    public static IEnumerable<Column<Numbered<T>>> Start<T>(ReviewRows rows, string table, string at)
        where T : CareEntry =>
    [
        .. Shown<T>(table, at, Heading.Earliest, Heading.Latest, e => e.Start),
        .. AsRead<T>(at, Heading.Earliest, Heading.Latest, e => e.Start),
        CareDayOf<Numbered<T>>(This(table, at), r => rows.TimeLine.CareDay(r.Item.When.Stated)),
        .. OnTimeLine<T>(rows, table, Heading.Earliest, Heading.Latest, StartLow, StartHigh, e => e.Start),
    ];

    /// <summary>The care day of a local time in another cell; empty when that holds no time.</summary>
    public static Column<TRow> CareDayOf<TRow>(string at, Func<TRow, LocalDate> day)
    {
        var formula = $"IF(ISNUMBER({at}),INT(ROUND(({at}-{ClockSheet.DayStarts})*86400,0)/86400),\"\")";
        return new(CareDay, 12, r => CellContent.Of(day(r)).By(formula)) { Role = ColumnRole.Working, Format = Look.Format.ShortDay };
    }

    private static IEnumerable<Column<Numbered<T>>> Shown<T>(string table, string shown, string earliest, string latest, Func<T, UncertainTime?> time)
        where T : CareEntry
    {
        var (from, to) = (Interval(table, shown, earliest), Interval(table, shown, latest));
        return
        [
            new(earliest, 16.5, r => CellContent.Of(time(r.Item)?.Earliest).By(from)) { Format = Look.Format.Time },
            new(latest, 16.5, r => CellContent.Of(time(r.Item)?.Latest).By(to)) { Format = Look.Format.Time },
        ];
    }

    private static string Interval(string table, string shown, string end) =>
        $"IF(ISNUMBER({This(table, shown)}),IF({This(table, shown)}={This(table, shown + " as read")},{This(table, end + " as read")},{This(table, shown)}),\"\")";

    private static IEnumerable<Column<Numbered<T>>> AsRead<T>(string shown, string earliest, string latest, Func<T, UncertainTime?> time)
        where T : CareEntry =>
    [
        new(shown + " as read", 16.5, r => CellContent.Of(time(r.Item)?.Stated)) { Role = ColumnRole.Working, Format = Look.Format.Time },
        new(earliest + " as read", 16.5, r => CellContent.Of(time(r.Item)?.Earliest)) { Role = ColumnRole.Working, Format = Look.Format.Time },
        new(latest + " as read", 16.5, r => CellContent.Of(time(r.Item)?.Latest)) { Role = ColumnRole.Working, Format = Look.Format.Time },
    ];

    private static IEnumerable<Column<Numbered<T>>> OnTimeLine<T>(
        ReviewRows rows, string table, string earliest, string latest, string low, string high, Func<T, UncertainTime?> time)
        where T : CareEntry
    {
        var (from, to) = (Minutes(This(table, earliest), "earliest from"), Minutes(This(table, latest), "latest from"));
        return
        [
            new(low, 12, r => CellContent.Of(time(r.Item) is { } t ? rows.TimeLine.Earliest(t.Earliest) : null).By(from)) { Role = ColumnRole.Working },
            new(high, 12, r => CellContent.Of(time(r.Item) is { } t ? rows.TimeLine.Latest(t.Latest) : null).By(to)) { Role = ColumnRole.Working },
        ];
    }

    private static string Minutes(string at, string from) =>
        $"IF(ISNUMBER({at}),ROUND((MIN({at},LOOKUP({at},{Column(ClockSheet.Table, from)},{Column(ClockSheet.Table, "until")}))-{ClockSheet.Start})*86400,0)/60-LOOKUP({at},{Column(ClockSheet.Table, from)},{Column(ClockSheet.Table, "offset")}),\"\")";
}
