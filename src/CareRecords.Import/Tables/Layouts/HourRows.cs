using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Tells a chart with a row for each hour from a list of times: what stands beside "0600" there happened within that hour.</summary>
internal static partial class HourRows
{
    private const int Fewest = 5;

    /// <summary>True where every time is a whole hour and either the heading says hour or hours stand with nothing beside them.</summary>
    public static bool Are(Block block)
    {
        if (block.IsAcross) return false;
        var columns = block.Columns.ToList();
        var time = columns.FindIndex(c => c.Role is Role.Time or Role.Start);
        if (time < 0 || columns.Exists(c => c.Role is Role.End or Role.Kind)) return false;
        var hours = block.Rows.Where(r => !r[time].Cell.IsEmpty && CellTimes.Read(r[time].Cell).Date is null).ToList();
        if (hours.Count < Fewest || !hours.TrueForAll(r => HourGrid.HourOf(r[time].Cell) is { Minute: 0 })) return false;
        return SaysHour(columns[time].Own) || hours.Exists(r => r.Cells.Where((c, i) => i != time && columns.ElementAtOrDefault(i)?.Role != Role.Date).All(c => c.Cell.IsEmpty));
    }

    /// <summary>True for the heading of hours.</summary>
    public static bool SaysHour(string heading) => Lexicon.Split(heading).Any(w => w is "hour" or "hours" or "hr" or "hrs" or "hourly" or "slot");

    /// <summary>
    /// Reads the cells of an hour's row that say themselves when within the hour ("0710 P LL3 RL3", "pump on 1930, 60/hr"), each at its own time, and gives the row
    /// without them.
    /// </summary>
    public static BlockRow WithoutOwnClocks(BlockRow row, UncertainTime hour, BlockReading reading, FreeWords words)
    {
        List<CellAt>? rest = null;
        for (var i = 0; i < row.Cells.Count; i++)
        {
            var cell = row.Cells[i];
            if (reading.Block.Columns.ElementAtOrDefault(i)?.Role is not (Role.Session or Role.Dose or Role.Medicine or Role.Feed or Role.FeedStart or Role.FeedEnd or Role.Millilitres) || cell.Cell.Words is not { } text || !text.Any(char.IsLetter) || OwnClock(text, hour.Stated.Hour) is not { } own) continue;
            var at = UncertainTime.Exactly(hour.Stated.Date.At(own.At));
            // Words without a figure need their heading among them: "off" under "Feed".
            var said = own.Words.Any(char.IsAsciiDigit) ? own.Words : $"{reading.Block.Columns[i].Own} {own.Words}";
            if (words.Told(said, reading.Block.Columns[i].Own, at, cell.Place.File).Count > 0 && words.Read(cell, reading.Block.Columns[i].Own, at.Stated.Date, at, keepAll: true, said)) (rest ??= [.. row.Cells])[i] = new CellAt(cell.Place, cell.Row, -1);
        }

        return rest is null ? row : new BlockRow(rest);
    }

    // The one word of a text that is a clock time within the hour, and the text without it.
    private static (LocalTime At, string Words)? OwnClock(string text, int hour)
    {
        (LocalTime At, string Words)? found = null;
        foreach (System.Text.RegularExpressions.Match match in Clock().Matches(text))
        {
            var (hours, minutes) = (int.Parse(match.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture), int.Parse(match.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture));
            if (hours != hour || minutes > 59) continue;
            if (found is not null) return null;
            found = (new LocalTime(hours, minutes), (text[..match.Index].TrimEnd() + text[(match.Index + match.Length)..]).Trim(' ', ',', ':', '-'));
        }

        return found is { Words.Length: > 0 } ? found : null;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"(?<![\d:./])(?<!\d,)(\d{2})[:.h]?(\d{2})(?![\d:./]|,\d)(?!\s*(?:ml|mg|mcg)\b)")]
    private static partial System.Text.RegularExpressions.Regex Clock();
}
