namespace CareRecords.Import.Reading.Keys;

/// <summary>
/// Reads the family's own explanations of its words, in notes and around tables: "blue = salbutamol, brown = beclometasone", "LL means left lower", "V stands for vibrations",
/// "the red one is salbutamol".
/// </summary>
internal static partial class KeyReader
{
    internal const int LongestLine = 400;
    private static readonly System.Buffers.SearchValues<string> Explaining = System.Buffers.SearchValues.Create(["put ", "call", "refer to ", "write ", "say ", "(=", "( =", "this is ", "that is "], StringComparison.OrdinalIgnoreCase);
    private static readonly string[] Verbs = [" means ", " stands for ", " is short for ", " is what we call ", " - meaning "];
    private static readonly System.Buffers.SearchValues<string> AnyVerb = System.Buffers.SearchValues.Create(Verbs, StringComparison.OrdinalIgnoreCase);
    private static readonly System.Buffers.SearchValues<string> Equating = System.Buffers.SearchValues.Create([" is", " are", " means"], StringComparison.OrdinalIgnoreCase);

    [System.Text.RegularExpressions.GeneratedRegex(@"\bthe two (?=(?:lower|upper|bottom|top|base|lowers|uppers|bottoms|tops|bases|sides|lungs)\b)", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex TheTwo();

    /// <summary>The words that a line explains; none when the line is not an explanation.</summary>
    /// <param name="line">The line.</param>
    /// <param name="afterKey">Whether the line above is a key: this one may go on with it.</param>
    public static List<FamilyWord> Read(string line, bool afterKey = false)
    {
        var words = new List<FamilyWord>();
        if (line.Length > LongestLine) return words;
        // "the two lower sides, 3 min each": how many places, and no minutes.
        if (line.Contains("the two ", StringComparison.OrdinalIgnoreCase)) line = TheTwo().Replace(line, "both ");
        if (SessionNames.Named(line) is { Count: > 0 } named) { words.AddRange(named); return words; }
        if (line.Contains('"') && SessionNames.Quoted(line) is { } quoted) { words.Add(quoted); return words; }
        if (line.Contains('"') && !line.Contains('=') && SessionNames.QuotedIs(line) is { Count: > 0 } meant)
        {
            words.AddRange(meant);
            // "When I write "oklep" it is the clapping …. "Blue" is salbutamol": both.
            if (SessionNames.WhenIWrite(line) is { } first && Read(first) is { Count: > 0 } others) words.AddRange(others.Where(o => !words.Exists(w => w.Word.Equals(o.Word, StringComparison.OrdinalIgnoreCase))));
            return words;
        }

        // A look for the words of such sentences first: nearly every line has none.
        var explains = line.AsSpan().ContainsAny(Explaining);
        if (explains && SessionNames.Called(line) is { } called) { words.Add(called); return words; }
        if (line.AsSpan().ContainsAny('"', '“') && SessionNames.Written(line) is { Count: > 0 } written)
        {
            foreach (var word in written)
            {
                words.Add(word);
                if (word.Word.StartsWith("the ", StringComparison.OrdinalIgnoreCase)) words.Add(word with { Word = word.Word[4..] });
            }
            return words;
        }
        if (explains && SessionNames.JustPut(line) is { } put)
        {
            words.Add(put);
            // "the works" is also written "works".
            if (put.Word.StartsWith("the ", StringComparison.OrdinalIgnoreCase)) words.Add(put with { Word = put.Word[4..] });
            return words;
        }
        if (SessionNames.WhenIWrite(line) is { } explained) line = explained;
        if (SessionNames.Plan(line) is { } plan) { words.AddRange(SessionNames.PerPlan(plan)); return words; }
        if (line.AsSpan().ContainsAny(AnyVerb))
            foreach (var verb in Verbs) line = line.Replace(verb, " = ", StringComparison.OrdinalIgnoreCase);
        if (!line.Contains('='))
        {
            if (SessionNames.Usual(line) is { } usual) { words.Add(usual); return words; }
            // "Home nursing 2100-0700. CPT per order: …": the plan in a sentence of its own.
            if (line is [not (>= '0' and <= '9'), ..] && SessionNames.PlanWithin(line) is { } within) { words.AddRange(SessionNames.PerPlan(within)); return words; }
            SignLists.Add(line, words, afterKey: afterKey);
            var equates = line.AsSpan().ContainsAny(Equating);
            if (equates) MedicineSentences.Add(line, words);
            if (((equates ? SessionNames.UsualIs(line) ?? SessionNames.TechniqueIs(line) : null) ?? SessionNames.Taught(line)) is { } session) words.Add(session);
            return words;
        }
        if (IsTitled(line) && line.Contains(" / ", StringComparison.Ordinal)) line = Untitled(line.TrimStart());
        // A key of several parts: "f- feed off, fb bolus / n neb = salbutamol / v = vibes".
        if (line.Contains(" / ", StringComparison.Ordinal) && line.Count(c => c == '=') > 1 && !line.Contains("  ", StringComparison.Ordinal)
            && line.Split(" / ") is { Length: > 1 } several && several.Count(p => p.Contains('=')) >= Math.Max(2, several.Length / 2) && !(several[0].Contains('=') && several[0][..several[0].IndexOf('=')].Contains('/')) && several.Skip(1).All(p => !p.Contains('=') || p.IndexOf('=') < 20) && !several.Zip(several.Skip(1)).Any(p => KeyParts.PartsOnePair(p.First, p.Second))
            // "Std = perc LLL 3 / RLL 3 / LUL 2": places of one meaning.
            && !several.Any(p => !p.Contains('=') && CellTerms.Read(p) is [var place, { Kind: TermKind.Number or TermKind.Quantity }, ..] && place.Is(Sense.SideArea)))
        {
            foreach (var part in line.Split(" / "))
                if (part.Contains('=')) words.AddRange(Read(part)); else SignLists.Add(part, words, 1);
            return words;
        }
        var signs = new List<int>();
        for (var i = 0; i < line.Length; i++)
            if (line[i] == '=' && !(i + 1 < line.Length && line[i + 1] is '>' or '=') && !(i > 0 && line[i - 1] is '=' or '<' or '!')) signs.Add(i);
        var from = Math.Max(0, KeyParts.Start(line));
        for (var s = 0; s < signs.Count; s++)
        {
            var key = s == 0 ? KeyParts.First(line[from..Math.Max(from, signs[0])]) : KeyParts.Before(line, signs[s - 1] + 1, signs[s]);
            var until = s + 1 < signs.Count ? signs[s + 1] - KeyParts.Before(line, signs[s] + 1, signs[s + 1]).Length : line.Length;
            KeyMeanings.Add(key, SessionNames.InNamedPlaces(line[..Math.Max(0, signs[s] - key.Length)], line[(signs[s] + 1)..Math.Max(signs[s] + 1, until)]), words);
        }
        words.AddRange(SignLists.PlacesInBrackets(line));
        if (words.Count > 0) MedicineSentences.Add(line, words);
        // "CPT = percussion. Order: LLL/RLL 3 min ea, LUL/RUL 2": a plan beside other words.
        if (SessionNames.PlanWithin(line) is { } ordered) words.AddRange(SessionNames.PerPlan(ordered));
        return words;
    }

    /// <summary>Whether a line calls itself a key.</summary>
    public static bool IsTitled(string line) => Titles.Any(t => line.TrimStart().StartsWith(t, StringComparison.OrdinalIgnoreCase));

    private static readonly string[] Titles = ["key ", "key:", "legend", "codes ", "codes:", "abbreviations", "abbrev"];

    /// <summary>A line, or a part of one, without the title of a key.</summary>
    public static string Untitled(string entry)
    {
        foreach (var title in Titles)
            if (entry.Length > title.Length && entry.StartsWith(title, StringComparison.OrdinalIgnoreCase)) return entry[title.Length..].TrimStart(':', ' ', '-');
        return entry;
    }
}
