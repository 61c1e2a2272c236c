using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Finds a key that stands beside a table, two columns of its own ("F 150 | feed by tube, mls" right of a grid of hours), or one ("KEY" above
/// "base = lower, top = upper"): what it says of goals and visits is no part of the rows beside it.
/// </summary>
internal static class KeyBeside
{
    private const int LongestWord = 14;
    private const int FewestWords = 3;

    /// <summary>A heading is shorter.</summary>
    private const int LeastOfSentence = 35;
    private const int MostRows = 4000;

    /// <summary>The rows without the key, and what it explains; the rows as they are where none stands beside them.</summary>
    public static (IReadOnlyList<GridRow> Rows, IReadOnlyList<FamilyWord> Words) Apart(IReadOnlyList<GridRow> rows)
    {
        var width = rows.Count is 0 or > MostRows ? 0 : rows.Max(r => r.Cells.Length);
        if (width > 3 && InOneColumn(rows, width - 1) is { } told) return told;
        for (var c = width - 2; c > 1; c--)
        {
            if (rows.Any(r => !IsOneCell(r) && !r[c - 1].IsEmpty) || rows.All(r => r[c].IsEmpty)) continue;
            if (Enumerable.Range(c + 2, Math.Max(0, width - c - 2)).Any(i => rows.Any(r => !r[i].IsEmpty)) || Words(rows, c) is not { Count: >= FewestWords } words) return (rows, []);
            return ([.. rows.Select(r => r.Cells.Length <= c || IsOneCell(r) && r[0].Kind != CellKind.Empty ? r : r with { Cells = r.Cells[..c], Written = r.Written ?? r.Text })], words);
        }

        return (rows, []);
    }

    private static (IReadOnlyList<GridRow> Rows, IReadOnlyList<FamilyWord> Words)? InOneColumn(IReadOnlyList<GridRow> rows, int column)
    {
        var cells = rows.Select(r => r[column]).Where(c => !c.IsEmpty).ToList();
        if (cells.Count < 2 || cells.Exists(c => c.Kind != CellKind.Text) || rows.Any(r => !IsOneCell(r) && !r[column - 1].IsEmpty)) return null;
        var explains = RowShape.IsKeyHeading(cells[0].Text) || cells[0].Text.Contains('=', StringComparison.Ordinal);
        // A sentence stands in the place of a heading; further down it is a remark on its row.
        if (!explains && (cells[0].Text.Length < LeastOfSentence || !RowShape.IsWordsOnly(rows.First(r => !r[column].IsEmpty)))) return null;
        // Whatever tells of an event with its time is no key.
        if (cells.Exists(c => FreeWords.HasClock(c.Text) && LeftOvers.HoldsEvent(c.Text))) return null;
        return ([.. rows.Select(r => r.Cells.Length <= column || IsOneCell(r) ? r : r with { Cells = r.Cells[..column], Written = r.Written ?? r.Text })], [.. cells.SelectMany(c => Legends.Words(c.Text))]);
    }

    private static List<FamilyWord>? Words(IReadOnlyList<GridRow> rows, int column)
    {
        var (words, headed, first) = (new List<FamilyWord>(), false, true);
        foreach (var row in rows)
        {
            var (word, means) = (row[column], row[column + 1]);
            if (word.IsEmpty && means.IsEmpty) continue;
            if (first && means.IsEmpty)
            {
                headed = word.Kind == CellKind.Text && Lexicon.Find(word.Text, out _).Any(k => k.Concept == Concept.Word);
                first = false;
                if (headed || RowShape.IsKeyHeading(word.Text)) continue;
            }

            first = false;
            if (word.IsEmpty || means.Kind != CellKind.Text || !means.Text.Any(char.IsLetter) || word.Text.Trim().Length > LongestWord || CellTimes.Read(word) is { Date: not null } || (char.IsAsciiDigit(word.Text.TrimStart()[0]) && CellTimes.Read(word).Outcome == Outcome.Certain) || word.Kind is CellKind.Number or CellKind.TimeOfDay or CellKind.Date or CellKind.Moment) return null;
            words.Add(new FamilyWord(word.Words!, means.Words!));
        }

        return headed || words.TrueForAll(w => w.Means.Length > w.Word.Length) ? words : null;
    }

    private static bool IsOneCell(GridRow row) => row.Cells.Count(c => !c.IsEmpty) == 1;
}
