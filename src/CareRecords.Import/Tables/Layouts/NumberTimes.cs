namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Mends numbers meant as times that lost their noughts: in a column of 610 and 1640 a cell of 15 is a quarter past midnight, where the rows around it
/// allow that and not three in the afternoon. Fewer than ten could be an hour too: it is left to be asked about.
/// </summary>
internal static class NumberTimes
{
    private const int FewestOfHundreds = 3;

    /// <summary>The block with such numbers written with four figures; with "0006?" where it stays open.</summary>
    public static Block Mended(Block block)
    {
        if (block.IsAcross) return block;
        for (var c = 0; c < block.Columns.Count; c++)
        {
            if (block.Columns[c].Role is not (Role.Time or Role.Start or Role.End)) continue;
            var numbers = block.Rows.Where(r => r[c].Cell.Kind == CellKind.Number && r[c].Cell.Number == Math.Floor(r[c].Cell.Number)).Select(r => r[c].Cell.Number).ToList();
            if (numbers.Count(n => n is >= 100 and < 2400) < FewestOfHundreds || !numbers.Exists(n => n is > 0 and < 100)) continue;
            block = block with { Rows = [.. block.Rows.Select((r, i) => Mended(block.Rows, r, i, c))] };
        }

        return block;
    }

    private static BlockRow Mended(IReadOnlyList<BlockRow> rows, BlockRow row, int at, int column)
    {
        var cell = row[column].Cell;
        if (cell.Kind != CellKind.Number || cell.Number is not (> 0 and < 60) || cell.Number != Math.Floor(cell.Number)) return row;
        // The next time of the column is later than either reading after midnight, and earlier than the hour would be.
        var next = rows.Skip(at + 1).Select(r => r[column].Cell).FirstOrDefault(c => !c.IsEmpty);
        var settles = cell.Number >= 10 && (cell.Number >= 24 || (next.Kind == CellKind.Number && next.Number >= 100 && next.Number < cell.Number * 100));
        var text = settles ? FormattableString.Invariant($"00:{(int)cell.Number:00}") : FormattableString.Invariant($"{(int)cell.Number} (hour or minutes?)");
        return new BlockRow([.. row.Cells.Select(c => c.Column == row[column].Column && c.Row == row[column].Row
            ? c with { Row = c.Row with { Cells = [.. c.Row.Cells.Select((x, n) => n == c.Column ? Cell.Of(text) : x)] } } : c)]);
    }
}
