using CareRecords.Workbooks.Building;
using NodaTime;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The cells that a family may mend, with what may be typed there.</summary>
internal static class DataCells
{
    public static Column<Numbered<T>> Time<T>(string heading, Func<T, LocalDateTime?> at) => new(heading, 16.5, r => CellContent.Of(at(r.Item)))
    {
        Role = ColumnRole.Editable,
        Format = Look.Format.Time,
        Check = new CellCheck.Time(),
    };

    public static Column<Numbered<T>> Number<T>(string heading, double width, Func<T, double?> number, double low, double high, string unit) =>
        new(heading, width, r => CellContent.Of(number(r.Item)))
        {
            Role = ColumnRole.Editable,
            Format = Look.Format.UpToTwo,
            Check = new CellCheck.Number(low, high, unit),
        };

    public static Column<Numbered<T>> Words<T>(string heading, double width, Func<T, string?> words) =>
        new(heading, width, r => CellContent.Of(words(r.Item))) { Role = ColumnRole.Editable, Wrap = true };

    public static Column<Numbered<T>> Choice<T>(string heading, double width, Func<T, string?> words, params string[] choices) =>
        new(heading, width, r => CellContent.Of(words(r.Item))) { Role = ColumnRole.Editable, Check = new CellCheck.OneOf(choices) };

    public static string Use(string what) =>
        $"One row an event, {what}. Yellow cells may be mended; the next review lists what you changed.";
}
