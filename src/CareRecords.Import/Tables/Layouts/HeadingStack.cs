using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Reads headings of one to three rows: group headings ("Morning", "1st go", "Clapping minutes") stand over the columns that they are of,
/// merged or only written once, and units may stand under them.
/// </summary>
internal static class HeadingStack
{
    private const int MostRows = 3;

    /// <summary>The headings that begin at a row, the most rows that fit; null when none do.</summary>
    public static (int Rows, IReadOnlyList<ColumnMeaning> Columns)? At(IReadOnlyList<GridRow> rows, int at)
    {
        // Nearly every row of a long table has a figure in it: it is told from a heading before anything else is looked at.
        if (!RowShape.IsWordsOnly(rows[at])) return null;
        for (var height = Math.Min(MostRows, rows.Count - at); height > 1; height--)
            if (IsStack(rows, at, height) && Columns(rows, at, height) is { } columns && IsKnown(columns))
                return (height, columns);
        return RowShape.Headings(rows[at]) is not null || CanonicalHeader.Read(rows[at]) is not null ? (1, Columns(rows, at, 1)) : null;
    }

    // All of words, the lower ones made of known words, and no row a title alone in the first column.
    private static bool IsStack(IReadOnlyList<GridRow> rows, int at, int height)
    {
        if (CanonicalHeader.Read(rows[at]) is not null || CanonicalHeader.Read(rows[at + height - 1]) is not null) return false;
        for (var i = at; i < at + height; i++)
        {
            if (rows[i].IsBlank || !RowShape.IsWordsOnly(rows[i])) return false;
            var filled = rows[i].Cells.Where(c => !c.IsEmpty).ToList();
            if (i < at + height - 1 && filled.Count == 1 && !rows[i][0].IsEmpty) return false;
            // "Pump | ran 21:00–06:00 at 70 mL/hr" above the headings tells of something.
            if (i < at + height - 1 && filled.Count == 2 && filled[1].Text.Any(char.IsAsciiDigit) && Lexicon.Split(filled[1].Text).Count > 3) return false;
            if (i > at && !Complements(rows[i - 1], rows[i])) return false;
            if (i == at) continue;
            var known = filled.Count(c => Lexicon.Find(c.Text, out _).Count > 0 || IsOrdinal(c.Text) || PlannedColumns.IsPlanned(c.Text) || PlannedColumns.IsDone(c.Text));
            if (known < 2 && filled.Count > 1 || known == 0 || known * 2 < filled.Count) return false;
        }

        return rows[at].Cells.Any(c => !c.IsEmpty && (Lexicon.Find(c.Text, out _).Count > 0 || IsOrdinal(c.Text)));
    }

    /// <summary>True for "1st go", "Second", "No 3", "go 2".</summary>
    public static bool IsOrdinal(string text)
    {
        var words = Lexicon.Split(text);
        return words.Count is > 0 and <= 3 && (words[0] is "1st" or "2nd" or "3rd" or "4th" or "5th" or "6th" or "first" or "second" or "third" or "fourth" or "fifth" || words[^1] is [>= '1' and <= '9']);
    }

    // One of the two has cells where the other has none, or the lower says the same thing more than once: two full rows are two tables.
    private static bool Complements(GridRow upper, GridRow lower)
    {
        var width = Math.Max(upper.Cells.Length, lower.Cells.Length);
        if (upper.Cells.Select(c => c.Text).SequenceEqual(lower.Cells.Select(c => c.Text))) return false;
        return Enumerable.Range(0, width).Any(i => upper[i].IsEmpty != lower[i].IsEmpty);
    }

    private static bool IsKnown(IReadOnlyList<ColumnMeaning> columns)
    {
        var filled = columns.Count(c => c.Heading.Length > 0);
        var known = columns.Count(c => c.IsKnown || c.Phase != Records.CheckPhase.None);
        return known >= 2 && known * 2 >= filled;
    }

    private static List<ColumnMeaning> Columns(IReadOnlyList<GridRow> rows, int at, int height)
    {
        var width = rows.Skip(at).Take(height).Max(r => r.Cells.Length);
        var spread = Enumerable.Range(0, height).Select(i => i == height - 1 ? Own(rows[at + i], width) : Spread(rows, at, i, height, width)).ToList();
        var columns = new List<ColumnMeaning>();
        for (var c = 0; c < width; c++)
        {
            var stack = spread.Select(s => s[c]).Where(s => s.Text.Length > 0).ToList();
            if (stack.Count == 0)
            {
                columns.Add(new ColumnMeaning("", Role.Unknown));
                continue;
            }

            var over = string.Join(' ', stack.SkipLast(1).Select(s => s.Text).Distinct());
            var group = height > 1 && stack.Count > 1 ? stack[^2].From + 1 : 0;
            var part = over.Length == 0 ? null : PartOfGroup(over, stack[^1].Text, spread[^1], c);
            columns.Add(part is null
                ? HeadingReader.Read(stack[^1].Text, over.Length == 0 ? null : over) with { Own = stack[^1].Text, Over = over, Group = group }
                : HeadingReader.Read(stack[^1].Text) with { Heading = $"{over} {stack[^1].Text}", Own = stack[^1].Text, Over = over, Group = group, Part = part, Half = part == "midday" ? HalfOfDay.Unknown : part == "morning" ? HalfOfDay.Am : HalfOfDay.Pm });
        }

        return HeadingGroups.Settled(columns);
    }

    // "BREAKFAST" over milk, puffer, physio and sats is when, not what; over "ml" alone it is the meal.
    private static string? PartOfGroup(string over, string own, List<(string Text, int From)> lowest, int column)
    {
        if (over.Contains(' ', StringComparison.Ordinal) ? PartOfRow.Read(over) is not { } part : (part = PartOfRow.Read(over) ?? PartOfRow.OfMeal(over)) is null) return null;
        if (part is "night" || HeadingReader.Read(own).Role is Role.Millilitres or Role.Rate) return null;
        bool IsCare(int c) => c >= 0 && c < lowest.Count && lowest[c].Text.Length > 0 && HeadingReader.Read(lowest[c].Text) is { Role: Role.Session or Role.Dose or Role.Saturation or Role.Area or Role.FeedEnd or Role.Pulse or Role.Minutes };
        return IsCare(column) || IsCare(column - 1) || IsCare(column + 1) ? part : null;
    }

    private static List<(string Text, int From)> Own(GridRow row, int width) => [.. Enumerable.Range(0, width).Select(c => (row[c].Text.Trim(), c))];

    // A heading stands over the empty cells to its right as long as there is something under them, unless it reaches down itself.
    private static List<(string Text, int From)> Spread(IReadOnlyList<GridRow> rows, int at, int level, int height, int width)
    {
        var row = rows[at + level];
        bool Under(int c) => Enumerable.Range(level + 1, height - level - 1).Any(i => !rows[at + i][c].IsEmpty);
        var cells = new List<(string Text, int From)>();
        var (text, from, last) = ("", 0, width);
        for (var c = 0; c < width; c++)
        {
            if (!row[c].IsEmpty)
            {
                (text, from) = (row[c].Text.Trim(), c);
                // Where headings are merged over their columns they stand over no others.
                last = row.Spans.Count == 0 ? width : row.Spans.Where(s => s.From == c).Select(s => s.To).FirstOrDefault(c);
                cells.Add((text, c));
                if (!Under(c)) text = "";
            }
            else
            {
                cells.Add(Under(c) && c <= last ? (text, from) : ("", c));
            }
        }

        return cells;
    }
}
