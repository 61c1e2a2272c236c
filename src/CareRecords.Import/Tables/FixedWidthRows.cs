using CareRecords.Import.Tables.Layouts;

namespace CareRecords.Import.Tables;

/// <summary>Takes a table that is lined up with spaces apart: the words of its heading, two spaces or more between them, say where its columns begin.</summary>
internal static class FixedWidthRows
{
    private const int FewestColumns = 3;
    private const int FewestRows = 2;
    private const int LongestHeading = 24;

    private readonly record struct Piece(int Start, string Text)
    {
        public int End => Start + Text.Length;
    }

    /// <summary>The rows; null where no line is a heading with rows lined up under it.</summary>
    public static IReadOnlyList<GridRow>? Read(IReadOnlyList<string> lines)
    {
        var rows = new List<GridRow>();
        List<Piece>? columns = null;
        var any = false;
        for (var i = 0; i < lines.Count; i++)
        {
            var pieces = Pieces(lines[i]);
            if (IsHeading(pieces, i + 1) && LinedUp(lines.Skip(i + 1), pieces) >= FewestRows)
            {
                (columns, any) = (pieces, true);
                rows.Add(new GridRow(i + 1, 1, [.. pieces.Select(p => Cell.Of(p.Text))], lines[i]));
            }
            else if (columns is null || pieces.Count < 2) rows.Add(new GridRow(i + 1, 1, pieces.Count == 0 ? [] : [Cell.Of(lines[i].Trim())], lines[i]));
            else rows.Add(new GridRow(i + 1, 1, Cells(pieces, columns), lines[i]));
        }

        return any ? rows : null;
    }

    private static bool IsHeading(List<Piece> pieces, int line) =>
        pieces.Count >= FewestColumns && !pieces.Exists(p => p.Text.Contains('=') || p.Text.Contains('|') || p.Text.Count(char.IsAsciiDigit) > 2 || p.Text.Length > LongestHeading || FreeWords.HasClock(p.Text)) && RowShape.Headings(new GridRow(line, 1, [.. pieces.Select(p => Cell.Of(p.Text))], "")) is not null;

    // Lines right below whose pieces begin or end where those of the heading do.
    private static int LinedUp(IEnumerable<string> below, List<Piece> heading) =>
        below.Where(l => l.Trim().Length > 0).TakeWhile((l, i) => i < 12).Select(Pieces).Count(p => p.Count >= 2 && p.Count(x => heading.Exists(h => x.Start < h.End && h.Start < x.End)) * 4 >= p.Count * 3 && p.Count <= heading.Count + 1);

    private static Cell[] Cells(List<Piece> pieces, List<Piece> columns)
    {
        var texts = new string[columns.Count];
        foreach (var piece in pieces)
        {
            // The column that it stands under; words that run on belong to the one where they begin.
            var at = columns.FindIndex(c => piece.Start < c.End && c.Start < piece.End);
            if (at < 0) at = Math.Max(0, columns.FindLastIndex(c => c.Start <= piece.Start));
            texts[at] = texts[at] is { Length: > 0 } before ? before + " " + piece.Text : piece.Text;
        }

        return [.. texts.Select(t => Cell.Of(t ?? ""))];
    }

    private static List<Piece> Pieces(string line)
    {
        var pieces = new List<Piece>();
        for (var i = 0; i < line.Length;)
        {
            if (char.IsWhiteSpace(line[i]))
            {
                i++;
                continue;
            }

            var start = i;
            while (i < line.Length && !(char.IsWhiteSpace(line[i]) && (i + 1 == line.Length || char.IsWhiteSpace(line[i + 1])))) i++;
            pieces.Add(new Piece(start, line[start..i]));
        }

        return pieces;
    }
}
