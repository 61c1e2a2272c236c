using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>Reads the family's own explanations of its words: "blue = salbutamol, brown = beclometasone", "LL = left lower RL = right lower".</summary>
internal static class LegendReader
{
    private const int LongestWord = 30;
    private const int LongestLine = 400;

    /// <summary>The words that a line explains; none when the line is not an explanation.</summary>
    public static List<FamilyWord> Read(string line)
    {
        var words = new List<FamilyWord>();
        if (line.Length > LongestLine || !line.Contains('=')) return words;
        var signs = new List<int>();
        for (var i = 0; i < line.Length; i++)
            if (line[i] == '=' && !(i + 1 < line.Length && line[i + 1] is '>' or '=') && !(i > 0 && line[i - 1] is '=' or '<' or '!')) signs.Add(i);
        var from = Math.Max(0, LegendStart(line));
        for (var s = 0; s < signs.Count; s++)
        {
            var key = s == 0 ? line[from..Math.Max(from, signs[0])] : KeyBefore(line, signs[s - 1] + 1, signs[s]);
            if (s == 0 && key.LastIndexOfAny([',', ';', '.']) is var cut && cut >= 0) key = key[(cut + 1)..];
            var until = s + 1 < signs.Count ? signs[s + 1] - KeyBefore(line, signs[s] + 1, signs[s + 1]).Length : line.Length;
            var means = line[(signs[s] + 1)..Math.Max(signs[s] + 1, until)].Trim().Trim(',', ';', '.', ' ', '-');
            key = key.Trim().Trim('"', '\'', '“', '”', '-', '*', '•', ' ', '#', '(');
            if (key.Length is 0 or > LongestWord || means.Length == 0) continue;
            // "0605 1L = 94", "changed toe = 95" are readings, not explanations.
            if (char.IsAsciiDigit(means[0]) && !means.Any(char.IsLetter)) continue;
            if (Leading(means) is >= 50 and <= 100) continue;
            if (!key.Any(char.IsLetter) || !means.Any(char.IsLetter)) continue;
            if (char.IsAsciiDigit(key[0]) && means.Any(char.IsAsciiDigit)) continue;
            if (key.Contains('/')) Pair(key, means, words);
            else words.Add(new FamilyWord(key, means));
        }
        return words;
    }

    private static int Leading(string means)
    {
        var digits = means.AsSpan()[..means.AsSpan().IndexOfAnyExceptInRange('0', '9')];
        return digits.Length is > 0 and <= 3 ? int.Parse(digits, System.Globalization.CultureInfo.InvariantCulture) : 0;
    }

    private static int LegendStart(string line)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        return colon > 0 && colon < line.IndexOf('=', StringComparison.Ordinal) ? colon + 1 : 0;
    }

    // The word before a later "=": after the last comma, else the last word (or words joined by slashes).
    private static string KeyBefore(string line, int from, int sign)
    {
        var between = line[from..sign];
        var cut = between.LastIndexOfAny([',', ';', '.']);
        if (cut >= 0 && between[(cut + 1)..].Trim().Length > 0) return between[(cut + 1)..];
        var trimmed = between.TrimEnd();
        var at = trimmed.Length;
        while (at > 0 && !char.IsWhiteSpace(trimmed[at - 1])) at--;
        while (at > 2 && trimmed[..at].TrimEnd().EndsWith('/'))
        {
            at = trimmed[..at].TrimEnd().Length - 1;
            while (at > 0 && char.IsWhiteSpace(trimmed[at - 1])) at--;
            while (at > 0 && !char.IsWhiteSpace(trimmed[at - 1])) at--;
        }
        return between[at..];
    }

    // "L/R = links / regs" explains two words; "LU / RU = uppers" explains each by the same words.
    private static void Pair(string key, string means, List<FamilyWord> words)
    {
        var keys = key.Split('/', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var meanings = means.Split('/', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        if (meanings.Length == keys.Length) words.AddRange(keys.Zip(meanings, (k, m) => new FamilyWord(k, m)));
    }
}
