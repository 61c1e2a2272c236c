namespace CareRecords.Import.Notes;

/// <summary>
/// Tables typed into notes with upright strokes: a heading names the columns, so "94/96" under "sats b/a" is before and after, and a ditto mark
/// repeats the cell above. Each row is rewritten as words that the line reader knows.
/// </summary>
internal sealed class TableLines
{
    private string[]? _heading;
    private string[]? _above;

    /// <summary>Whether the line is a table's heading; it is then remembered.</summary>
    public bool IsHeading(string line)
    {
        if (line.Count(c => c == '|') < 2 || HasFigures(line)) return false;
        var cells = Cells(line);
        if (!cells.Any(c => c is "time" or "date" or "sats" or "what" or "when") && !cells.Any(c => c.Contains("sat", StringComparison.OrdinalIgnoreCase))) return false;
        (_heading, _above) = (cells.Select(c => c.ToLowerInvariant()).ToArray(), null);
        return true;
    }

    // The 2 of "o2" and "spo2" is no figure.
    private static bool HasFigures(string line)
    {
        for (var i = 0; i < line.Length; i++)
            if (char.IsAsciiDigit(line[i]) && !(line[i] == '2' && i > 0 && line[i - 1] is 'o' or 'O')) return true;
        return false;
    }

    /// <summary>The row as words; the line itself when it is not a row.</summary>
    public string Rewrite(string line, out bool pairsByPhase)
    {
        pairsByPhase = false;
        if (_heading is null || line.Count(c => c == '|') < 2) return line;
        var cells = Cells(line);
        for (var k = 0; k < cells.Length; k++)
        {
            var above = _above is not null && k < _above.Length ? _above[k] : "";
            if (cells[k] is "\"" or "“" or "”" or "''" or "ditto" or "do") cells[k] = above;
            else if (cells[k].Length > 1 && cells[k][0] is '"' or '“' or '”') cells[k] = above.Split(' ')[0] + cells[k][1..];
        }
        _above = [.. cells.Select((c, k) => c.Length == 0 && _above is not null && k < _above.Length ? _above[k] : c)];
        for (var k = 0; k < cells.Length && k < _heading.Length; k++)
        {
            if (cells[k].Length == 0) continue;
            var (before, after) = (HasWord(_heading[k], "before", "bef", "pre", "b4"), HasWord(_heading[k], "after", "aft", "post"));
            if (_heading[k].Contains("sat", StringComparison.Ordinal) || _heading[k].Contains("spo2", StringComparison.Ordinal) || ((before || after) && cells[k].Length <= 4))
            {
                if (before != after) { cells[k] = (before ? "sats before " : "sats after ") + cells[k]; continue; }
                pairsByPhase = _heading[k].Contains("b/a", StringComparison.Ordinal) || (_heading[k].Contains("bef", StringComparison.Ordinal) && _heading[k].Contains("aft", StringComparison.Ordinal));
                if (pairsByPhase && cells[k].EndsWith('/')) cells[k] = "before " + cells[k].TrimEnd('/');
                else if (pairsByPhase && cells[k].StartsWith('/')) cells[k] = "after " + cells[k].TrimStart('/');
                cells[k] = "sats " + cells[k];
            }
            else if (_heading[k] is "o2" or "oxygen" or "l/min" or "flow") cells[k] = "o2 " + cells[k];
            else if (_heading[k] is "hr" or "pulse") cells[k] = "hr " + cells[k];
            else if (_heading[k] is "temp" or "t") cells[k] = "temp " + cells[k];
        }
        // The date's column stays apart; the rest is one event.
        return string.Join(" , ", cells.Where(c => c.Length > 0));
    }

    private static bool HasWord(string heading, params string[] words) => heading.Split(' ', '/', '(', ')', '-').Any(w => words.Contains(w, StringComparer.Ordinal));

    private static string[] Cells(string line) => line.Trim().Trim('|').Split('|').Select(c => c.Trim()).ToArray() is var cells && line.TrimStart().StartsWith('|') && !line.TrimEnd().EndsWith('|') ? ["", .. cells] : cells;
}
