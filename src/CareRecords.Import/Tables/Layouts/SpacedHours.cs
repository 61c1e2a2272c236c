using System.Text.RegularExpressions;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>"6 h 15" in the cells of a table is "6h15", wherever it stands among other words.</summary>
internal static partial class SpacedHours
{
    /// <summary>The block with such times written together; as it is where it has none.</summary>
    public static Block Closed(Block block) => !block.Rows.Any(r => r.Cells.Any(Has)) ? block : block with { Rows = [.. block.Rows.Select(Closed)] };

    /// <summary>The words with such times written together.</summary>
    public static string Closed(string text) => text.Contains(" h", StringComparison.OrdinalIgnoreCase) ? Apart().Replace(text, "$1h$2") : text;

    private static BlockRow Closed(BlockRow row)
    {
        if (!row.Cells.Any(Has)) return row;
        var line = row[0].Row with { Cells = [.. row[0].Row.Cells.Select(c => c.Kind == CellKind.Text && Apart().IsMatch(c.Text) ? Cell.Of(Closed(c.Text)) : c)] };
        return new BlockRow([.. row.Cells.Select(c => c with { Row = line })]);
    }

    private static bool Has(CellAt cell) => cell.Cell.Kind == CellKind.Text && cell.Cell.Text.Contains(" h", StringComparison.OrdinalIgnoreCase) && Apart().IsMatch(cell.Cell.Text);

    [GeneratedRegex(@"(?<![\d.,:])(\d{1,2}) h(?: ([0-5]\d))?(?!\w)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Apart();
}
