using System.Text.RegularExpressions;

namespace CareRecords.Import.Reading.Keys;

/// <summary>Two signs, or as many, that one explanation is of: "LB RB = left/right bottom", "TL TR = tops", "b / a = sats before / after".</summary>
internal static partial class SignPairs
{
    /// <summary>The signs that one explanation is of; null where it is of one word.</summary>
    public static IReadOnlyList<FamilyWord>? Read(string key, string means)
    {
        var (signs, told) = (key.Trim(), means.Trim());
        // "LB RB = left/right bottom": two signs and what they share.
        if (TwoSigns().Match($"{signs} = {told}") is { Success: true } two && IsSideOrArea(two.Groups[3].Value) && IsSideOrArea(two.Groups[4].Value))
            return [new FamilyWord(two.Groups[1].Value, $"{two.Groups[3].Value} {two.Groups[5].Value}"), new FamilyWord(two.Groups[2].Value, $"{two.Groups[4].Value} {two.Groups[5].Value}")];
        // "TL TR = tops", "LB RB = bases", "LU / RU = uppers": the sides in the signs themselves.
        if (Sided(signs) is var (left, right) && CellTerms.Read(WithoutArticle(told.Trim(' ', ',', ';', '.').Split(". ")[0])) is [{ } place] && place.Is(Sense.Area))
            return [new FamilyWord(left, $"left {place.Text}"), new FamilyWord(right, $"right {place.Text}")];
        // "LB RB = left base, right base": as many signs as places, in one order.
        if (key.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries) is { Length: > 1 } several && several.All(s => s.Length <= 3 && s.All(char.IsUpper))
            && means.Split(". ")[0].Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) is var listed && listed.Length == several.Length && Array.TrueForAll(listed, l => AreaGrammar.Read(CellTerms.Read(l)).Areas is [{ Side: not Records.Side.Unknown }]))
            return [.. several.Zip(listed, (s, l) => new FamilyWord(s, l.TrimEnd('.')))];
        // "Fon Foff = night pump on/off", "Sb Sa = sat before/after", "BL BR = bottom left / right": what they share stands first.
        return SharedFirst().Match($"{signs} = {told}") is { Success: true } shared
            ? [new FamilyWord(shared.Groups[1].Value, $"{shared.Groups[3].Value} {shared.Groups[4].Value}"), new FamilyWord(shared.Groups[2].Value, $"{shared.Groups[3].Value} {shared.Groups[5].Value}")] : null;
    }

    private static string WithoutArticle(string words) => words.StartsWith("the ", StringComparison.OrdinalIgnoreCase) ? words[4..] : words;

    /// <summary>Whether two signs are of the two sides of one place: "TL TR", "LU / RU".</summary>
    public static bool IsPair(string signs) => Sided(signs) is not null;

    private static (string Left, string Right)? Sided(string signs) =>
        SidesLast().Match(signs) is { Success: true } last ? (last.Groups[1].Value, last.Groups[3].Value) : SidedSigns().Match(signs) is { Success: true } first ? (first.Groups[1].Value, first.Groups[3].Value) : null;

    /// <summary>Words with strokes between, each with its own meaning: "L/R = links / regs"; none where there are not as many meanings as words.</summary>
    public static IEnumerable<FamilyWord> Parted(string key, string means)
    {
        var keys = key.Split('/', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var meanings = means.Split('/', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        // "b / a = sats before / after": the first word is of both.
        if (meanings.Length == 2 && meanings[0].Split(' ') is [var shared, "before" or "pre"] && meanings[1] is "after" or "post") meanings[1] = $"{shared} {meanings[1]}";
        return meanings.Length == keys.Length ? keys.Zip(meanings, (k, m) => new FamilyWord(k, m)) : [];
    }

    private static bool IsSideOrArea(string word) => CellTerms.Read(word) is [{ } term] && (term.Is(Sense.Side) || term.Is(Sense.Area));

    [GeneratedRegex(@"^([A-Z][A-Za-z]{0,2})(?:,| /)? ([A-Z][A-Za-z]{0,2}) = (\w+)\s?/\s?(\w+) (\w+)\W*$", RegexOptions.CultureInvariant)]
    private static partial Regex TwoSigns();

    [GeneratedRegex(@"^(L([A-Za-z])),?(?: and| /| \+| &)? ?/?(R\2)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SidedSigns();

    [GeneratedRegex(@"^(([A-Z])L),?(?: and| /| \+| &)? ?/?(\2R)$", RegexOptions.CultureInvariant)]
    private static partial Regex SidesLast();

    [GeneratedRegex(@"^([A-Z][A-Za-z]{0,4}),? ([A-Z][A-Za-z]{0,4}) = ([a-z]+(?: [a-z]+)?) (on|before|start|started|left|right|lower|upper|top|bottom)\s?/\s?(off|after|stop|stopped|right|left|upper|lower|bottom|top)\W*$", RegexOptions.CultureInvariant)]
    private static partial Regex SharedFirst();
}
