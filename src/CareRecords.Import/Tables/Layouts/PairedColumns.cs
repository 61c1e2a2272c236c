namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Takes the parts of a day that stand beside one another apart: under each of "Early morning", "Midday" and "Bedtime" the same two columns or more, of which one
/// is the time and another what was done then. Each part becomes a row of its own with its day, and the heading over it the part of the day.
/// </summary>
internal static class PairedColumns
{
    /// <summary>The block with a row for each part of each row; as it is where it has no such parts.</summary>
    public static Block Apart(Block block)
    {
        if (block.IsAcross) return block;
        var groups = Enumerable.Range(0, block.Columns.Count).Where(i => block.Columns[i].Group > 0).GroupBy(i => block.Columns[i].Group).Select(g => g.ToList()).ToList();
        if (groups.Count < 2 || !groups.TrueForAll(g => IsTimeAndWords(block, g) && g.Select(i => Folded(block.Columns[i].Own)).SequenceEqual(groups[0].Select(i => Folded(block.Columns[i].Own))))) return block;
        var single = Enumerable.Range(0, block.Columns.Count).Where(i => block.Columns[i].Group == 0).ToList();
        var (before, after) = (single.Where(i => i < groups[0][0]).ToList(), single.Where(i => i > groups[0][0]).ToList());
        return block with
        {
            Columns = [.. before.Select(i => block.Columns[i]), new ColumnMeaning("", Role.Part), .. groups[0].Select(i => Plain(block.Columns[i])), .. after.Select(i => block.Columns[i])],
            Rows = [.. block.Rows.SelectMany(r => Apart(block, r, groups, before, after))],
        };
    }

    private static bool IsTimeAndWords(Block block, List<int> group) =>
        group.Count(i => block.Columns[i].Role is Role.Time or Role.Start) == 1 && group.Count(i => block.Columns[i].Role is Role.Kind or Role.Detail or Role.Note or Role.Unknown) == 1
        && group.TrueForAll(i => block.Columns[i].Role is not (Role.Session or Role.Feed or Role.Dose or Role.Area or Role.Saturation or Role.Date));

    // What the parts of the day say stands in a column of its own now.
    private static ColumnMeaning Plain(ColumnMeaning column) => HeadingReader.Read(column.Own);

    private static string Folded(string heading) => heading.Trim().ToLowerInvariant();

    // The day stands in the first row only, as it does in the table, and the remarks of the day in a row of their own.
    private static IEnumerable<BlockRow> Apart(Block block, BlockRow row, List<List<int>> groups, List<int> before, List<int> after)
    {
        var width = before.Count + 1 + groups[0].Count + after.Count;
        var first = true;
        foreach (var group in groups.Where(g => g.Exists(i => !row[i].Cell.IsEmpty)))
        {
            yield return Part(row, [.. first ? before : [], .. group], group[0] - before.Count - 1, width, column => column == before.Count ? PartOf(block.Columns[group[0]]) : Cell.Empty);
            first = false;
        }

        if (first || after.Exists(i => !row[i].Cell.IsEmpty))
            yield return Part(row, [.. first ? before : [], .. after], after.Count == 0 ? 0 : after[0] - width + after.Count, width, _ => Cell.Empty);

        BlockRow Part(BlockRow of, HashSet<int> kept, int moved, int to, Func<int, Cell> otherwise)
        {
            var cells = Enumerable.Range(0, to).Select(c => c < before.Count ? kept.Contains(before[c]) ? of[before[c]].Cell : Cell.Empty
                : c > before.Count && kept.Contains(c + moved) ? of[c + moved].Cell : otherwise(c)).ToArray();
            var line = of[0].Row with { Cells = cells };
            // The name of a cell is that of the sheet, where its part begins further to the right.
            var place = of[0].Place with { FirstColumn = of[0].Place.FirstColumn + moved };
            return new BlockRow([.. cells.Select((_, c) => new CellAt(c <= before.Count ? of[0].Place : place, line, c))]);
        }
    }

    // The part of the day as a cell beside those of the row.
    private static Cell PartOf(ColumnMeaning column) =>
        (column.Part ?? (column.Half == Reading.HalfOfDay.Am ? "morning" : column.Half == Reading.HalfOfDay.Pm ? "evening" : null)) is { } part ? Cell.Of(part) : Cell.Empty;
}
