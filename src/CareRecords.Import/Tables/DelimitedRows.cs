using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace CareRecords.Import.Tables;

/// <summary>Puts the physical lines of a delimited text together into rows, in bounded memory.</summary>
internal static class DelimitedRows
{
    // How far a quoted cell may run on over line ends before its quote counts as never closed.
    private const int MostLinesInACell = 200;
    private const int MostCharactersInACell = 1 << 16;

    /// <summary>
    /// Every row, blank ones included. A quoted cell may hold line ends; where a quote is never closed, the lines that it
    /// would swallow are read one by one instead.
    /// </summary>
    public static IEnumerable<GridRow> Read(IEnumerable<string> lines, char delimiter)
    {
        using var source = lines.GetEnumerator();
        var ahead = new LinkedList<string>();
        var (line, usualCells) = (1, 2);
        while (Next(source, ahead) is { } text)
        {
            GridRow row;
            if (!text.Contains('"')) row = Plain(text, delimiter, line);
            else if (text.AsSpan().Count('"') % 2 == 0) row = Quoted(text, delimiter, line, 1, CsvMode.RFC4180);
            else row = Joined(text, source, ahead, delimiter, usualCells, line) ?? Quoted(text, delimiter, line, 1, CsvMode.NoEscape);
            usualCells = Math.Max(usualCells, row.Cells.Length);
            line += row.LineCount;
            yield return row;
        }
    }

    private static string? Next(IEnumerator<string> source, LinkedList<string> ahead)
    {
        if (ahead.First is not { } first) return source.MoveNext() ? source.Current : null;
        ahead.RemoveFirst();
        return first.Value;
    }

    // The lines up to the closing quote as one row; null, with the lines put back, when what it would swallow looks like rows of its own.
    private static GridRow? Joined(string first, IEnumerator<string> source, LinkedList<string> ahead, char delimiter, int usualCells, int line)
    {
        var taken = new List<string>();
        var (quotes, length) = (first.AsSpan().Count('"'), first.Length);
        while (taken.Count < MostLinesInACell && length < MostCharactersInACell && Next(source, ahead) is { } next)
        {
            taken.Add(next);
            length += next.Length;
            var here = next.AsSpan().Count('"');
            if (here % 2 == 0 && LooksLikeARow(next, delimiter, usualCells)) break;
            quotes += here;
            if (quotes % 2 == 0) return Quoted(string.Join('\n', taken.Prepend(first)), delimiter, line, taken.Count + 1, CsvMode.RFC4180);
        }

        for (var i = taken.Count - 1; i >= 0; i--) ahead.AddFirst(taken[i]);
        return null;
    }

    // As many cells as usual, and a figure (a date, a time) in the first: prose inside a cell seldom begins so.
    private static bool LooksLikeARow(string line, char delimiter, int usualCells)
    {
        var first = line.AsSpan()[..Math.Max(0, line.IndexOf(delimiter))];
        return (first.Trim().IsEmpty || first.ContainsAnyInRange('0', '9')) && line.AsSpan().Count(delimiter) + 1 >= usualCells;
    }

    private static GridRow Plain(string text, char delimiter, int line)
    {
        var cells = new Cell[text.AsSpan().Count(delimiter) + 1];
        var from = 0;
        for (var i = 0; i < cells.Length; i++)
        {
            var at = text.AsSpan(from).IndexOf(delimiter);
            var end = at < 0 ? text.Length : from + at;
            cells[i] = end == from ? Cell.Empty : Cell.Of(text[from..end]);
            from = end + 1;
        }

        return new GridRow(line, 1, cells, text);
    }

    private static GridRow Quoted(string text, char delimiter, int line, int lines, CsvMode mode)
    {
        using var parser = new CsvParser(new StringReader(text), Configuration(delimiter, mode));
        var cells = new List<Cell>();
        while (parser.Read())
            for (var i = 0; i < parser.Count; i++)
                cells.Add(Cell.Of(mode == CsvMode.NoEscape ? parser[i].TrimStart('"') : parser[i]));
        return new GridRow(line, lines, [.. cells], text);
    }

    private static CsvConfiguration Configuration(char delimiter, CsvMode mode) => new(CultureInfo.InvariantCulture)
    {
        Delimiter = delimiter.ToString(),
        Mode = mode,
        BufferSize = 1024,
        HasHeaderRecord = false,
        IgnoreBlankLines = false,
        BadDataFound = null,
        MissingFieldFound = null,
        ExceptionMessagesContainRawData = false,
    };
}
