using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Takes tables that stand beside one another apart: an empty column between two parts of which each has days of its own (or times of its own,
/// where no part has days) parts two tables. A title or a day above them is of all of them.
/// </summary>
internal static class SideBySide
{
    private const int MostRows = 4000;
    private const int RowsAboveHeading = 12;

    /// <summary>The sheet as one part, or its parts from left to right and top to bottom, each with its own columns first.</summary>
    public static IReadOnlyList<(Place Place, IReadOnlyList<GridRow> Rows)> Apart(Place place, IReadOnlyList<GridRow> rows)
    {
        if (rows.Count > MostRows) return [(place, rows)];
        var whole = Split(place, rows);
        if (whole.Count > 1) return whole;
        var bands = Bands(rows);
        if (bands.Count < 2) return whole;
        var parts = new List<(Place Place, IReadOnlyList<GridRow> Rows)>();
        var together = new List<GridRow>();
        foreach (var band in bands)
        {
            var apart = Split(place, band);
            if (apart.Count == 1)
            {
                together.AddRange(band);
                continue;
            }

            if (together.Count > 0) parts.Add((place, together));
            together = [];
            parts.AddRange(apart);
        }

        if (parts.Count == 0) return whole;
        if (together.Count > 0) parts.Add((place, together));
        return parts;
    }

    // Rows between blank ones; lines of one cell go with the rows under them.
    private static List<List<GridRow>> Bands(IReadOnlyList<GridRow> rows)
    {
        var bands = new List<List<GridRow>>();
        var band = new List<GridRow>();
        for (var i = 0; i < rows.Count; i++)
        {
            band.Add(rows[i]);
            if (!rows[i].IsBlank || band.TrueForAll(r => r.Cells.Count(c => !c.IsEmpty) < 2)) continue;
            bands.Add(band);
            band = [];
        }

        if (band.Count > 0) bands.Add(band);
        return bands;
    }

    private static List<(Place Place, IReadOnlyList<GridRow> Rows)> Split(Place place, IReadOnlyList<GridRow> rows)
    {
        if (Period(rows) is { } period) return [.. Enumerable.Range(0, period.Count).Select(i => Part(place, rows, period.From + i * period.Length, period.From + (i + 1) * period.Length - 1))];
        var runs = Runs(rows);
        if (runs.Count < 2) return runs is [{ From: > 0 and var first } only] ? [Part(place, rows, first, only.To)] : [(place, rows)];
        // A run without a table of its own belongs to the one before it.
        var joined = new List<(int From, int To)> { runs[0] };
        foreach (var run in runs.Skip(1))
        {
            if (StandsAlone(Part(place, rows, run.From, run.To), Part(place, rows, joined[^1].From, joined[^1].To))) joined.Add(run);
            else joined[^1] = (joined[^1].From, run.To);
        }

        return joined.Count == 1 ? [joined[0].From == 0 ? (place, rows) : Part(place, rows, joined[0].From, joined[0].To)] : [.. joined.Select(r => Part(place, rows, r.From, r.To))];
    }

    // "Time | What | Amount | Time | What | Amount" with a day over each: the same headings again, with nothing between.
    private static (int From, int Length, int Count)? Period(IReadOnlyList<GridRow> rows)
    {
        for (var at = 0; at < Math.Min(rows.Count, RowsAboveHeading); at++)
        {
            var (row, from) = (rows[at], Array.FindIndex(rows[at].Cells, c => !c.IsEmpty));
            if (from < 0 || row.Cells.Length - from < 4 || !RowShape.IsWordsOnly(row) || HeadingReader.Read(row[from].Text).Role is not (Role.Time or Role.Start or Role.Date or Role.Session)) continue;
            if (rows.Skip(at + 1).Any(r => r.Cells.Take(from).Any(c => !c.IsEmpty) && !IsOneCell(r))) continue;
            var again = Array.FindIndex(row.Cells, from + 1, c => string.Equals(c.Words, row[from].Words, StringComparison.OrdinalIgnoreCase));
            if (again < from + 2) continue;
            var length = again - from;
            var count = (row.Cells.Length - from + length - 1) / length;
            if (!Enumerable.Range(from, row.Cells.Length - from).All(c => string.Equals(row[c].Words ?? "", row[from + (c - from) % length].Words ?? "", StringComparison.OrdinalIgnoreCase))) continue;
            // Each has its own day: in its first column, or in a line above.
            var days = HeadingReader.Read(row[from].Text).Role == Role.Date || rows.Take(at).Any(r => Enumerable.Range(0, count).All(i => Enumerable.Range(from + i * length, length).Any(c => CellTimes.Read(r[c]).Date is not null)));
            if (days) return (from, length, count);
        }

        return null;
    }

    // Columns that hold anything, in runs; titles, which stand in one cell of their row, say nothing of columns.
    private static List<(int From, int To)> Runs(IReadOnlyList<GridRow> rows)
    {
        var width = rows.Count == 0 ? 0 : rows.Max(r => r.Cells.Length);
        var filled = new bool[width];
        foreach (var row in rows)
        {
            if (IsOneCell(row)) continue;
            for (var c = 0; c < row.Cells.Length; c++) filled[c] |= !row.Cells[c].IsEmpty;
        }

        var runs = new List<(int From, int To)>();
        for (var c = 0; c < width; c++)
        {
            if (!filled[c]) continue;
            var from = c;
            while (c + 1 < width && filled[c + 1]) c++;
            runs.Add((from, c));
        }

        return runs;
    }

    private static (Place Place, IReadOnlyList<GridRow> Rows) Part(Place place, IReadOnlyList<GridRow> rows, int from, int to) =>
        (place with { FirstColumn = place.FirstColumn + from }, [.. rows.Select(r => Part(r, from, to))]);

    private static GridRow Part(GridRow row, int from, int to)
    {
        var cells = IsOneCell(row) ? [row.Cells.First(c => !c.IsEmpty)] : row.Cells.Length <= from ? [] : row.Cells[from..Math.Min(to + 1, row.Cells.Length)];
        return row with
        {
            Cells = cells,
            Text = string.Join(" | ", cells.Select(c => c.Text)),
            Written = row.Written ?? row.Text,
            Spans = [.. row.Spans.Where(s => s.From >= from && s.From <= to).Select(s => (s.From - from, s.To - from))],
            Comments = [.. row.Comments.Where(c => c.Column >= from && c.Column <= to).Select(c => c with { Column = c.Column - from })],
        };
    }

    private static bool StandsAlone((Place Place, IReadOnlyList<GridRow> Rows) part, (Place Place, IReadOnlyList<GridRow> Rows) before)
    {
        var (here, left) = (BlockFinder.Find(part.Place, part.Rows).Blocks, BlockFinder.Find(before.Place, before.Rows).Blocks);
        if (here.Count == 0 || left.Count == 0) return false;
        if (here.Any(HasDays)) return left.Any(HasDays);
        return !left.Any(HasDays) && left.Any(HasTimes) && here.Any(HasTimes);
    }

    private static bool HasDays(Block block) => block.IsAcross || Enumerable.Range(0, block.Columns.Count).Any(c => Most(block, c, cell => CellTimes.Read(cell).Date is not null));

    private static bool HasTimes(Block block) => Enumerable.Range(0, block.Columns.Count).Any(c => block.Columns[c].Role is Role.Time or Role.Start && Most(block, c, cell => CellTimes.Read(cell).Outcome != Outcome.Nothing));

    private static bool Most(Block block, int column, Predicate<Cell> fits)
    {
        var filled = block.Rows.Select(r => r[column].Cell).Where(c => !c.IsEmpty).ToList();
        return filled.Count > 0 && filled.Count * 3 >= block.Rows.Count && filled.Count(c => fits(c)) * 3 >= filled.Count * 2;
    }

    private static bool IsOneCell(GridRow row) => row.Cells.Count(c => !c.IsEmpty) == 1;
}
