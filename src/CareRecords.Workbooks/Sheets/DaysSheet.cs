using CareRecords.Findings;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;

namespace CareRecords.Workbooks.Sheets;

/// <summary>One row a care day, none left out.</summary>
internal static class DaysSheet
{
    public const string Table = "Days";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Days);
        var columns = Columns();
        TableSheet.Dress(
            sheet, "Day by day",
            $"A care day starts at {rows.Findings.Span.DayStarts.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture)}. An empty cell was not written; it is not a nought. Oxygen in L/min, 0 is air.");
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Findings.Days);
        PageDress.Apply(sheet, landscape: true, Blue);
        return place;
    }

    private static IReadOnlyList<Column<DayFinding>> Columns() =>
    [
        new("care day", 16, d => CellContent.Of(d.Day)) { Format = Format.Day },
        new("anything written", 8, d => CellContent.Of(d.HasRecords ? "yes" : "no")),
        new("illness", 8, d => CellContent.Of(d.Episode)),
        new("step", 6, d => CellContent.Of(d.Step)),
        new("sessions done", 9, d => CellContent.Of(d.SessionsDone)) { Format = Format.Whole },
        new("sessions planned", 9, d => CellContent.Of(d.SessionsPlanned)) { Format = Format.UpToTwo },
        new("not done, reason written", 9, d => CellContent.Of(d.SessionsOmittedWithReason)) { Format = Format.Whole },
        new("not done, no reason", 9, d => CellContent.Of(d.SessionsOmittedWithoutReason)) { Format = Format.Whole },
        new("minutes", 9, d => CellContent.Of(d.Minutes)) { Format = Format.UpToTwo },
        new("sessions without minutes", 9, d => CellContent.Of(d.SessionsWithoutMinutes)) { Format = Format.Whole },
        new("minutes per area", 9, d => CellContent.Of(d.MinutesPerArea)) { Format = Format.UpToTwo },
        new("minutes per area planned", 9, d => CellContent.Of(d.MinutesPerAreaPlanned)) { Format = Format.UpToTwo },
        new("feed gap kept", 8, d => CellContent.Of(d.FeedGaps.Kept)) { Format = Format.Whole },
        new("feed gap short", 8, d => CellContent.Of(d.FeedGaps.NotKept)) { Format = Format.Whole },
        new("feed gap cannot tell", 8, d => CellContent.Of(d.FeedGaps.Unknown)) { Format = Format.Whole },
        new("inhaler kept", 8, d => CellContent.Of(d.InhalerGaps.Kept)) { Format = Format.Whole },
        new("inhaler not kept", 8, d => CellContent.Of(d.InhalerGaps.NotKept)) { Format = Format.Whole },
        new("inhaler cannot tell", 8, d => CellContent.Of(d.InhalerGaps.Unknown)) { Format = Format.Whole },
        new("readings", 9, d => CellContent.Of(d.Readings)) { Format = Format.Whole },
        new("median SpO2 at usual oxygen, %", 10, d => CellContent.Of(d.MedianSpO2AtUsualOxygen)) { Format = Format.UpToTwo },
        new("lowest SpO2, %", 8, d => CellContent.Of(d.LowestSpO2)) { Format = Format.UpToTwo },
        new("highest oxygen, L/min", 8, d => CellContent.Of(d.HighestOxygen)) { Format = Format.Flow },
        new("feeds", 7, d => CellContent.Of(d.Feeds)) { Format = Format.Whole },
        new("medicines", 9, d => CellContent.Of(d.Doses)) { Format = Format.Whole },
        new("signs", 40, d => CellContent.Of(string.Join("; ", d.Signs))) { Wrap = true },
    ];
}
