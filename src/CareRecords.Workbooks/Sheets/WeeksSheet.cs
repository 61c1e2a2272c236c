using CareRecords.Findings;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Formula;
using static CareRecords.Workbooks.Building.Look;

namespace CareRecords.Workbooks.Sheets;

/// <summary>One row a week, then the same measures for other groups of sessions.</summary>
internal static class WeeksSheet
{
    public const string Table = "Weeks";
    public const string GroupsTable = "Groups";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Weeks);
        var adherence = rows.Findings.Adherence;
        var columns = Columns(Table, live: true, hasPlan: adherence.ByWeek.All(w => w.DaysAllDone is not null));
        TableSheet.Dress(
            sheet, "Week by week",
            "Shares are of the sessions that could be judged; 'cannot tell' stands beside them. 95 % limits: Wilson (1927). Few sessions give wide limits.");
        var place = TableSheet.Write(book, sheet, Table, columns, adherence.ByWeek);
        IReadOnlyList<AdherenceGroup> groups = [.. adherence.ByState, .. adherence.ByTimeOfDay, .. adherence.ByWriter];
        if (groups.Count > 0)
        {
            var at = place.LastRow + 3;
            book.Put(sheet.Cell(at - 1, 1), "The same by illness and well days, by part of the day, and by who wrote it. Groups differ in many ways: nothing here says why.");
            sheet.Cell(at - 1, 1).Style.Font.Italic = true;
            IReadOnlyList<Column<AdherenceGroup>> groupColumns = [new("group", 16, g => CellContent.Of(g.Label)) { Wrap = true }, .. Columns(GroupsTable, live: false, hasPlan: false).Skip(1)];
            TableSheet.Write(book, sheet, GroupsTable, groupColumns, groups, at, setWidths: false);
        }

        PageDress.Apply(sheet, landscape: true, Blue);
        return place;
    }

    private static string Week => This(Table, "week from");

    /// <summary>The columns of a group; those of weeks are formulas over Gaps and Days.</summary>
    private static IReadOnlyList<Column<AdherenceGroup>> Columns(string table, bool live, bool hasPlan) =>
    [
        new("week from", 16, g => CellContent.Of(g.From is { } from ? Weeks.MondayOf(from) : null)) { Format = Format.ShortDay },
        new("to", 12, g => CellContent.Of(g.To)) { Format = Format.ShortDay },
        .. Share(table, live, "feed gap", g => g.FeedGap),
        .. Share(table, live, "inhaler gap", g => g.InhalerGap),
        Live("sessions done", Format.Whole, g => g.Sessions?.Done, live ? $"IF({CountedDays}=0,SUMIFS(Days[sessions done],Days[week from],{Week}),{DaysCounted("Days[sessions done]")})" : null),
        Live("sessions planned", Format.UpToTwo, g => g.Sessions?.Planned, live ? $"IF({CountedDays}=0,\"\",{DaysCounted("Days[sessions planned]")})" : null),
        Live("sessions done of planned", Format.Percent, g => g.Sessions?.Proportion, $"IFERROR({This(table, "sessions done")}/{This(table, "sessions planned")},\"\")"),
        Live("days counted", Format.Whole, g => g.Sessions?.DaysCounted, live ? CountedDays : null),
        Live("days with all sessions", Format.Whole, g => g.DaysAllDone?.Kept, live && hasPlan ? $"SUMPRODUCT((Days[week from]={Week})*(Days[anything written]=\"yes\")*ISNUMBER(Days[sessions planned])*(Days[sessions planned]>0)*(Days[sessions done]>=Days[sessions planned]))" : null),
        Live("minutes done", Format.UpToTwo, g => g.Minutes?.Done, live ? MinutesCounted($"Gaps[{GapsSheet.MinutesCompared}]") : null),
        Live("minutes planned", Format.UpToTwo, g => g.Minutes?.Planned, live ? MinutesCounted($"Gaps[{GapsSheet.MinutesPlanned}]") : null),
        Live("minutes planned, not written", Format.UpToTwo, g => g.Minutes?.NotWritten, live ? $"IF(COUNTIFS({MinutesOfWeek})=0,\"\",SUMIFS(Gaps[{GapsSheet.MinutesNotWritten}],Gaps[week from],{Week}))" : null),
        .. live ? Charted : [],
    ];

    private static IEnumerable<Column<AdherenceGroup>> Charted =>
    [
        ForChart("feed gap share kept", g => g.FeedGap.Proportion), ForChart("feed gap share low", g => g.FeedGap.PlainLow), ForChart("feed gap share high", g => g.FeedGap.PlainHigh),
        ForChart("inhaler gap share kept", g => g.InhalerGap.Proportion), ForChart("inhaler gap share low", g => g.InhalerGap.PlainLow), ForChart("inhaler gap share high", g => g.InhalerGap.PlainHigh),
    ];

    private static Column<AdherenceGroup> ForChart(string heading, Func<AdherenceGroup, double?> value) =>
        new(heading + DaysSheet.Chart, 9, g => CellContent.ForChart(value(g), This(Table, heading))) { Role = ColumnRole.Working };

    private static string CountedDays => $"COUNTIFS(Days[week from],{Week},Days[anything written],\"yes\",Days[sessions planned],\">0\")";

    private static string DaysCounted(string column) => $"SUMIFS({column},Days[week from],{Week},Days[anything written],\"yes\",Days[sessions planned],\">0\")";

    /// <summary>Over the week's sessions with minutes to set against the plan; empty when there is none.</summary>
    private static string MinutesCounted(string column) => $"IF(COUNTIFS({MinutesOfWeek})=0,\"\",SUMIFS({column},{MinutesOfWeek}))";

    private static string MinutesOfWeek => $"Gaps[week from],{Week},Gaps[{GapsSheet.MinutesCompared}],\">=0\",Gaps[{GapsSheet.MinutesPlanned}],\">0\"";

    private static Column<AdherenceGroup> Live(string heading, string format, Func<AdherenceGroup, double?> value, string? formula) =>
        new(heading, 9, g => formula is null ? CellContent.Of(value(g)) : CellContent.Of(value(g)).By(formula)) { Format = format };

    private static IEnumerable<Column<AdherenceGroup>> Share(string table, bool live, string gap, Func<AdherenceGroup, ShareKept> share)
    {
        string InWeek(string verdict) => $"COUNTIFS(Gaps[week from],{Week},{Column(GapsSheet.Table, gap)},{verdict})";
        var (kept, judged) = (This(table, $"{gap} kept"), This(table, $"{gap} judged"));
        return
        [
            Live($"{gap} kept", Format.Whole, g => share(g).Kept, live ? InWeek(Text(FindingWords.Kept)) : null),
            Live($"{gap} judged", Format.Whole, g => share(g).Judged, live ? $"{InWeek("\"?*\"")}-{InWeek(Text(FindingWords.CannotTell))}" : null),
            Live($"{gap} cannot tell", Format.Whole, g => share(g).Unknown, live ? InWeek(Text(FindingWords.CannotTell)) : null),
            Live($"{gap} share kept", Format.Percent, g => share(g).Proportion, $"IF({judged}=0,\"\",{kept}/{judged})"),
            Live($"{gap} share low", Format.Percent, g => share(g).PlainLow, WilsonFormula.Limit(kept, judged, upper: false)),
            Live($"{gap} share high", Format.Percent, g => share(g).PlainHigh, WilsonFormula.Limit(kept, judged, upper: true)),
        ];
    }
}
