namespace CareRecords.Import.Tables;

/// <summary>Finds what separates the cells of a text.</summary>
internal static class Delimiters
{
    private static readonly char[] Candidates = ['\t', ';', '|', ','];

    /// <summary>
    /// The separator that most of the lines share in the same number; null when none stands in two lines out of five.
    /// A comma inside numbers ("2,5") counts less than a semicolon or tab that stands in every line.
    /// </summary>
    public static char? Find(IReadOnlyList<string> firstLines)
    {
        var lines = firstLines.Where(l => l.AsSpan().Trim().Length > 0).ToList();
        if (lines.Count == 0) return null;
        var best = Candidates.Select(c => (Delimiter: c, Score: Score(lines, c))).MaxBy(c => c.Score);
        return best.Score > 0 ? best.Delimiter : null;
    }

    private static double Score(List<string> lines, char delimiter)
    {
        var counts = lines.Select(l => CountOutsideQuotes(l, delimiter)).ToList();
        var with = counts.Count(c => c > 0);
        if (with * 5 < lines.Count * 2) return 0;
        var (most, agreeing) = counts.Where(c => c > 0).GroupBy(c => c).Select(g => (g.Key, g.Count())).MaxBy(g => (g.Item2, g.Key));
        var weight = delimiter == ',' ? 0.7 : 1.0;
        return weight * ((double)with / lines.Count + (double)agreeing / lines.Count + Math.Min(most, 6) / 12.0);
    }

    private static int CountOutsideQuotes(string line, char delimiter)
    {
        var (count, quoted) = (0, false);
        foreach (var c in line)
            if (c == '"') quoted = !quoted;
            else if (c == delimiter && !quoted) count++;
        return count > 0 || !quoted ? count : line.Count(c => c == delimiter);
    }
}
