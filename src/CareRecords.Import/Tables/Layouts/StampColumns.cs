namespace CareRecords.Import.Tables.Layouts;

/// <summary>Leaves out the columns that say when a row was typed in, where others say when the event was ("logged_at" beside "For day" and "At").</summary>
internal static class StampColumns
{
    private static readonly HashSet<string> Typed = new(["logged", "entered", "created", "typed", "recorded", "synced", "uploaded", "modified", "updated", "submitted", "saved", "timestamp", "edited", "entry", "stamp"], StringComparer.Ordinal);

    /// <summary>The block without them; as it is where no other columns hold both day and time.</summary>
    public static Block Without(Block block)
    {
        var stamps = Enumerable.Range(0, block.Columns.Count).Where(i => block.Columns[i].Role is Role.Date or Role.Time or Role.Start or Role.Unknown or Role.Kind or Role.By && IsStamp(block, i)).ToList();
        if (stamps.Count == 0) return block;
        var others = Enumerable.Range(0, block.Columns.Count).Except(stamps).ToList();
        var (day, time) = (others.Exists(i => !IsOptional(block, i) && Holds(block, i, w => w.Date is not null)), others.Exists(i => Holds(block, i, w => w.Clock is not null)));
        return day && time ? block with { Columns = [.. block.Columns.Select((c, i) => stamps.Contains(i) ? c with { Role = Role.Ignore } : c)] } : block;
    }

    /// <summary>Whether a column's heading and cells say when its rows were typed in.</summary>
    public static bool IsStamp(Block block, int column) =>
        Lexicon.Split(block.Columns[column].Own).Any(Typed.Contains) && block.Rows.Take(20).Any(r => LooksLikeMoment(r[column].Cell));

    /// <summary>"Date (if not today)": filled in for some rows only.</summary>
    public static bool IsOptional(Block block, int column) => Lexicon.Split(block.Columns[column].Own).Contains("if");

    private static bool LooksLikeMoment(Cell cell) => cell.Kind is CellKind.Moment or CellKind.Date || CellTimes.Read(cell) is { Date: not null } || (cell.Kind == CellKind.Text && cell.Text.Length > 10 && char.IsAsciiDigit(cell.Text[0]) && cell.Text[4] == '-');

    /// <summary>Whether two thirds of a column's filled cells are so.</summary>
    public static bool Holds(Block block, int column, Predicate<WrittenTime> fits)
    {
        var filled = block.Rows.Take(100).Select(r => r[column].Cell).Where(c => !c.IsEmpty).ToList();
        return filled.Count > 0 && filled.Count(c => fits(CellTimes.Read(c))) * 3 >= filled.Count * 2;
    }
}
