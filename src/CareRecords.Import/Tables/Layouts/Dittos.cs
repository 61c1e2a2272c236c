namespace CareRecords.Import.Tables.Layouts;

/// <summary>Writes out "ditto" and its signs: the value of the record before. What points to a whole session is left to the readers of sessions.</summary>
internal static class Dittos
{
    /// <summary>The block with such cells of values filled in.</summary>
    public static Block Filled(Block block)
    {
        if (!block.Rows.Any(r => r.Cells.Any(c => Is(c.Cell)))) return block;
        var last = new Cell[block.Columns.Count];
        // "same" under amounts is the last amount of that medicine.
        var named = Enumerable.Range(0, block.Columns.Count).FirstOrDefault(i => block.Columns[i].Role is Role.Medicine or Role.Kind, -1);
        var lastOf = new Dictionary<(string, int), Cell>();
        var rows = new List<BlockRow>();
        foreach (var row in block.Rows)
        {
            var cells = row.Cells.ToArray();
            for (var i = 0; i < Math.Min(cells.Length, last.Length); i++)
            {
                if (cells[i].Cell.IsEmpty) continue;
                var ofName = named >= 0 && i != named && cells[named].Cell.Words is { } name ? name.ToLowerInvariant() : null;
                if (Is(cells[i].Cell) && ofName is not null && lastOf.TryGetValue((ofName, i), out var own)) cells[i] = With(cells[i], own);
                else if (Is(cells[i].Cell) && IsValue(block.Columns[i].Role) && !last[i].IsEmpty && !(ofName is not null && block.Columns[i].Role is Role.Amount or Role.Minutes)) cells[i] = With(cells[i], last[i]);
                else if (!Is(cells[i].Cell)) last[i] = cells[i].Cell;
                if (ofName is not null && !Is(cells[i].Cell)) lastOf[(ofName, i)] = cells[i].Cell;
            }

            rows.Add(new BlockRow(cells));
        }

        return block with { Rows = rows };
    }

    private static CellAt With(CellAt at, Cell value) => at with { Row = at.Row with { Cells = [.. at.Row.Cells.Select((c, n) => n == at.Column ? value : c)] } };

    private static bool IsValue(Role role) => role is Role.Saturation or Role.Pulse or Role.Oxygen or Role.Medicine or Role.Amount or Role.Millilitres or Role.Route or Role.By or Role.Kind or Role.Minutes or Role.Technique or Role.Temperature or Role.Date or Role.Side or Role.Area;

    private static bool Is(Cell cell) => cell.Kind == CellKind.Text && cell.Text.Trim().TrimEnd('.').ToLowerInvariant() is "ditto" or "do" or "\"" or "''" or "〃" or "\"\"" or "-\"-" or "-''-" or "\" \"" or "”" or "“" or "as above" or "same as above" or "same" or "idem" or "id";
}
