namespace CareRecords.Import.Notes;

/// <summary>
/// Tables typed into notes with upright strokes: a heading names the columns, so "94/96" under "sats b/a" is before and after, and a ditto mark
/// repeats the cell above. Each row is rewritten as words that the line reader knows.
/// </summary>
internal sealed partial class TableLines
{
    private string[]? _heading;
    private string[]? _above;
    private bool _led;
    // The last cell of a column that named places of the chest: "\" LL RL" under a row of medicine repeats the session above it.
    private readonly Dictionary<int, string> _placed = [];

    /// <summary>Whether the line is a table's heading; it is then remembered.</summary>
    public bool IsHeading(string line)
    {
        if (line.Count(c => c == '|') < 2 || HasFigures(line)) return false;
        var led = line.TrimStart().StartsWith('|');
        var cells = Cells(line, led);
        if (!cells.Any(c => c.ToLowerInvariant() is "time" or "date" or "day" or "sats" or "spo2" or "what" or "when") && !cells.Any(c => c.Contains("sat", StringComparison.OrdinalIgnoreCase))) return false;
        (_heading, _above, _led) = (cells.Select(c => c.ToLowerInvariant()).ToArray(), null, led);
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
        var cells = Cells(line, _led);
        for (var k = 0; k < cells.Length; k++)
        {
            var above = _above is not null && k < _above.Length ? _above[k] : "";
            if (cells[k] is "\"" or "“" or "”" or "''" or "ditto" or "do") cells[k] = above;
            else if (cells[k] is "-" or "–" or "—") { }
            else if (cells[k].Length > 1 && cells[k][0] is '"' or '“' or '”') cells[k] = (Places(cells[k].ToLowerInvariant()).Length > 0 && _placed.TryGetValue(k, out var session) ? session : above).Split(' ')[0] + cells[k][1..];
            if (Places(cells[k].ToLowerInvariant()).Length > 0) _placed[k] = cells[k];
        }
        _above = [.. cells.Select((c, k) => c is "" or "-" or "–" or "—" && _above is not null && k < _above.Length ? _above[k] : c)];
        for (var k = 0; k < cells.Length && k < _heading.Length; k++)
        {
            // A dash is an empty cell.
            if (cells[k] is "-" or "–" or "—") cells[k] = "";
            if (cells[k].Length == 0) continue;
            if (Places(_heading[k]) is { Length: > 1 } places && Figures(cells[k]) is var figures && figures.Length == places.Length)
            {
                // "chest LL RL LU RU" over "3 3 2 -": each place with its minutes.
                cells[k] = "chest " + string.Join(" ", places.Zip(figures).Where(p => p.Second is not ("-" or "0" or "x")).Select(p => p.First + " " + p.Second));
                continue;
            }
            if (cells[k].Any(char.IsAsciiDigit) && !cells[k].Any(char.IsLetter) && _heading[k] is "feed" or "feeds" or "milk" or "bolus") { cells[k] = "feed " + cells[k]; continue; }
            // "120 ml" under "RT feed": with its unit, and the way that the heading names.
            if (HasWord(_heading[k], "feed", "feeds", "milk", "bolus") && Amount().IsMatch(cells[k])) { cells[k] = $"{_heading[k]} {cells[k]}"; continue; }
            var (before, after) = (HasWord(_heading[k], "before", "bef", "pre", "b4"), HasWord(_heading[k], "after", "aft", "post"));
            if (_heading[k].Contains("sat", StringComparison.Ordinal) || _heading[k].Contains("spo2", StringComparison.Ordinal) || ((before || after) && cells[k].Length <= 4))
            {
                if (before != after) { cells[k] = (before ? "sats before " : "sats after ") + cells[k]; continue; }
                pairsByPhase = _heading[k].Contains("b/a", StringComparison.Ordinal) || (_heading[k].Contains("bef", StringComparison.Ordinal) && _heading[k].Contains("aft", StringComparison.Ordinal));
                if (pairsByPhase && cells[k].EndsWith('/')) cells[k] = "before " + cells[k].TrimEnd('/');
                else if (pairsByPhase && cells[k].StartsWith('/')) cells[k] = "after " + cells[k].TrimStart('/');
                cells[k] = "sats " + cells[k];
            }
            else if (_heading[k] is "o2" or "oxygen" or "l/min" or "flow") cells[k] = cells[k].Any(char.IsLetter) ? "o2 " + cells[k] : "o2 " + cells[k] + " l";
            else if (_heading[k] is "hr" or "pulse") cells[k] = "hr " + cells[k];
            else if (_heading[k] is "temp" or "t") cells[k] = "temp " + cells[k];
        }
        // The date's column stays apart; the rest is one event.
        return Joined(cells);
    }

    // "C" under "what" belongs to what stands beside it; minutes under one place each are those of one session.
    private string Joined(string[] cells)
    {
        var row = new System.Text.StringBuilder();
        var (placed, kind) = (false, false);
        for (var k = 0; k < cells.Length; k++)
        {
            if (cells[k].Length == 0) continue;
            var place = k < _heading!.Length && Places(_heading[k]) is [var one] && one == _heading[k] && Figures(cells[k]).Length == 1;
            if (place && cells[k] is "0" or "x") continue;
            row.Append(row.Length == 0 ? "" : placed && place || kind ? " " : " , ");
            row.Append(place ? $"{_heading[k]} {cells[k]}" : cells[k]);
            (placed, kind) = (place, k < _heading.Length && _heading[k] is "what" or "kind" or "type" or "event");
        }

        return row.ToString();
    }

    // The places that a heading names in order: "chest ll rl lu ru".
    private static string[] Places(string heading) => [.. heading.Split([' ', '/', ','], StringSplitOptions.RemoveEmptyEntries).Where(w => w is "ll" or "rl" or "lu" or "ru" or "lll" or "rll" or "lul" or "rul" or "ul" or "ur" or "bl" or "br" or "tl" or "tr" or "lb" or "rb")];

    private static string[] Figures(string cell) => cell.Split([' ', '/', ','], StringSplitOptions.RemoveEmptyEntries) is var parts && parts.All(p => p is "-" or "x" || p.All(c => char.IsAsciiDigit(c) || c is '.' or '½')) ? parts : [];

    [System.Text.RegularExpressions.GeneratedRegex(@"^\d{1,3}(?:[.,]\d)? ?(?:mls?|cc|oz)$", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex Amount();

    private static bool HasWord(string heading, params string[] words) => heading.Split(' ', '/', '(', ')', '-').Any(w => words.Contains(w, StringComparer.Ordinal));

    // A row that begins with a stroke under a heading that does not has an empty first cell ("      | 6.25 | …" under "date | time | …").
    private static string[] Cells(string line, bool led)
    {
        var row = line.Trim();
        if (led && row.StartsWith('|')) row = row[1..];
        if (row.EndsWith('|')) row = row[..^1];
        return row.Split('|').Select(c => c.Trim()).ToArray();
    }
}
