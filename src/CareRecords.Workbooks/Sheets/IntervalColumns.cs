using CareRecords.Records;
using CareRecords.Workbooks.Building;
using Heading = CareRecords.Workbooks.WorkbookLayout.Heading;

namespace CareRecords.Workbooks.Sheets;

/// <summary>What a row's times allow: earliest and latest, in local time.</summary>
internal static class IntervalColumns
{
    public static IEnumerable<Column<Numbered<T>>> StartAndEnd<T>(string table, string started, string ended)
        where T : CareEntry =>
    [
        .. Start<T>(table, started),
        .. Pair<T>(table, ended, Heading.EndedEarliest, Heading.EndedLatest, e => e.End),
    ];

    public static IEnumerable<Column<Numbered<T>>> Start<T>(string table, string started)
        where T : CareEntry => Pair<T>(table, started, Heading.Earliest, Heading.Latest, e => e.Start);

    private static IEnumerable<Column<Numbered<T>>> Pair<T>(string table, string shown, string earliest, string latest, Func<T, UncertainTime?> time)
        where T : CareEntry
    {
        _ = table;
        _ = shown;
        return
        [
            new(earliest, 16.5, r => CellContent.Of(time(r.Item)?.Earliest)) { Format = Look.Format.Time },
            new(latest, 16.5, r => CellContent.Of(time(r.Item)?.Latest)) { Format = Look.Format.Time },
        ];
    }
}
