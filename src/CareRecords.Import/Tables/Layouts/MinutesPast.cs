using System.Globalization;
using System.Text.RegularExpressions;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>":20 CPT" in the row of seven in the evening: twenty past that hour. The hour is written before such minutes.</summary>
internal static partial class MinutesPast
{
    /// <summary>The block with the hours of such minutes; as it is where its rows are no hours, or no cell has them.</summary>
    public static Block Written(Block block)
    {
        var time = block.Columns.ToList().FindIndex(c => c.Role == Role.Time);
        if (time < 0 || !block.Rows.Any(r => r.Cells.Any(c => c.Cell.Kind == CellKind.Text && HasBare(c.Cell.Text) && Minutes().IsMatch(c.Cell.Text)))) return block;
        // "F off :15": minutes behind what was done are read with it.
        if (block.Rows.Any(r => r.Cells.Any(c => c.Cell.Kind == CellKind.Text && c.Cell.Text.Contains(" :", StringComparison.Ordinal) && Behind().IsMatch(c.Cell.Text)))) return block;
        return block with { Rows = [.. block.Rows.Select(r => Written(r, time))] };
    }

    private static bool HasBare(string text) => text.IndexOf(':', StringComparison.Ordinal) is >= 0 and var first && (first == 0 || text[first - 1] is ' ' or '(' or '\n' || text.IndexOf(':', first + 1) > 0);

    private static BlockRow Written(BlockRow row, int time)
    {
        if (HourGrid.HourOf(row[time].Cell) is not { Minute: 0, Hour: <= 23 and var hour } || !row.Cells.Any(c => c.Cell.Kind == CellKind.Text && Minutes().IsMatch(c.Cell.Text))) return row;
        var past = hour.ToString("00", CultureInfo.InvariantCulture) + ":";
        return new BlockRow([.. row.Cells.Select((c, i) => i == time || c.Cell.Kind != CellKind.Text || !Minutes().IsMatch(c.Cell.Text) ? c
            : c with { Row = c.Row with { Cells = [.. c.Row.Cells.Select((x, n) => n == c.Column ? Cell.Of(Minutes().Replace(x.Text, m => past + m.Groups[1].Value)) : x)] } })]);
    }

    [GeneratedRegex(@"[\p{L}\d%] :[0-5]\d(?:$|[\s,])", RegexOptions.CultureInvariant)]
    private static partial Regex Behind();

    [GeneratedRegex(@"(?<![^\s(]):([0-5]\d)(?![\d:])", RegexOptions.CultureInvariant)]
    private static partial Regex Minutes();
}
