namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Settles what a cross means: beside ticks, times or words of its column it stands for nothing ("not done"); in a column of nothing but crosses,
/// in a table without ticks, it is the family's tick.
/// </summary>
internal static class Crosses
{
    private const string Tick = "✓";
    private const string NoTick = "✗";

    /// <summary>The block with crosses that are ticks written as ticks.</summary>
    public static Block AsTicks(Block block, IEnumerable<string> around)
    {
        block = WithReasons(block);
        if (!block.Rows.Any(r => r.Cells.Any(c => IsCross(c.Cell)))) return block;
        var explained = around.Any(IsKeyOfTicks);
        // Beside ticks a cross is none; what sessions make of it is settled with them.
        if (!explained && block.Rows.Any(r => r.Cells.Any(c => c.Cell.Text.Trim() is "✓" or "✔" or "√" or "☑" or "✅")))
            return block with { Rows = [.. block.Rows.Select(r => Marked(r, [.. Enumerable.Range(0, block.Columns.Count).Where(i => IsDose(block.Columns[i]) || block.Columns[i].Role is Role.Feed or Role.FeedStart or Role.FeedEnd or Role.Millilitres)], NoTick))] };
        var ticks = new HashSet<int>();
        for (var i = 0; i < block.Columns.Count; i++)
        {
            var filled = block.Rows.Select(r => r[i].Cell).Where(c => !c.IsEmpty && c.Text.Trim() is not ("-" or "–")).ToList();
            if (filled.Count > 1 && filled.TrueForAll(IsCross) || (explained && filled.Exists(IsCross))) ticks.Add(i);
        }

        // Where the family ticks one medicine with crosses, a cross among the times of another is a tick too.
        if (block.IsAcross && ticks.Any(t => IsDose(block.Columns[t])))
            for (var i = 0; i < block.Columns.Count; i++)
                if (IsDose(block.Columns[i]))
                    ticks.Add(i);
        return ticks.Count == 0 ? block : block with { Rows = [.. block.Rows.Select(r => Marked(r, ticks, Tick))] };
    }

    // "X at a party" among times: it was not done, and why.
    private static Block WithReasons(Block block)
    {
        if (!block.Rows.Any(r => r.Cells.Any(c => HasReason(c.Cell)))) return block;
        var timed = Enumerable.Range(0, block.Columns.Count).Where(i => block.Rows.Select(r => r[i].Cell).Where(c => !c.IsEmpty).ToList() is var filled && filled.Exists(HasReason) && filled.Count(IsTimed) * 2 >= filled.Count).ToHashSet();
        return timed.Count == 0 ? block : block with { Rows = [.. block.Rows.Select(r => Written(r, i => timed.Contains(i) && HasReason(r[i].Cell), c => "no - " + c.Text.Trim()[1..].Trim()))] };
    }

    private static bool IsTimed(Cell cell) => cell.Kind is CellKind.TimeOfDay or CellKind.Moment || EventCell.BeginsWithTime(cell.Text) || cell.Text.Length >= 4 && cell.Text.AsSpan(0, 4).IndexOfAnyExceptInRange('0', '9') < 0;

    private static bool HasReason(Cell cell) => cell.Kind == CellKind.Text && cell.Text.Trim() is ['x' or 'X' or '×' or '✗' or '✘', ' ', var next, var more, ..] && char.IsLetter(next) && char.IsLetter(more);

    private static bool IsDose(ColumnMeaning column) => column.Role == Role.Dose || column is { Role: Role.Amount, Medicine: not null };

    // "x or ✓ = we did it", "x = given".
    private static bool IsKeyOfTicks(string text)
    {
        // "✓ or x = done,  number = minutes,  blank = not done": each explained apart.
        foreach (var pair in text.Split(text.Count(c => c == '=') > 1 ? ['.', ';', '\n', ','] : ['.', ';', '\n'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var sides = pair.Split('=', 2, StringSplitOptions.TrimEntries);
            if (sides.Length < 2 || !Lexicon.Split(sides[0]).Contains("x")) continue;
            var means = Lexicon.Split(sides[1]);
            if (means.Any(w => w is "did" or "done" or "given" or "gave" or "taken" or "yes" or "happened") && !means.Any(w => w is "not" or "no" or "didn't" or "missed")) return true;
        }

        return false;
    }

    private static BlockRow Marked(BlockRow row, HashSet<int> columns, string mark) => Written(row, i => columns.Contains(i) && IsCross(row[i].Cell), _ => mark);

    private static BlockRow Written(BlockRow row, Predicate<int> where, Func<Cell, string> words) =>
        new([.. row.Cells.Select((c, i) => where(i) ? c with { Row = c.Row with { Cells = [.. c.Row.Cells.Select((x, n) => n == c.Column ? Cell.Of(words(c.Cell)) : x)] } } : c)]);

    private static bool IsCross(Cell cell) => cell.Kind == CellKind.Text && cell.Text.Trim() is "x" or "X" or "×";
}
