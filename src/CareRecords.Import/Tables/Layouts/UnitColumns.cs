namespace CareRecords.Import.Tables.Layouts;

/// <summary>Puts the amounts of a table and the units that stand in a column of their own together: "4 | oz", "93 | %".</summary>
internal static class UnitColumns
{
    private const int LongestUnit = 12;

    private static readonly HashSet<string> Headings = new(["unit", "units", "uom", "unit of measure", "measure unit", "einheit", "eenheid", "unidad", "unité", "yunit"], StringComparer.OrdinalIgnoreCase);

    /// <summary>The block with each amount written with its unit, and the column of units left out.</summary>
    public static Block Joined(Block block)
    {
        var units = block.Columns.ToList().FindIndex(c => Headings.Contains(c.Own.Trim().TrimEnd('.', ':')));
        if (units < 1 || block.IsAcross) return block;
        // "ml through the button", "min each side" are more than a unit: they stay, and are read in their place.
        var more = block.Rows.Any(r => r[units].Cell.Words is { } unit && !IsUnit(unit));
        var amount = Enumerable.Range(0, units).LastOrDefault(i => block.Columns[i].Role is Role.Amount or Role.Minutes or Role.Millilitres or Role.Unknown or Role.Detail && IsNumbers(block, i), -1);
        if (amount < 0) return block;
        return block with
        {
            Columns = [.. block.Columns.Select((c, i) => i == units && !more ? c with { Role = Role.Ignore } : i == amount && c.Role == Role.Unknown ? c with { Role = Role.Amount } : c)],
            Rows = [.. block.Rows.Select(r => Joined(r, amount, units, more))],
        };
    }

    private static bool IsUnit(string unit) => unit.Length <= LongestUnit && unit.Count(c => c == ' ') <= 1;

    private static bool IsNumbers(Block block, int column)
    {
        var filled = block.Rows.Select(r => r[column].Cell).Where(c => !c.IsEmpty).ToList();
        return filled.Count > 0 && filled.Count(c => c.Text.Any(char.IsAsciiDigit) && !c.Text.Any(char.IsLetter)) * 3 >= filled.Count * 2;
    }

    private static BlockRow Joined(BlockRow row, int amount, int units, bool clear)
    {
        if (row[amount].Cell.IsEmpty || row[units].Cell.Words is not { } unit || !IsUnit(unit) || row[amount].Cell.Text.Any(char.IsLetter)) return row;
        var text = Cell.Of(row[amount].Cell.Words + (unit == "%" ? "" : " ") + unit);
        var cells = row[amount].Row.Cells.Select((c, i) => i == row[amount].Column ? text : clear && i == row[units].Column ? Cell.Empty : c).ToArray();
        return new BlockRow([.. row.Cells.Select((c, i) => i == amount || clear && i == units ? c with { Row = c.Row with { Cells = cells } } : c)]);
    }
}
