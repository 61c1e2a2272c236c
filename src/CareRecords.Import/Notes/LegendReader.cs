using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>
/// Reads the family's own explanations of its words: "blue = salbutamol, brown = beclometasone", "LL means left lower", "V stands for vibrations",
/// "the red one is salbutamol".
/// </summary>
internal static partial class LegendReader
{
    private const int LongestWord = 30;
    private const int LongestLine = 400;
    private static readonly System.Buffers.SearchValues<string> Explaining = System.Buffers.SearchValues.Create(["put ", "call", "refer to ", "write ", "say ", "(=", "( =", "this is ", "that is "], StringComparison.OrdinalIgnoreCase);
    private static readonly string[] Verbs = [" means ", " stands for ", " is short for ", " is what we call ", " - meaning "];
    private static readonly System.Buffers.SearchValues<string> AnyVerb = System.Buffers.SearchValues.Create(Verbs, StringComparison.OrdinalIgnoreCase);
    private static readonly System.Buffers.SearchValues<string> Equating = System.Buffers.SearchValues.Create([" is", " are", " means"], StringComparison.OrdinalIgnoreCase);

    /// <summary>The words that a line explains; none when the line is not an explanation.</summary>
    /// <param name="line">The line.</param>
    /// <param name="afterKey">Whether the line above is a key: this one may go on with it.</param>
    public static List<FamilyWord> Read(string line, bool afterKey = false)
    {
        var words = new List<FamilyWord>();
        if (line.Length > LongestLine) return words;
        if (Named(line) is { Count: > 0 } named) { words.AddRange(named); return words; }
        if (line.Contains('"') && Quoted(line) is { } quoted) { words.Add(quoted); return words; }
        // A look for the words of such sentences first: nearly every line has none.
        var explains = line.AsSpan().ContainsAny(Explaining);
        if (explains && Called(line) is { } called) { words.Add(called); return words; }
        if (explains && JustPut(line) is { } put)
        {
            words.Add(put);
            // "the works" is also written "works".
            if (put.Word.StartsWith("the ", StringComparison.OrdinalIgnoreCase)) words.Add(put with { Word = put.Word[4..] });
            return words;
        }
        if (WhenIWrite(line) is { } explained) line = explained;
        if (Plan(line) is { } plan) { words.AddRange(PerPlan(plan)); return words; }
        if (line.AsSpan().ContainsAny(AnyVerb))
            foreach (var verb in Verbs) line = line.Replace(verb, " = ", StringComparison.OrdinalIgnoreCase);
        if (!line.Contains('='))
        {
            if (Usual(line) is { } usual) { words.Add(usual); return words; }
            // "Home nursing 2100-0700. CPT per order: …": the plan in a sentence of its own.
            if (line is [not (>= '0' and <= '9'), ..] && PlanWithin(line) is { } within) { words.AddRange(PerPlan(within)); return words; }
            Listed(line, words, afterKey: afterKey);
            var equates = line.AsSpan().ContainsAny(Equating);
            if (equates) Told(line, words);
            if (((equates ? UsualIs(line) ?? TechniqueIs(line) : null) ?? Taught(line)) is { } session) words.Add(session);
            return words;
        }
        if (Titles.Any(t => line.TrimStart().StartsWith(t, StringComparison.OrdinalIgnoreCase)) && line.Contains(" / ", StringComparison.Ordinal)) line = Untitled(line.TrimStart());
        // A key of several parts: "f- feed off, fb bolus / n neb = salbutamol / v = vibes".
        if (line.Contains(" / ", StringComparison.Ordinal) && line.Count(c => c == '=') > 1 && !line.Contains("  ", StringComparison.Ordinal)
            && line.Split(" / ") is { Length: > 1 } several && several.Count(p => p.Contains('=')) >= Math.Max(2, several.Length / 2) && !(several[0].Contains('=') && several[0][..several[0].IndexOf('=')].Contains('/')) && several.Skip(1).All(p => !p.Contains('=') || p.IndexOf('=') < 20) && !several.Zip(several.Skip(1)).Any(p => PartsOnePair(p.First, p.Second)))
        {
            foreach (var part in line.Split(" / "))
                if (part.Contains('=')) words.AddRange(Read(part)); else Listed(part, words, 1);
            return words;
        }
        var signs = new List<int>();
        for (var i = 0; i < line.Length; i++)
            if (line[i] == '=' && !(i + 1 < line.Length && line[i + 1] is '>' or '=') && !(i > 0 && line[i - 1] is '=' or '<' or '!')) signs.Add(i);
        var from = Math.Max(0, LegendStart(line));
        for (var s = 0; s < signs.Count; s++)
        {
            var key = s == 0 ? FirstKey(line[from..Math.Max(from, signs[0])]) : KeyBefore(line, signs[s - 1] + 1, signs[s]);
            var until = s + 1 < signs.Count ? signs[s + 1] - KeyBefore(line, signs[s] + 1, signs[s + 1]).Length : line.Length;
            Explain(key, InNamedPlaces(line[..Math.Max(0, signs[s] - key.Length)], line[(signs[s] + 1)..Math.Max(signs[s] + 1, until)]), words);
        }
        words.AddRange(PlacesInBrackets(line));
        if (words.Count > 0) Told(line, words);
        // "CPT = percussion. Order: LLL/RLL 3 min ea, LUL/RUL 2": a plan beside other words.
        if (PlanWithin(line) is { } ordered) words.AddRange(PerPlan(ordered));
        return words;
    }

    /// <summary>Words explained in passing, in brackets: "thapki (patting)".</summary>
    public static List<FamilyWord> Aside(string line)
    {
        var words = new List<FamilyWord>();
        if (line.Length > LongestLine) return words;
        // "chest 6.45 patting 3 mins each, left bottom right bottom left top right top. thats what i mean by ordinary": the line tells of care too.
        if (MeanBy().Match(line) is { Success: true } match && AreasOf(line[..match.Index]) >= 2)
        {
            var first = CellTerms.Read(line).FindIndex(t => t.Is(Sense.Technique) || t.Is(Sense.Area) || t.Is(Sense.SideArea));
            if (first >= 0 && CellTerms.Read(line)[first].Start is var start && start < match.Index) words.Add(new FamilyWord(match.Groups[1].Value, line[start..match.Index].TrimEnd(' ', '.', ',')));
            return words;
        }
        var terms = CellTerms.Read(line);
        for (var i = 1; i + 2 < terms.Count; i++)
            if (terms[i].IsSymbol("(") && i + 3 < terms.Count && terms[i + 1].Text is "the" or "his" or "her" && terms[i + 3].IsSymbol(")") && (terms[i + 2].Is(Sense.Pump) || terms[i + 2].Is(Sense.Feed))
                && terms[i - 1] is { Kind: TermKind.Word, Meanings.Length: 0, Text.Length: > 2 } device)
                words.Add(new FamilyWord(line[device.Start..device.End], "pump"));
            else if (terms[i].IsSymbol("(") && terms[i + 2].IsSymbol(")") && (terms[i + 1].Is(Sense.Medicine) || terms[i + 1].Is(Sense.Technique) || terms[i + 1].Is(Sense.Session))
                && terms[i - 1] is { Kind: TermKind.Word, Meanings.Length: 0, Text.Length: > 2 } word)
                words.Add(new FamilyWord(line[word.Start..word.End], line[terms[i + 1].Start..terms[i + 1].End]));
        // "go to 5 min lowers, 3 min uppers, skip vibration (sick CPT)": what is told before the bracket is from now on called that.
        for (var i = 1; i + 1 < terms.Count; i++)
        {
            var word = terms.FindIndex(i, t => !t.IsSymbol("*"));
            if (!terms[i - 1].IsSymbol("(") || word < 0 || !terms[word].Is(Sense.Usual) || terms[word].Text.Length < 5 || terms.FindIndex(word + 1, t => !t.IsSymbol("*")) is var close && (close < 0 || !terms[close].IsSymbol(")"))) continue;
            var first = terms.FindIndex(t => t.Is(Sense.Area) || t.Is(Sense.SideArea) || t.Is(Sense.Technique));
            var from = first > 0 && terms[first - 1].Kind is TermKind.Quantity or TermKind.Number ? first - 1 : first;
            if (first >= 0 && first < i && AreasOf(line[terms[from].Start..terms[i - 1].Start]) >= 2) words.Add(new FamilyWord(line[terms[word].Start..terms[word].End], line[terms[from].Start..terms[i - 1].Start]));
        }
        // "puffer 2 puffs (salbutamol)": what the device holds.
        for (var i = 0; i + 2 < terms.Count; i++)
        {
            if (!terms[i].Is(Sense.Device) || terms[i].Is(Sense.Medicine)) continue;
            var open = i + 1 < terms.Count && terms[i + 1].Kind is TermKind.Quantity or TermKind.Times or TermKind.Number ? i + 2 : i + 1;
            if (open + 2 < terms.Count && terms[open].IsSymbol("(") && terms[open + 1].Is(Sense.Medicine) && terms[open + 2].IsSymbol(")"))
                words.Add(new FamilyWord(line[terms[i].Start..terms[i].End], $"{line[terms[open + 1].Start..terms[open + 1].End]} {line[terms[i].Start..terms[i].End]}"));
        }
        return words;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:that(?:'?s| is)|this is|it(?:'?s| is)) what (?:i|we) (?:mean by|call|put as|(?:will|shall) call|(?:will|shall) be calling|am calling|are calling) (?:the |an? )?(\w{3,}(?: \w{3,}(?=[.,]|$| so that\b| from now| from here))?)", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex MeanBy();

    // "LB left bottom, RB right bottom", "♥ sats   ☕ feed": short signs, each before words that the vocabulary knows.
    private static void Listed(string line, List<FamilyWord> words, int least = 2, bool afterKey = false)
    {
        var titled = afterKey || IsTitled(line);
        var entries = line.Replace("  ", ",", StringComparison.Ordinal).Split(titled ? [',', ';', '(', ')'] : [',', ';', '.'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        // "L lowers U uppers": pairs of a sign and its word without a comma.
        if (titled) entries = [.. entries.SelectMany(e => IsTitled(e) ? [e] : SignsAndWords(e))];
        if (entries.Length < least) return;
        var found = new List<FamilyWord>();
        foreach (var written in entries)
        {
            var entry = titled ? Untitled(written) : written;
            var space = entry.IndexOf(' ', StringComparison.Ordinal);
            if (space <= 0) continue;
            var (key, means) = (entry[..space].TrimEnd(':'), entry[(space + 1)..].Trim('-', ' ', ':'));
            var sign = key.Length <= 3 && (key.All(c => char.IsUpper(c) || char.IsDigit(c) || c is '+' or '-') || titled || least == 1) || !char.IsAscii(key[0]) && !char.IsLetter(key[0]);
            if (!sign || key.All(char.IsDigit) || means.Length == 0) continue;
            var terms = CellTerms.Read(means);
            // "x not done", "O litres"
            if (titled && (terms.Exists(t => t.Is(Sense.Skip)) || terms is [{ } unit] && unit.Is(Sense.Unit, "litre"))) { found.Add(new FamilyWord(key, terms.Exists(t => t.Is(Sense.Skip)) ? "not done" : "oxygen")); continue; }
            // "L lower, R lower": places, no key.
            if (key is "L" or "R" && terms.TrueForAll(t => t.Is(Sense.Area)) && !titled) continue;
            var strength = titled && terms.Exists(t => t.Is(Sense.Medicine) || t.Is(Sense.Device));
            if (!strength && terms.Exists(t => t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Time or TermKind.Range or TermKind.Parts) || !terms.Exists(t => GroupSplitter.IsHead(t) || t.Is(Sense.SideArea) || t.Is(Sense.Area) || t.Is(Sense.Side)) || terms.Count(t => t is { Kind: TermKind.Word, Meanings.Length: 0 }) > 2) continue;
            found.Add(new FamilyWord(key, means));
        }
        if (found.Count >= least && found.Count * 2 > entries.Length) words.AddRange(found);
    }

    // "percussion both sides, bases (LL) and apices (UL)": the signs for the places just named; not "bases (lower)".
    private static IEnumerable<FamilyWord> PlacesInBrackets(string line) =>
        line.Contains('(', StringComparison.Ordinal) ? PlaceAndSign().Matches(line).Where(m => CellTerms.Read(m.Groups[1].Value) is [{ } place] && place.Is(Sense.Area)).Select(m => new FamilyWord(m.Groups[2].Value, m.Groups[1].Value)) : [];

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(\p{L}{3,}) \(([A-Z]{1,3})\)", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex PlaceAndSign();

    // "RL = right lower LU / RU = uppers", "T = temperature. b / a = before / after": the stroke stands between two signs of one meaning.
    private static bool PartsOnePair(string before, string after) =>
        before[(before.LastIndexOf(' ') + 1)..] is { Length: > 0 and <= 3 } one && after.Split(' ') is [{ Length: > 0 and <= 3 } other, "=", ..] && one.Length == other.Length
        && (one.All(char.IsUpper) && other.All(char.IsUpper) || one.All(char.IsLetter) && (before.Length == one.Length || before[..^(one.Length + 1)].TrimEnd()[^1..] is "." or "," or ";"));

    private static IEnumerable<string> SignsAndWords(string entry)
    {
        var parts = entry.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return parts.Length >= 4 && parts.Length % 2 == 0 && parts.Where((_, i) => i % 2 == 0).All(p => p.Length <= 2 && char.IsUpper(p[0])) && parts.Where((_, i) => i % 2 == 1).All(p => p.Length > 2)
            ? parts.Chunk(2).Select(p => p[0] + " " + p[1]) : [entry];
    }

    /// <summary>Whether a line calls itself a key.</summary>
    public static bool IsTitled(string line) => Titles.Any(t => line.TrimStart().StartsWith(t, StringComparison.OrdinalIgnoreCase));

    [System.Text.RegularExpressions.GeneratedRegex(@"^([A-Z][A-Za-z]{0,2})(?:,| /)? ([A-Z][A-Za-z]{0,2}) = (\w+)\s?/\s?(\w+) (\w+)\W*$", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex TwoSigns();

    [System.Text.RegularExpressions.GeneratedRegex(@"^(L([A-Za-z])),?(?: and| /)? ?/?(R\2)$", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex SidedSigns();

    [System.Text.RegularExpressions.GeneratedRegex(@"^(([A-Z])L),?(?: and| /)? ?/?(\2R)$", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex SidesLast();

    [System.Text.RegularExpressions.GeneratedRegex(@"^([A-Z][A-Za-z]{0,4}),? ([A-Z][A-Za-z]{0,4}) = ([a-z]+(?: [a-z]+)?) (on|before|start|started|left|right|lower|upper|top|bottom)\s?/\s?(off|after|stop|stopped|right|left|upper|lower|bottom|top)\W*$", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex SharedFirst();

    [System.Text.RegularExpressions.GeneratedRegex(@"^(\w{1,4}) [a-z](?:/[a-z])+$", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex Placeholders();

    private static readonly string[] Titles = ["key ", "key:", "legend", "codes ", "codes:", "abbreviations", "abbrev"];

    private static string Untitled(string entry)
    {
        foreach (var title in Titles)
            if (entry.Length > title.Length && entry.StartsWith(title, StringComparison.OrdinalIgnoreCase)) return entry[title.Length..].TrimStart(':', ' ', '-');
        return entry;
    }

    private static void Explain(string key, string means, List<FamilyWord> words)
    {
        // "Physio here means percussion …", "CPT in this log = …"
        foreach (var place in (string[])[" here", " in this log", " in this book", " in these notes"])
            if (key.TrimEnd().EndsWith(place, StringComparison.OrdinalIgnoreCase)) key = key.TrimEnd()[..^place.Length];
        // "P a/b/c/d = percussion minutes", "S x/y = SpO2 before/after": the letters stand for numbers.
        if (Placeholders().Match(key.Trim()) is { Success: true } form) key = form.Groups[1].Value;
        // "SpO2 x/y = before CPT / after CPT": what two numbers are (PairMeanings keeps it), no other word for a saturation.
        if (CellTerms.Read(key) is [{ } label] && label.Is(Sense.SatLabel) && CellTerms.Read(means) is var phases && phases.Exists(t => t.Is(Sense.Before)) && phases.Exists(t => t.Is(Sense.After))) return;
        // "The usual for anyone new (Ann!!)": what stands in brackets explains nothing.
        if (key.IndexOf('(', StringComparison.Ordinal) is > 0 and var bracket && key.Contains(')', StringComparison.Ordinal)) key = key[..bracket];
        // "LB RB = left/right bottom": two signs and what they share.
        if (TwoSigns().Match(key.Trim() + " = " + means.Trim()) is { Success: true } two && IsSideOrArea(two.Groups[3].Value) && IsSideOrArea(two.Groups[4].Value))
        {
            words.Add(new FamilyWord(two.Groups[1].Value, $"{two.Groups[3].Value} {two.Groups[5].Value}"));
            words.Add(new FamilyWord(two.Groups[2].Value, $"{two.Groups[4].Value} {two.Groups[5].Value}"));
            return;
        }
        // "TL TR = tops"
        if (SidesLast().Match(key.Trim()) is { Success: true } corners && CellTerms.Read(means.Trim(' ', ',', ';', '.').Split(". ")[0]) is [{ } corner] && corner.Is(Sense.Area))
        {
            words.Add(new FamilyWord(corners.Groups[1].Value, $"left {corner.Text}"));
            words.Add(new FamilyWord(corners.Groups[3].Value, $"right {corner.Text}"));
            return;
        }
        // "LB RB = bases", "LU / RU = uppers": the same, the sides in the signs themselves.
        if (SidedSigns().Match(key.Trim()) is { Success: true } sided && CellTerms.Read(means.Trim(' ', ',', ';', '.').Split(". ")[0]) is [{ } shownPlace] && shownPlace.Is(Sense.Area))
        {
            words.Add(new FamilyWord(sided.Groups[1].Value, $"left {shownPlace.Text}"));
            words.Add(new FamilyWord(sided.Groups[3].Value, $"right {shownPlace.Text}"));
            return;
        }
        // "LB RB = left base, right base": as many signs as places, in one order.
        if (key.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries) is { Length: > 1 } signs && signs.All(s => s.Length <= 3 && s.All(char.IsUpper))
            && means.Split(". ")[0].Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) is var listed && listed.Length == signs.Length && Array.TrueForAll(listed, l => AreaGrammar.Read(CellTerms.Read(l)).Areas is [{ Side: not Records.Side.Unknown }]))
        {
            words.AddRange(signs.Zip(listed, (s, l) => new FamilyWord(s, l.TrimEnd('.'))));
            return;
        }
        // "Fon Foff = night pump on/off", "Sb Sa = sat before/after", "BL BR = bottom left / right": what they share stands first.
        if (SharedFirst().Match(key.Trim() + " = " + means.Trim()) is { Success: true } shared)
        {
            words.Add(new FamilyWord(shared.Groups[1].Value, $"{shared.Groups[3].Value} {shared.Groups[4].Value}"));
            words.Add(new FamilyWord(shared.Groups[2].Value, $"{shared.Groups[3].Value} {shared.Groups[5].Value}"));
            return;
        }
        // "and "full set" = …": the word stands in quotation marks.
        if (key.IndexOf('"', StringComparison.Ordinal) is >= 0 and var quote && key.IndexOf('"', quote + 1) is > 0 and var closing && closing > quote + 1) key = key[(quote + 1)..closing];
        if (means.IndexOf(". ", StringComparison.Ordinal) is var stop && stop > 0) means = means[..stop];
        means = means.Trim().Trim(',', ';', '.', ' ', '-', ')');
        key = key.Trim().Trim('"', '\'', '“', '”', '-', '*', '•', ' ', '#', '(');
        if (key.Length is 0 or > LongestWord || means.Length == 0) return;
        // "n neb = 2.5 mg salbutamol": a sign, its word, and what that is.
        if (key.IndexOf(' ', StringComparison.Ordinal) is > 0 and <= 2 and var gap && CellTerms.Read(key[(gap + 1)..]).Exists(t => GroupSplitter.IsHead(t))) (key, means) = (key[..gap], $"{key[(gap + 1)..]} {means}");
        // "0605 1L = 94", "changed toe = 95" are readings, not explanations.
        if (char.IsAsciiDigit(means[0]) && !means.Any(char.IsLetter)) return;
        if (Leading(means) is >= 50 and <= 100) return;
        if (!key.Any(char.IsLetter) && key is not [not (>= '0' and <= '9')] || !means.Any(char.IsLetter)) return;
        if (char.IsAsciiDigit(key[0]) && means.Any(char.IsAsciiDigit) && !Explains(key, means)) return;
        // "salb = 4 puffs 7.30" tells of a dose.
        if (means.Any(char.IsAsciiDigit) && CellTerms.Read(means).Exists(t => t.Kind == TermKind.Time)) return;
        // "Albuterol = 2 puffs with spacer": how much of it, not another word for it (Arrangements keeps the amount).
        if (CellTerms.Read(key) is [{ } medicine] && medicine.Is(Sense.Medicine) && !CellTerms.Read(means).Exists(t => t.Is(Sense.Medicine))) { words.Add(new FamilyWord(key, key)); return; }
        // "S4 = salbutamol 4 puffs": with another number the letter means the same.
        if (CodeWithNumber().Match(key) is { Success: true } code && CellTerms.Read(means).Exists(t => t.Kind == TermKind.Quantity && t.Number == int.Parse(code.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) && t.Unit is Unit.Puffs or Unit.Min or Unit.Ml))
            words.Add(new FamilyWord(code.Groups[1].Value, string.Join(' ', CellTerms.Read(means).Where(t => GroupSplitter.IsHead(t)).Select(t => means[t.Start..t.End]))));
        // "Ox 0.5 = litres": the number is an example.
        if (CellTerms.Read(key) is [{ Kind: TermKind.Word } flow, { Kind: TermKind.Number, IsWhole: false }] && CellTerms.Read(means) is [{ } litres] && litres.Is(Sense.Unit, "litre")) { words.Add(new FamilyWord(key[flow.Start..flow.End], "oxygen")); return; }
        means = OfOneTechnique(WithoutSynonym(OfOnePlace(SideAndArea(means))));
        // "O2 = litres": the unit of its numbers; the word keeps its meaning.
        if (CellTerms.Read(key) is [{ } measured] && (measured.Is(Sense.OxygenLabel) || measured.Is(Sense.SatLabel) || measured.Is(Sense.Pump)) && CellTerms.Read(means).TrueForAll(t => t.Is(Sense.Unit) || t.Is(Sense.Per))) return;
        // "perc = mins per lobe": what its numbers count; the word keeps its meaning.
        if (CellTerms.Read(key) is [{ } technique] && technique.Is(Sense.Technique) && CellTerms.Read(means) is [{ } counted, ..] told && counted.Is(Sense.Unit, "min") && !told.Exists(t => t.Is(Sense.Technique) || GroupSplitter.IsHead(t))) return;
        if (key.Contains('/')) Pair(key, means, words);
        else if (UsualWord(key) is { } usual) words.Add(new FamilyWord(usual, means));
        else
        {
            words.Add(new FamilyWord(key, means));
            // "Neb time = salbutamol 2.5 mg": of the device.
            if (CellTerms.Read(key) is [{ } device, { Text: "time" or "times" }] && device.Is(Sense.Device)) words.Add(new FamilyWord(key[device.Start..device.End], means));
            // "Full physio = …" is later written "full" alone.
            if (CellTerms.Read(key) is [{ Kind: TermKind.Word, Text.Length: > 2 } word, { } session] && session.Is(Sense.Session) && !GroupSplitter.IsHead(word) && !word.Is(Sense.DayPart) && !word.Is(Sense.Side) && !word.Is(Sense.Area)) words.Add(new FamilyWord(key[word.Start..word.End], means));
        }
    }

    private static bool IsSideOrArea(string word) => CellTerms.Read(word) is [{ } term] && (term.Is(Sense.Side) || term.Is(Sense.Area));

    [System.Text.RegularExpressions.GeneratedRegex(@"^([A-Za-z]{1,2})(\d{1,2})$", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex CodeWithNumber();

    // "right lower, LU and RU the tops": the place; what follows the comma explains other words.
    private static string OfOnePlace(string means) => means.IndexOf(',', StringComparison.Ordinal) is > 0 and var comma && CellTerms.Read(means[..comma]) is { Count: 1 or 2 } place && place.TrueForAll(t => t.Is(Sense.SideArea) || t.Is(Sense.Side) || t.Is(Sense.Area))
        && CellTerms.Read(means[(comma + 1)..]) is [{ } next, .., { } before, { } last] && next.Is(Sense.SideArea) && last.Is(Sense.Area) && (before.Text == "the" || last.Text.StartsWith("the ", StringComparison.Ordinal)) ? means[..comma] : means;

    // "left (bottoms), all clapping": the side and its area, one place.
    private static string SideAndArea(string means) => SideThenArea().Match(means) is { Success: true } place && CellTerms.Read(place.Groups[2].Value) is [{ } area] && area.Is(Sense.Area) ? $"{place.Groups[1].Value} {area.Text}" : means;

    [System.Text.RegularExpressions.GeneratedRegex(@"^(left|right) \((\w+)\)?(?:,|$)", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex SideThenArea();

    // "bases (lower)", "tops (upper), both sides, mins each side": the area once, and of both sides where the key says so.
    private static string WithoutSynonym(string means)
    {
        if (AreaTwice().Match(means) is not { Success: true } twice || CellTerms.Read(twice.Groups[1].Value) is not [{ } one] || CellTerms.Read(twice.Groups[2].Value) is not [{ } other] || one.ValueOf(Sense.Area) is not { } area || other.ValueOf(Sense.Area) != area) return means;
        return twice.Groups[3].Success ? "both " + twice.Groups[1].Value : twice.Groups[1].Value;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"^(\w+) \((\w+)\)?(?:(, both sides)\b.*)?$", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex AreaTwice();

    // "percussion, vib written separately": one technique; what follows the comma speaks of another.
    private static string OfOneTechnique(string means)
    {
        var terms = CellTerms.Read(means);
        var comma = terms.FindIndex(t => t.IsSymbol(","));
        return comma > 0 && !terms.Exists(t => t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Parts) && terms.Take(comma).All(t => t.Is(Sense.Technique)) && terms.Skip(comma).Any(t => t.Is(Sense.Technique)) && terms.Skip(comma).Any(t => t is { Kind: TermKind.Word, Meanings.Length: 0 })
            ? means[..terms[comma].Start] : means;
    }

    // "2.5 each = 2½ min left lower and right lower": the key's number returns with its unit beside areas; "0605 1L = 94 on 2" has neither.
    private static bool Explains(string key, string means)
    {
        var terms = CellTerms.Read(means);
        return terms.Exists(t => t.Is(Sense.Area) || t.Is(Sense.SideArea) || t.Is(Sense.Technique)) && terms.Exists(t => t is { Kind: TermKind.Quantity, Unit: Unit.Min })
            && key.Any(char.IsLetter) && !CellTerms.Read(key).Exists(t => t.Kind == TermKind.Time);
    }

    // "The red one is salbutamol and the orange one is budesonide": a word, "is", and the name of a medicine.
    private static void Told(string line, List<FamilyWord> words)
    {
        if (!line.Contains(" is ", StringComparison.OrdinalIgnoreCase)) return;
        var terms = CellTerms.Read(line);
        // An amount may follow; a time tells of a dose.
        if (terms.Exists(t => t.Kind == TermKind.Time)) return;
        var figures = line.Any(char.IsAsciiDigit) && terms.Exists(t => t.Kind is TermKind.Number or TermKind.Parts);
        for (var i = 1; i + 1 < terms.Count; i++)
        {
            if (terms[i].Text is not "is") continue;
            var means = terms[i + 1].Text is "the" or "his" or "her" or "a" or "always" && i + 2 < terms.Count ? i + 2 : i + 1;
            // "N is the nebuliser, salbutamol 2.5 mg": a sign, its device and what that holds.
            if (terms[means].Is(Sense.Device) && means + 2 < terms.Count && terms[means + 1].IsSymbol(",") && terms[means + 2].Is(Sense.Medicine) && line[terms[i - 1].Start..terms[i - 1].End] is { Length: <= 2 } sign && char.IsUpper(sign[0]))
            {
                words.Add(new FamilyWord(sign, $"{line[terms[means].Start..terms[means].End]} {line[terms[means + 2].Start..terms[means + 2].End]}"));
                continue;
            }
            if (!terms[means].Is(Sense.Medicine) || figures && !terms[i - 1].Is(Sense.Device)) continue;
            var from = i - 1;
            while (from > 0 && i - from < 3 && terms[from].Kind == TermKind.Word && (terms[from].Text is "one" or "thing" || terms[from].Is(Sense.Device))) from--;
            if (terms[from].Kind != TermKind.Word && from < i - 1) from++;
            while (from < i - 1 && terms[from].Text is "the" or "his" or "her" or "a" or "our" or "my") from++;
            var word = line[terms[from].Start..terms[i - 1].End];
            if (terms[from].Kind != TermKind.Word || terms[from].Is(Sense.Medicine) || terms[from].Text is "it" or "this" or "that" or "which" or "there" or "what" or "he" or "she" || word.Length > LongestWord) continue;
            if (words.Exists(w => w.Word.Equals(word, StringComparison.OrdinalIgnoreCase))) continue;
            words.Add(new FamilyWord(word, line[terms[means].Start..terms[means].End]));
        }
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

    // The first word that is explained: after the last sentence, comma or column gap, without a title in front of it.
    private static string FirstKey(string before)
    {
        if (before.LastIndexOfAny([',', ';']) is var cut && cut >= 0) before = before[(cut + 1)..];
        if (before.LastIndexOf(". ", StringComparison.Ordinal) is var stop && stop >= 0) before = before[(stop + 1)..];
        if (before.Trim().LastIndexOf("  ", StringComparison.Ordinal) is var gap && gap > 0) before = before.Trim()[gap..];
        var words = before.Trim();
        foreach (var title in (string[])["key ", "legend ", "codes ", "code ", "abbreviations ", "note ", "nb ", "words ", "my words "])
            if (words.Length > title.Length && words.StartsWith(title, StringComparison.OrdinalIgnoreCase)) return words[title.Length..];
        return before;
    }

    // The word before a later "=": after the last comma or gap of two spaces, else the last word (or words joined by slashes).
    private static string KeyBefore(string line, int from, int sign)
    {
        var between = line[from..sign];
        var cut = between.LastIndexOfAny([',', ';', '.']);
        // The point of "2.5 mg" parts nothing.
        while (cut > 0 && cut + 1 < between.Length && char.IsAsciiDigit(between[cut + 1])) cut = between.LastIndexOfAny([',', ';', '.'], cut - 1);
        if (cut >= 0 && between[(cut + 1)..].Trim().Length > 0) return between[(cut + 1)..];
        var trimmed = between.TrimEnd();
        var gap = trimmed.LastIndexOf("  ", StringComparison.Ordinal);
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
        if (earlier[(earlier.LastIndexOf(' ') + 1)..] is { Length: > 0 and <= 3 } pair && (SidesLast().IsMatch($"{pair} {trimmed[at..]}") || SidedSigns().IsMatch($"{pair} {trimmed[at..]}"))) at = earlier.LastIndexOf(' ') + 1;
        return between[at..];
    }

    // "L/R = links / regs" explains two words; "LU / RU = uppers" explains each by the same words.
    private static void Pair(string key, string means, List<FamilyWord> words)
    {
        var keys = key.Split('/', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var meanings = means.Split('/', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        // "b / a = sats before / after": the first word is of both.
        if (meanings.Length == 2 && meanings[0].Split(' ') is [var shared, "before" or "pre"] && meanings[1] is "after" or "post") meanings[1] = $"{shared} {meanings[1]}";
        if (meanings.Length == keys.Length) words.AddRange(keys.Zip(meanings, (k, m) => new FamilyWord(k, m)));
    }
}
