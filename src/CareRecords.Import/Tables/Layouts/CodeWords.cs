using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>One code of a cell with what the family's key says of it.</summary>
/// <param name="Code">The code as the key writes it ("S94/0.5").</param>
/// <param name="Means">What the key says that it means.</param>
/// <param name="What">The same as a kind of event.</param>
/// <param name="Rest">What stands after its letters; empty when nothing does.</param>
/// <param name="Minute">The minute after ":"; null when none is written.</param>
internal sealed record CodeWritten(string Code, string Means, WhatHappened What, string Rest, int? Minute)
{
    /// <summary>The minute at which it ended (":30-:55"); null when none is written.</summary>
    public int? MinuteTo { get; init; }

    /// <summary>What the key says of a second code written together with it ("C + V"); null when there is none.</summary>
    public string? Also { get; init; }
}

/// <summary>
/// Reads cells of short codes that a key explains by an example: where it says "S94/0.5 = sat / litres", "S91/1" is a saturation too.
/// </summary>
internal sealed partial class CodeWords
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
            var (body, minute, to) = WithoutMinute(token);
            var letters = Letters(body);
            if (body.Length == 0 && codes.Count > 0) codes[^1] = codes[^1] with { Minute = codes[^1].Minute ?? minute, MinuteTo = codes[^1].MinuteTo ?? to };
            else if (body.Length == 0 || token is "+" or "&") continue;
            else if (letters.Length > 0 && _byLetters.TryGetValue(letters, out var known) && !(body.Length == letters.Length && codes.Count > 0 && IsOfValue(body))) codes.Add(new CodeWritten(known.Word.Word, known.Word.Means, known.What, body[letters.Length..], minute) { MinuteTo = to });
            else if (codes.Count > 0) codes[^1] = codes[^1] with { Rest = $"{codes[^1].Rest} {body}".Trim(), Minute = codes[^1].Minute ?? minute, MinuteTo = codes[^1].MinuteTo ?? to };
            else return null;
        }

        if (!codes.TrueForAll(c => c.Rest.Split(' ', StringSplitOptions.RemoveEmptyEntries).All(IsOfValue) || SameAs.PointsBack(c.Rest) || SameAs.SaysNotDone(c.Means))) return null;
        for (var i = codes.Count - 1; i > 0; i--)
        {
            // "C + V :20": one session of both.
            if (codes[i] is not { What: { Kind: TableKind.Sessions, Technique: Records.Technique.Vibration } } || codes[i - 1].What.Kind != TableKind.Sessions) continue;
            codes[i - 1] = codes[i - 1] with { Also = codes[i].Means, Minute = codes[i - 1].Minute ?? codes[i].Minute, MinuteTo = codes[i - 1].MinuteTo ?? codes[i].MinuteTo, Rest = $"{codes[i - 1].Rest} {codes[i].Rest}".Trim() };
            codes.RemoveAt(i);
        }

        return codes.Count > 0 ? codes : null;
    }

    // "S 94/118 after", "O down to 0,5", "C bottoms 4 tops 3": words that go with a code's value.
    private static bool IsOfValue(string word) => char.IsAsciiDigit(word[0]) || SmallWords.ReadPhase(word) is not null || OnOff.Ends(word) is not null || AreaNames.In(word).Count > 0
        || word.ToLowerInvariant() is "to" or "from" or "in" or "at" or "air" or "ml" or "l" or "puffs" or "mg" or "min" or "mins" or "each" or "side" or "just" or "only" or "both" or "and" || word.All(c => char.IsAsciiDigit(c) || char.IsPunctuation(c));

    /// <summary>The parts of an explanation between commas and colons; a comma between figures is a decimal one.</summary>
    public static IEnumerable<string> Clauses(string text) => text.Split([", ", ";", ": "], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    /// <summary>The unit that an explanation gives to bare amounts ("salbutamol inhaler: puffs"); null when it gives none.</summary>
    public static string? UnitIn(string means) =>
        Lexicon.Split(means).Select(w => w switch { "puffs" or "puff" => "puffs", "ml" or "mls" => "ml", "mg" => "mg", "mcg" => "mcg", "drops" => "drops", _ => null }).FirstOrDefault(u => u is not null);

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

    // "S4:30", ":30", ":30-:55".
    private static (string Body, int? Minute, int? To) WithoutMinute(string token)
    {
        var found = MinutePast().Match(token);
        // "7:30" is a time, "S4:30" a code with its minute.
        if (!found.Success || (found.Index > 0 && !char.IsLetter(token[0]) && char.IsAsciiDigit(token[found.Index - 1]))) return (token, null, null);
        return (token[..found.Index], int.Parse(found.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture), found.Groups[2].Success ? int.Parse(found.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) : null);
    }

    /// <summary>A minute past the hour of the cell at the end of words: ":20", ":30-:55".</summary>
    [System.Text.RegularExpressions.GeneratedRegex(@":([0-5]\d)(?:\s*[-–]\s*:?([0-5]\d))?$")]
    public static partial System.Text.RegularExpressions.Regex MinutePast();
}
