using CareRecords.Findings;
using CareRecords.Workbooks.Building;
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
        var columns = Columns();
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
            IReadOnlyList<Column<AdherenceGroup>> groupColumns = [new("group", 16, g => CellContent.Of(g.Label)) { Wrap = true }, .. columns.Skip(1)];
            TableSheet.Write(book, sheet, GroupsTable, groupColumns, groups, at, setWidths: false);
        }

        PageDress.Apply(sheet, landscape: true, Blue);
        return place;
    }

    private static IReadOnlyList<Column<AdherenceGroup>> Columns() =>
    [
        new("week from", 16, g => CellContent.Of(g.From is { } from ? Weeks.MondayOf(from) : null)) { Format = Format.ShortDay },
        new("to", 12, g => CellContent.Of(g.To)) { Format = Format.ShortDay },
        .. Share("feed gap", g => g.FeedGap),
        .. Share("inhaler gap", g => g.InhalerGap),
        new("sessions done", 9, g => CellContent.Of(g.Sessions?.Done)) { Format = Format.Whole },
        new("sessions planned", 9, g => CellContent.Of(g.Sessions?.Planned)) { Format = Format.UpToTwo },
        new("sessions done of planned", 9, g => CellContent.Of(g.Sessions?.Proportion)) { Format = Format.Percent },
        new("days counted", 9, g => CellContent.Of(g.Sessions?.DaysCounted)) { Format = Format.Whole },
        new("days with all sessions", 9, g => CellContent.Of(g.DaysAllDone?.Kept)) { Format = Format.Whole },
        new("minutes done", 9, g => CellContent.Of(g.Minutes?.Done)) { Format = Format.UpToTwo },
        new("minutes planned", 9, g => CellContent.Of(g.Minutes?.Planned)) { Format = Format.UpToTwo },
    ];

    private static IEnumerable<Column<AdherenceGroup>> Share(string gap, Func<AdherenceGroup, ShareKept> share) =>
    [
        new($"{gap} kept", 8, g => CellContent.Of(share(g).Kept)) { Format = Format.Whole },
        new($"{gap} judged", 8, g => CellContent.Of(share(g).Judged)) { Format = Format.Whole },
        new($"{gap} cannot tell", 8, g => CellContent.Of(share(g).Unknown)) { Format = Format.Whole },
        new($"{gap} share kept", 8, g => CellContent.Of(share(g).Proportion)) { Format = Format.Percent },
        new($"{gap} share low", 8, g => CellContent.Of(share(g).PlainLow)) { Format = Format.Percent },
        new($"{gap} share high", 8, g => CellContent.Of(share(g).PlainHigh)) { Format = Format.Percent },
    ];
}
