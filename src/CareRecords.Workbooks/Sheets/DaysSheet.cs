using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Formula;
using static CareRecords.Workbooks.Building.Look;

namespace CareRecords.Workbooks.Sheets;

/// <summary>One row a care day, none left out.</summary>
internal static class DaysSheet
{
    public const string Table = "Days";

    /// <summary>Hidden working column: the plan's usual oxygen, else the one found in the records.</summary>
    public const string UsualOxygen = "usual oxygen";

    /// <summary>Hidden working column: the plan's stop value.</summary>
    public const string StopBelow = "stop below, %";

    /// <summary>Hidden working column: the Monday of the care day's week.</summary>
    public const string WeekFrom = "week from";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Days);
        var columns = Columns(rows);
        TableSheet.Dress(
            sheet, "Day by day",
            $"A care day starts at {rows.Findings.Span.DayStarts.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture)}. Counts are of what was written: a day marked 'no' is unknown, not nought. Oxygen in L/min, 0 is air.");
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Findings.Days);
        PageDress.Apply(sheet, landscape: true, Blue);
        return place;
    }

    /// <summary>Ends the heading of a hidden working column that a chart draws.</summary>
    public const string Chart = " (chart)";

    /// <summary>The columns that charts draw.</summary>
    private static readonly IReadOnlyList<(string Heading, Func<DayFinding, double?> Value)> Charted =
    [
        ("sessions planned", d => d.SessionsPlanned),
        ("median SpO2 at usual oxygen, %", d => d.MedianSpO2AtUsualOxygen),
        ("lowest SpO2, %", d => d.LowestSpO2),
        ("highest oxygen, L/min", d => d.HighestOxygen),
    ];

    private static string Day => This(Table, "care day");

    private static IReadOnlyList<Column<DayFinding>> Columns(ReviewRows rows) =>
    [
        new("care day", 15.5, d => CellContent.Of(d.Day).To(rows.FirstSessionOn(d.Day))) { Format = Format.Day },
        new("anything written", 9, d => CellContent.Of(d.HasRecords ? "yes" : "no").By(DayFormulas.AnythingWritten(Day))),
        new("illness", 7.5, d => CellContent.Of(d.Episode)),
        new("step", 6, d => CellContent.Of(d.Step)),
        Count("sessions done", d => d.SessionsDone, $"COUNTIFS(Sessions[care day],{Day})"),
        new("sessions planned", 8.6, d => CellContent.Of(d.SessionsPlanned).By(PlanFormulas.On(PlanItem.SessionsPerDay, Day))) { Format = Format.UpToTwo },
        new("minutes", 8.2, d => CellContent.Of(d.Minutes).By($"IF({DayFormulas.SessionsWithMinutes(Day)}=0,\"\",SUMIFS(Sessions[minutes in all],Sessions[care day],{Day}))")) { Format = Format.UpToTwo },
        new("minutes per area", 8, d => rows.Twins.MinutesPerAreaFollows(d) ? CellContent.Of(d.MinutesPerArea).ByArray(DayFormulas.MinutesPerArea(Day)) : CellContent.Of(d.MinutesPerArea)) { Format = Format.UpToTwo },
        new("minutes per area planned", 8.2, d => CellContent.Of(d.MinutesPerAreaPlanned).By(PlanFormulas.MinutesPerArea(rows.Log.Plan, rows.Findings.Adherence.UsualParts, Day))) { Format = Format.UpToTwo },
        Verdicts("feed gap kept", d => d.FeedGaps.Kept, "feed gap", FindingWords.Kept),
        Verdicts("feed gap short", d => d.FeedGaps.NotKept, "feed gap", FindingWords.Short),
        Verdicts("feed gap cannot tell", d => d.FeedGaps.Unknown, "feed gap", FindingWords.CannotTell),
        Verdicts("inhaler kept", d => d.InhalerGaps.Kept, "inhaler gap", FindingWords.Kept),
        Verdicts("inhaler not kept", d => d.InhalerGaps.NotKept, "inhaler gap", FindingWords.TooLate, FindingWords.Early, FindingWords.None),
        Verdicts("inhaler cannot tell", d => d.InhalerGaps.Unknown, "inhaler gap", FindingWords.CannotTell),
        Count("readings", d => d.Readings, $"COUNTIFS(Checks[care day],{Day},Checks[spo2],\">=0\")"),
        new("median SpO2 at usual oxygen, %", 10, d => rows.Twins.MedianAtUsualFollows(d) ? CellContent.Of(d.MedianSpO2AtUsualOxygen).ByArray(DayFormulas.MedianAtUsual(Day, This(Table, UsualOxygen))) : CellContent.Of(d.MedianSpO2AtUsualOxygen)) { Format = Format.UpToTwo },
        new("lowest SpO2, %", 8, d => CellContent.Of(d.LowestSpO2).By($"IF(COUNTIFS(Checks[care day],{Day},Checks[spo2],\">=0\")=0,\"\",{MinIfs}(Checks[spo2],Checks[care day],{Day}))")) { Format = Format.UpToTwo },
        new("highest oxygen, L/min", 8, d => CellContent.Of(d.HighestOxygen).By($"IF(COUNTIFS(Checks[care day],{Day},Checks[oxygen],\">=0\")=0,\"\",{MaxIfs}(Checks[oxygen],Checks[care day],{Day}))")) { Format = Format.Flow },
        new("signs", 36, d => CellContent.Of(string.Join("; ", d.Signs))) { Wrap = true },
        Count("not done, reason written", d => d.SessionsOmittedWithReason, $"COUNTIFS(NotDone[care day],{Day},NotDone[reason],\"?*\")"),
        Count("not done, no reason", d => d.SessionsOmittedWithoutReason, $"COUNTIFS(NotDone[care day],{Day})-COUNTIFS(NotDone[care day],{Day},NotDone[reason],\"?*\")"),
        Count("sessions without minutes", d => d.SessionsWithoutMinutes, $"COUNTIFS(Sessions[care day],{Day})-{DayFormulas.SessionsWithMinutes(Day)}"),
        Count("feeds", d => d.Feeds, $"COUNTIFS(Feeds[care day],{Day})"),
        Count("medicines", d => d.Doses, $"COUNTIFS(Medicines[care day],{Day})"),
        new("sessions done" + Chart, 9, d => CellContent.ForChart(d.HasRecords ? d.SessionsDone : null, $"IF({This(Table, "anything written")}=\"yes\",{This(Table, "sessions done")},\"\")")) { Role = ColumnRole.Working },
        .. Charted.Select(c => new Column<DayFinding>(c.Heading + Chart, 9, d => CellContent.ForChart(c.Value(d), This(Table, c.Heading))) { Role = ColumnRole.Working }),
        new(UsualOxygen, 9, d => CellContent.Of(rows.Log.Plan.NumberFor(PlanItem.UsualOxygen, d.Day) ?? rows.Findings.Baseline?.Oxygen)
            .By($"IFERROR({PlanFormulas.On(PlanItem.UsualOxygen, Day)}+0,{(rows.Findings.Baseline?.Oxygen is { } usual ? Number(usual) : "\"\"")})")) { Role = ColumnRole.Working },
        new(StopBelow, 9, d => CellContent.Of(rows.Log.Plan.NumberFor(PlanItem.StopSaturation, d.Day)).By(PlanFormulas.On(PlanItem.StopSaturation, Day))) { Role = ColumnRole.Working },
        new(WeekFrom, 12, d => CellContent.Of(Weeks.MondayOf(d.Day)).By($"{Day}-WEEKDAY({Day},2)+1")) { Role = ColumnRole.Working, Format = Format.ShortDay },
    ];

    private static Column<DayFinding> Count(string heading, Func<DayFinding, double> count, string formula) =>
        new(heading, 8.2, d => CellContent.Of(count(d)).By(formula)) { Format = Format.Whole };

    private static Column<DayFinding> Verdicts(string heading, Func<DayFinding, double> count, string gap, params string[] verdicts) =>
        Count(heading, count, string.Join('+', verdicts.Select(v => $"COUNTIFS(Gaps[care day],{Day},{Column(GapsSheet.Table, gap)},{Text(v)})")));
}
