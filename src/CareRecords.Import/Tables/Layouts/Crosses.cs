namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Settles what a cross means: beside ticks, times or words of its column it stands for nothing ("not done"); in a column of nothing but crosses,
/// in a table without ticks, it is the family's tick.
/// </summary>
internal static class Crosses
{
    private const string Tick = "✓";

    /// <summary>The block with crosses that are ticks written as ticks.</summary>
    public static Block AsTicks(Block block)
    {
        if (!block.Rows.Any(r => r.Cells.Any(c => IsCross(c.Cell))) || block.Rows.Any(r => r.Cells.Any(c => c.Cell.Text.Trim() is "✓" or "✔" or "√"))) return block;
        var ticks = new HashSet<int>();
        for (var i = 0; i < block.Columns.Count; i++)
        {
            var filled = block.Rows.Select(r => r[i].Cell).Where(c => !c.IsEmpty && c.Text.Trim() is not ("-" or "–")).ToList();
            if (filled.Count > 1 && filled.TrueForAll(IsCross)) ticks.Add(i);
        }

        return ticks.Count == 0 ? block : block with { Rows = [.. block.Rows.Select(r => Ticked(r, ticks))] };
    }

    private static BlockRow Ticked(BlockRow row, HashSet<int> columns) =>
        new([.. row.Cells.Select((c, i) => columns.Contains(i) && IsCross(c.Cell) ? c with { Row = c.Row with { Cells = [.. c.Row.Cells.Select((x, n) => n == c.Column ? Cell.Of(Tick) : x)] } } : c)]);

    private static bool IsCross(Cell cell) => cell.Kind == CellKind.Text && cell.Text.Trim() is "x" or "X" or "×";
}
