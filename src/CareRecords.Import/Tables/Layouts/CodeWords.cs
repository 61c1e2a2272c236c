using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>One code of a cell with what the family's key says of it.</summary>
/// <param name="Code">The code as the key writes it ("S94/0.5").</param>
/// <param name="Means">What the key says that it means.</param>
/// <param name="What">The same as a kind of event.</param>
/// <param name="Rest">What stands after its letters; empty when nothing does.</param>
/// <param name="Minute">The minute after ":"; null when none is written.</param>
internal sealed record CodeWritten(string Code, string Means, WhatHappened What, string Rest, int? Minute);

/// <summary>
/// Reads cells of short codes that a key explains by an example: where it says "S94/0.5 = sat / litres", "S91/1" is a saturation too.
/// </summary>
internal sealed class CodeWords
{
    private const int LongestLetters = 5;

    private readonly Dictionary<string, (FamilyWord Word, WhatHappened What)> _byLetters = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The codes among the family's words.</summary>
    public CodeWords(FamilyWords words)
    {
        foreach (var word in words.All)
        {
            var letters = Letters(word.Word.Trim());
            if (letters.Length is 0 or > LongestLetters || word.Word.Trim().Length > 24) continue;
            if (letters.Length < word.Word.Trim().Length && char.IsLetter(word.Word.Trim()[^1]) && !word.Word.Contains('/') && !word.Word.Contains(' ')) continue;
            if (KindWords.Read(word.Means, FamilyWords.None) is { } what) _byLetters.TryAdd(letters, (word, what));
        }
    }

    /// <summary>The codes of a cell; null when anything in it is no code.</summary>
    public IReadOnlyList<CodeWritten>? Read(string text)
    {
        if (_byLetters.Count == 0) return null;
        var codes = new List<CodeWritten>();
        foreach (var token in Tokens(text))
        {
            var (body, minute) = WithoutMinute(token);
            var letters = Letters(body);
            if (letters.Length == 0 && codes.Count > 0 && codes[^1].Rest.Length == 0) codes[^1] = codes[^1] with { Rest = body, Minute = codes[^1].Minute ?? minute };
            else if (letters.Length > 0 && _byLetters.TryGetValue(letters, out var known)) codes.Add(new CodeWritten(known.Word.Word, known.Word.Means, known.What, body[letters.Length..], minute));
            else if (codes.Count > 0 && IsOfValue(body)) codes[^1] = codes[^1] with { Rest = $"{codes[^1].Rest} {body}".Trim() };
            else return null;
        }

        return codes.Count > 0 ? codes : null;
    }

    // "S 94/118 after", "O down to 0,5": words that go with a code's value.
    private static bool IsOfValue(string word) => char.IsAsciiDigit(word[0]) || SmallWords.ReadPhase(word) is not null || word.ToLowerInvariant() is "up" or "down" or "to" or "from" or "on" or "in" or "at" or "air" or "ml" or "l" or "puffs" or "mg" or "min" or "mins" or "each" or "side";

    /// <summary>The parts of an explanation between commas and colons; a comma between figures is a decimal one.</summary>
    public static IEnumerable<string> Clauses(string text) => text.Split([", ", ";", ": "], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    // A comma between figures is a decimal one.
    private static IEnumerable<string> Tokens(string text)
    {
        var from = 0;
        for (var i = 0; i <= text.Length; i++)
        {
            if (i < text.Length && !char.IsWhiteSpace(text[i]) && text[i] != ';' && !(text[i] == ',' && !(i > 0 && i + 1 < text.Length && char.IsAsciiDigit(text[i - 1]) && char.IsAsciiDigit(text[i + 1])))) continue;
            if (i > from) yield return text[from..i];
            from = i + 1;
        }
    }

    private static string Letters(string text)
    {
        var end = 0;
        while (end < text.Length && char.IsLetter(text[end])) end++;
        return text[..end];
    }

    private static (string Body, int? Minute) WithoutMinute(string token)
    {
        var at = token.LastIndexOf(':');
        return at >= 0 && token.Length - at == 3 && int.TryParse(token.AsSpan(at + 1), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var minute) && minute < 60
            ? (token[..at], minute) : (token, null);
    }
}
