namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Takes the planned half out of a chart that has days across and "Planned | Done" under each: what was only planned is no record. The day moves over the half that was done; a remark
/// that was written across both halves goes with it.
/// </summary>
internal static class PlannedHalves
{
    private const int FewestPairs = 2;

    /// <summary>The rows without what was planned; as they are where no row has such halves.</summary>
    public static IReadOnlyList<GridRow> Apart(IReadOnlyList<GridRow> rows)
    {
        List<GridRow>? apart = null;
        List<int>? planned = null;
        for (var i = 0; i < rows.Count; i++)
        {
            if (Pairs(rows[i]) is { } pairs && i > 0 && RowShape.IsDatesAcross(rows[i - 1]))
            {
                apart ??= [.. rows.Take(i)];
                planned = pairs;
                apart[^1] = Moved(rows[i - 1], planned, _ => true);
                apart.Add(rows[i] with { Cells = [.. rows[i].Cells.Select((c, k) => planned.Contains(k) || planned.Contains(k - 1) ? Cell.Empty : c)] });
            }
            else apart?.Add(planned is null ? rows[i] : Moved(rows[i], planned, IsAcrossBoth));
        }

        return apart ?? rows;

        // Words merged over both halves stand in the first.
        static bool IsAcrossBoth((GridRow Row, int At) cell) => cell.Row.Spans.Any(s => s.From == cell.At && s.To > cell.At);
    }

    private static GridRow Moved(GridRow row, List<int> planned, Predicate<(GridRow Row, int At)> belongs)
    {
        var cells = row.Cells.ToArray();
        foreach (var at in planned.Where(p => p + 1 < cells.Length || p < cells.Length && !cells[p].IsEmpty))
        {
            if (at + 1 >= cells.Length) cells = [.. cells, Cell.Empty];
            if (cells[at + 1].IsEmpty && belongs((row, at))) cells[at + 1] = cells[at];
            cells[at] = Cell.Empty;
        }

        return row with { Cells = cells };
    }

    // The columns of what was planned, each with what was done right of it.
    private static List<int>? Pairs(GridRow row)
    {
        var planned = Enumerable.Range(0, Math.Max(0, row.Cells.Length - 1)).Where(k => PlannedColumns.IsPlanned(row[k].Text) && PlannedColumns.IsDone(row[k + 1].Text)).ToList();
        return planned.Count >= FewestPairs ? planned : null;
    }
}
