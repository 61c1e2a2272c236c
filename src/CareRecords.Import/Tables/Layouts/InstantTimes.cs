using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Puts stamps with their distance from Greenwich on the child's clock: "2026-04-06T06:30:00+03:00", "2026-04-10T03:30:00Z". An app that writes the one may
/// write the other after an update; both are instants and mean one clock at home.
/// </summary>
internal static partial class InstantTimes
{
    /// <summary>The block with such cells as dates and times of the zone; as it is where none stands in it.</summary>
    public static Block Local(Block block, DateTimeZone zone)
    {
        if (!block.Rows.Take(50).Any(r => r.Cells.Any(c => c.Cell.Kind == CellKind.Text && Stamp().IsMatch(c.Cell.Text)))) return block;
        return block with { Rows = [.. block.Rows.Select(r => new BlockRow([.. r.Cells.Select(c => Local(c, zone))]))] };
    }

    private static CellAt Local(CellAt at, DateTimeZone zone)
    {
        if (at.Cell.Kind != CellKind.Text || Read(at.Cell.Text, zone) is not { } local) return at;
        var cells = at.Row.Cells.ToArray();
        cells[at.Column] = new Cell(CellKind.Moment, at.Cell.Text, 0, local);
        return at with { Row = at.Row with { Cells = cells } };
    }

    /// <summary>The time on the zone's clock, to the minute; null for words that are no such stamp.</summary>
    public static LocalDateTime? Read(string text, DateTimeZone zone)
    {
        var found = Stamp().Match(text);
        if (!found.Success) return null;
        var written = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm").Parse($"{found.Groups[1].Value} {found.Groups[2].Value}");
        if (!written.Success) return null;
        var distance = found.Groups[3].Value is "Z" or "z" ? Offset.Zero
            : Offset.FromHoursAndMinutes(Sign(found) * Number(found, 5), Sign(found) * Number(found, 6));
        return written.Value.WithOffset(distance).ToInstant().InZone(zone).LocalDateTime;
    }

    private static int Sign(Match found) => found.Groups[4].Value == "-" ? -1 : 1;

    private static int Number(Match found, int group) => found.Groups[group].Success ? int.Parse(found.Groups[group].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture) : 0;

    [GeneratedRegex(@"^\s*(\d{4}-\d{2}-\d{2})[T ](\d{2}:\d{2})(?::\d{2}(?:[.,]\d+)?)?\s*(Z|z|([+-])(0\d|1[0-4]):?([0-5]\d)?)\s*$")]
    private static partial Regex Stamp();
}
