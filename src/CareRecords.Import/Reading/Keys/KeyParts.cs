namespace CareRecords.Import.Reading.Keys;

/// <summary>Cuts a key at its signs: which words stand before each "=" and are explained by it.</summary>
internal static class KeyParts
{
    /// <summary>Where the words that are explained begin: behind a title with a colon.</summary>
    public static int Start(string line)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        return colon > 0 && colon < line.IndexOf('=', StringComparison.Ordinal) ? colon + 1 : 0;
    }

    /// <summary>The first word that is explained: after the last sentence, comma or column gap, without a title in front of it.</summary>
    public static string First(string before)
    {
        if (before.LastIndexOfAny([',', ';']) is var cut && cut >= 0) before = before[(cut + 1)..];
        if (before.LastIndexOf(". ", StringComparison.Ordinal) is var stop && stop >= 0) before = before[(stop + 1)..];
        if (before.Trim().LastIndexOf("  ", StringComparison.Ordinal) is var gap && gap > 0) before = before.Trim()[gap..];
        var words = before.Trim();
        foreach (var title in (string[])["key ", "legend ", "codes ", "code ", "abbreviations ", "note ", "nb ", "words ", "my words "])
            if (words.Length > title.Length && words.StartsWith(title, StringComparison.OrdinalIgnoreCase)) return words[title.Length..];
        return before;
    }

    /// <summary>The word before a later "=": after the last comma or gap of two spaces, else the last word (or words joined by slashes).</summary>
    public static string Before(string line, int from, int sign)
    {
        var between = line[from..sign];
        var cut = between.LastIndexOfAny([',', ';', '.']);
        // The point of "2.5 mg" parts nothing.
        while (cut > 0 && cut + 1 < between.Length && char.IsAsciiDigit(between[cut + 1])) cut = between.LastIndexOfAny([',', ';', '.'], cut - 1);
        var trimmed = between.TrimEnd();
        var gap = trimmed.LastIndexOf("  ", StringComparison.Ordinal);
        // "P = poorly minutes, 5 each    low = the low ones": the gap stands nearer than the comma.
        if (cut >= 0 && gap < cut && between[(cut + 1)..].Trim().Length > 0) return between[(cut + 1)..];
        if (gap > 0 && trimmed[gap..].Trim().Length > 0) return between[gap..];
        if (trimmed.LastIndexOf(" and ", StringComparison.Ordinal) is var joined && joined > 0) return between[(joined + 5)..];
        var at = trimmed.Length;
        while (at > 0 && !char.IsWhiteSpace(trimmed[at - 1])) at--;
        while (at > 2 && trimmed[..at].TrimEnd().EndsWith('/'))
        {
            at = trimmed[..at].TrimEnd().Length - 1;
            while (at > 0 && char.IsWhiteSpace(trimmed[at - 1])) at--;
            while (at > 0 && !char.IsWhiteSpace(trimmed[at - 1])) at--;
        }
        // "BR = bottom right TL TR = tops": two signs of one meaning.
        var earlier = trimmed[..at].TrimEnd();
        if (earlier[(earlier.LastIndexOf(' ') + 1)..] is { Length: > 0 and <= 3 } pair && (SignPairs.IsPair($"{pair} {trimmed[at..]}"))) at = earlier.LastIndexOf(' ') + 1;
        return between[at..];
    }

    /// <summary>"RL = right lower LU / RU = uppers", "T = temperature. b / a = before / after": the stroke stands between two signs of one meaning.</summary>
    public static bool PartsOnePair(string before, string after) =>
        before[(before.LastIndexOf(' ') + 1)..] is { Length: > 0 and <= 3 } one && after.Split(' ') is [{ Length: > 0 and <= 3 } other, "=", ..] && one.Length == other.Length
        && (one.All(char.IsUpper) && other.All(char.IsUpper) || one.All(char.IsLetter) && (before.Length == one.Length || before[..^(one.Length + 1)].TrimEnd()[^1..] is "." or "," or ";"));
}
