using System.Globalization;
using System.Text.RegularExpressions;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Takes the numbers off headings that a printed form counts: "1 Date | 2 Time in", "a) Physio" over "b) Sats", "Q1. Time".</summary>
internal static partial class NumberedHeadings
{
    private const int Fewest = 3;

    /// <summary>The rows with such headings, and labels down the first column, without their numbers; the words written stay as they are.</summary>
    public static IReadOnlyList<GridRow> Plain(IReadOnlyList<GridRow> rows)
    {
        GridRow[]? plain = null;
        for (var i = 0; i < rows.Count; i++)
            if (Array.Exists(rows[i].Cells, IsNumbered) && IsCounted(rows[i].Cells))
                (plain ??= [.. rows])[i] = rows[i] with { Cells = [.. rows[i].Cells.Select(Without)] };
        for (var i = 0; i < rows.Count; i++)
        {
            var to = i;
            while (to < rows.Count && IsNumbered(rows[to][0])) to++;
            if (to - i >= Fewest && IsCounted([.. Enumerable.Range(i, to - i).Select(n => rows[n][0])]))
                for (var n = i; n < to; n++)
                    (plain ??= [.. rows])[n] = rows[n] with { Cells = [Without(rows[n][0]), .. rows[n].Cells.Skip(1)] };
            i = Math.Max(i, to - 1);
        }

        return plain ?? rows;
    }

    // Each number is the one before or the next, and most of what they number are known headings: "1 puff | 2 puffs" and "3 Nov" are none.
    private static bool IsCounted(Cell[] cells)
    {
        var (last, count, known) = (-1, 0, 0);
        foreach (var cell in cells)
        {
            if (cell.IsEmpty) continue;
            if (!IsNumbered(cell)) continue;
            var mark = Mark().Match(cell.Text.Trim());
            var number = mark.Groups[1].Success ? int.Parse(mark.Groups[1].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture) : char.ToLowerInvariant(mark.Groups[2].ValueSpan[0]) - 'a' + 1;
            if (last >= 0 ? number != last && number != last + 1 : number > 2) return false;
            (last, count) = (number, count + 1);
            if (HeadingReader.Read(Without(cell).Text) is { IsKnown: true } or { Phase: not Records.CheckPhase.None }) known++;
        }

        // "1 time | 1 code | 2 time | 2 code": two of each.
        return count >= Fewest && (last >= Fewest || last == 2 && count >= 4) && count * 2 > cells.Count(c => !c.IsEmpty) && known * 2 >= count;
    }

    private static bool IsNumbered(Cell cell) =>
        cell.Kind == CellKind.Text && cell.Text.Length < 60 && Mark().IsMatch(cell.Text.Trim()) && CellTimes.Read(cell).Outcome != Reading.Outcome.Certain;

    private static Cell Without(Cell cell) => IsNumbered(cell) ? Cell.Of(Mark().Replace(cell.Text.Trim(), "")) : cell;

    // A figure before a word, or a letter with its mark.
    [GeneratedRegex(@"^(?:[Qq]\.?\s?)?[(\[]?(?:(\d{1,2})[a-z]?(?:[.):\]\-–]+\s*|\s+)|([A-Za-z])[.)\]:]\s*)(?=[\p{L}(])")]
    private static partial Regex Mark();
}
