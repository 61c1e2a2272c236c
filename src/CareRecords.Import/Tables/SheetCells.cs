using System.Globalization;
using ExcelDataReader;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Import.Tables;

/// <summary>Turns a workbook's cells into ours: real dates and times kept as such, numbers with the words that the sheet shows.</summary>
internal static class SheetCells
{
    private static readonly LocalDateTimePattern Moment = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");
    private static readonly LocalTimePattern TimeOfDay = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    private static readonly LocalDate NoDay = new(1900, 1, 1);

    /// <summary>The row that the reader stands on, without the empty cells at its end.</summary>
    public static GridRow Row(IExcelDataReader reader, int number, int columns)
    {
        var used = columns;
        while (used > 0 && reader.GetValue(used - 1) is null) used--;
        if (used == 0) return new GridRow(number, 1, [], "");
        var cells = new Cell[used];
        for (var i = 0; i < used; i++) cells[i] = Of(reader.GetValue(i), reader.GetNumberFormatString(i));
        return new GridRow(number, 1, cells, string.Join(" | ", cells.Select(c => c.Text)));
    }

    private static Cell Of(object? value, string? format) => value switch
    {
        null => Cell.Empty,
        string text => Cell.Of(text),
        double number => OfNumber(number, format),
        int number => OfNumber(number, format),
        bool flag => Cell.Of(flag ? "yes" : "no"),
        DateTime at => OfMoment(at, format),
        TimeSpan time => OfSpan(time),
        _ => Cell.Of(Convert.ToString(value, CultureInfo.InvariantCulture) ?? ""),
    };

    private static Cell OfNumber(double number, string? format) =>
        double.IsFinite(number) ? new Cell(CellKind.Number, Shown(number, format), number, default) : Cell.Empty;

    // Only formats that change how a time or a share reads: "0.00" shows 7.1 as 7.10, "0000" shows 710 as 0710.
    private static string Shown(double number, string? format)
    {
        if (format is not null && format.EndsWith('%') && format.AsSpan(0, format.Length - 1).IndexOfAnyExcept('0', '.') < 0)
            return (number * 100).ToString("0.##", CultureInfo.InvariantCulture) + "%";
        return format is { Length: > 1 } && format.AsSpan().IndexOfAnyExcept('0', '.') < 0 && format[0] == '0'
            ? number.ToString(format, CultureInfo.InvariantCulture)
            : number.ToString("0.###############", CultureInfo.InvariantCulture);
    }

    // A sheet stores a time as a share of a day: what is read back may be a fraction of a second off.
    private static Cell OfMoment(DateTime at, string? format)
    {
        var rounded = LocalDateTime.FromDateTime(at > DateTime.MaxValue.AddSeconds(-1) ? at : at.AddMilliseconds(500));
        rounded = rounded.PlusNanoseconds(-rounded.NanosecondOfSecond);
        if (rounded.Year < 1905) return OfTime(rounded.TimeOfDay);
        var showsTime = format is not null && format.Contains('h', StringComparison.OrdinalIgnoreCase);
        return rounded.TimeOfDay == LocalTime.Midnight && !showsTime
            ? new Cell(CellKind.Date, LocalDatePattern.Iso.Format(rounded.Date), 0, rounded)
            : new Cell(CellKind.Moment, Moment.Format(rounded), 0, rounded);
    }

    private static Cell OfSpan(TimeSpan time)
    {
        var minutes = (long)Math.Round(time.TotalMinutes);
        return minutes is >= 0 and < 24 * 60
            ? OfTime(LocalTime.FromMinutesSinceMidnight((int)minutes))
            : Cell.Of(FormattableString.Invariant($"{minutes / 60}:{Math.Abs(minutes % 60):00}"));
    }

    private static Cell OfTime(LocalTime time) => new(CellKind.TimeOfDay, TimeOfDay.Format(time), 0, NoDay.At(time));
}
