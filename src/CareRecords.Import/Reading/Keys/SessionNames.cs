using System.Text.RegularExpressions;

namespace CareRecords.Import.Reading.Keys;

/// <summary>Words for a whole session: "usual: …", "The drill: …", "(= full set)", "I'll just put the works", "When I say full I mean …", a plan.</summary>
internal static partial class SessionNames
{
    /// <summary>"The drill (Ann, physio): percussion bottom L 4 bottom R 4 top L 3 top R 3": a name of the family's own before a colon and a whole session.</summary>
    public static List<FamilyWord> Named(string line)
    {
        if (!line.AsSpan().TrimStart(" -*#•").StartsWith("the ", StringComparison.OrdinalIgnoreCase)) return [];
        if (NameAndSession().Match(line) is not { Success: true } match) return [];
        var (name, told) = (match.Groups[1].Value.Trim(), match.Groups[2].Value);
        if (told.IndexOf(". ", StringComparison.Ordinal) is > 0 and var stop) told = told[..stop];
        var terms = CellTerms.Read(told);
        if (AreasOf(told) < 2 || terms.Exists(t => t.Kind == TermKind.Time) || CellTerms.Read(name).Exists(t => t.Is(Sense.Plan) || t.Is(Sense.Advice) || t.Is(Sense.Weekday) || t.Is(Sense.DayPart) || t.Is(Sense.Session))) return [];
        return [new FamilyWord("the " + name, told), new FamilyWord(name, told)];
    }

    [GeneratedRegex(@"^\W*the ([a-z]{3,12}(?: [a-z]{3,12})?)\s*(?:\([^)]*\))?\s*[:=]\s*(.+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex NameAndSession();

    /// <summary>"'Sick plan' from PT by phone: 4x/day, cupping lowers 5 min each, uppers 3": a quoted name before a colon, with a whole session behind it.</summary>
    public static FamilyWord? Quoted(string line) => QuotedName().Match(line) is { Success: true } match && AreasOf(match.Groups[2].Value) >= 2 && !CellTerms.Read(match.Groups[2].Value).Exists(t => t.Kind == TermKind.Time)
        ? new FamilyWord(match.Groups[1].Value, match.Groups[2].Value) : null;

    /// <summary>"a "drum" is me clapping her chest, 3 min each side at the bottom and 2 at the top. A "skoosh" is the salbutamol": quoted words, each with what it is.</summary>
    public static List<FamilyWord> QuotedIs(string line)
    {
        var words = new List<FamilyWord>();
        foreach (Match match in QuotedAndMeant().Matches(line))
        {
            var (word, told) = (match.Groups[1].Value, match.Groups[2].Value.TrimEnd('.', ' '));
            var terms = CellTerms.Read(told);
            if (!terms.Exists(t => t.Kind == TermKind.Time) && (AreasOf(told) >= 2 || terms.Exists(t => t.Is(Sense.Medicine)))) words.Add(new FamilyWord(word, told));
        }

        return words;
    }

    [GeneratedRegex(@"""([\p{L}]+(?: [\p{L}]+)?)"" (?:is|are|means) (?:me |us |when (?:i|we) )?(.+?)(?=\. |\.$|$)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex QuotedAndMeant();

    [GeneratedRegex(@"^\W*""([\p{L}]+(?: [\p{L}]+){0,2})""[^:=""]{0,30}:\s*(.+)$", RegexOptions.CultureInvariant)]
    private static partial Regex QuotedName();

    /// <summary>"perc lowers 4 min ea, uppers 3 min ea (= full set)", "lower 3 min each side, upper 2. This is daily physio": the word stands behind what it means.</summary>
    public static FamilyWord? Called(string line)
    {
        if (CalledSo().Match(line) is not { Success: true } match) return null;
        var told = line[..match.Index];
        if (told.LastIndexOf(": ", StringComparison.Ordinal) is >= 0 and var colon) told = told[(colon + 2)..];
        if (AreasOf(told) < 2 || CellTerms.Read(told).Exists(t => t.Kind == TermKind.Time)) return null;
        var word = match.Groups[1].Value.Trim(' ', '.', '"', ')');
        return word.Length is < 3 or > KeyMeanings.LongestWord ? null : new FamilyWord(word, told.TrimEnd(' ', '.', ','));
    }

    [GeneratedRegex(@"(?:\(\s*=\s*|(?:\.|;|,)\s*(?:this|that) is (?:the |our |called )?(?!what\b)|\bcalled )""?([\p{L}]+(?: [\p{L}]+){0,2})""?\)?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex CalledSo();

    /// <summary>"clap the bottoms 4 each side, then the tops 3. When I do the lot I'll just put the works", "I refer to this below as the full programme": the word for what was just told.</summary>
    public static FamilyWord? JustPut(string line)
    {
        if (JustPuts().Match(line) is not { Success: true } match) return null;
        var sentences = line[..match.Index].Split(". ");
        var last = Array.FindLastIndex(sentences, s => AreasOf(s) >= 2);
        var begins = last;
        // "… three minutes left bottom, two left top. Shaking after, one minute each side at the bottom": told in several sentences.
        while (begins > 0 && CellTerms.Read(sentences[last]) is var tail && tail.Exists(t => t.Is(Sense.Technique, "vibration")) && !tail.Exists(t => t.Is(Sense.Technique, "percussion")) && AreasOf(sentences[begins - 1]) >= 2) begins--;
        var told = last < 0 ? null : string.Join(", ", sentences[begins..(last + 1)].Select(s => WithoutClock(s)));
        var word = match.Groups[1].Value.Trim(' ', '.', '"', '\'', ',');
        // "4 min each unless I say different"
        return told is null || word.Length < 3 || line[..match.Index].TrimEnd().EndsWith("unless", StringComparison.OrdinalIgnoreCase) ? null : new FamilyWord(word, WithoutLead(told));
    }

    /// <summary>"percussion lower 4 each side, upper 3. Denise writes this "as per plan". Mum writes "the lot"": quoted words for what was just told, each as somebody writes it.</summary>
    public static List<FamilyWord> Written(string line)
    {
        var words = new List<FamilyWord>();
        foreach (Match match in WritesQuoted().Matches(line))
            if (line[..match.Index].Split(". ").Reverse().FirstOrDefault(s => AreasOf(s) >= 2) is { } told && !CellTerms.Read(told).Exists(t => t.Kind == TermKind.Time)) words.Add(new FamilyWord(match.Groups[1].Value, WithoutLead(told).TrimEnd(' ', '.', ',')));
        return words;
    }

    [GeneratedRegex(@"\b(?:writes?|puts?|says?|calls?|shortens?)\s+(?:(?:it|this|that|these|them|all of (?:it|that|this)) )?(?:down )?(?:as |to )?[""“]([\p{L}]+(?: [\p{L}]+){0,3})[""”]", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex WritesQuoted();

    /// <summary>"full routine", "usual routine", where "routine" is explained as a whole session: as long as they are no more than other words for the usual.</summary>
    public static IEnumerable<FamilyWord> WholeOf(FamilyWord session) => CellTerms.Read(session.Word) is [{ Kind: TermKind.Word } own] && !Wholes.Contains(own.Text + " ") && !own.Is(Sense.Session) && !own.Is(Sense.Technique) && AreasOf(session.Means) > 1
        ? Wholes.Select(w => session with { Word = w + session.Word }).Where(w => CellTerms.Read(w.Word) is [{ } one] && one.Is(Sense.Usual)) : [];

    private static readonly string[] Wholes = ["full ", "whole ", "usual ", "normal "];

    // "Physio has set clapping: bottoms 3 min each side": the technique before the colon is of what follows it.
    private static string WithoutLead(string told)
    {
        var colon = told.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0) return told;
        return CellTerms.Read(told[..colon]) is [.., { } last] && last.Is(Sense.Technique) ? last.Text + told[(colon + 1)..] : told[(colon + 1)..];
    }

    [GeneratedRegex(@"\b(?:(?:i'?ll|i|we|we'?ll|i shall|i will|we shall|we will|gonna|going to) (?:just |only )?(?:put|write|call it|call that|call this|say|refer to (?:it|that|this)(?: below| here)? as)|calling (?:it|that|this)) (?:doing (?:it|him|her|them) )?""?((?:the )?[a-z]+(?: [a-z]+)?)""?(?:\W*(?:\.|$)| from (?:here|now) on\b| for (?:that|this|it)\b)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex JustPuts();

    // "Pump at ten to seven and tapping at seven: three minutes left bottom": what stands before the colon tells when.
    private static string WithoutClock(string sentence) => sentence.IndexOf(": ", StringComparison.Ordinal) is > 0 and var colon && CellTerms.Read(sentence[..colon]) is var lead && lead.Exists(t => t.Kind == TermKind.Time) && AreasOf(sentence[colon..]) >= 2
        ? (lead.FindLast(t => t.Is(Sense.Technique)) is { } technique ? sentence[technique.Start..technique.End] : "") + sentence[(colon + 1)..] : sentence;

    /// <summary>Whether a line that explains a word in passing tells what was done as well.</summary>
    public static bool TellsToo(string line) => line.Contains(". Calling ", StringComparison.OrdinalIgnoreCase) && (line.Contains("done", StringComparison.OrdinalIgnoreCase) || line.Contains(" did ", StringComparison.OrdinalIgnoreCase))
        // "At 6.50 I did the tapping, lower side 3 minutes each, upper 2. In next mails I will only say "routine"": told with its time.
        || JustPut(line) is not null && TellsOfDone(WithoutStamp(line))
        // "Sick set = Std+V with perc 5 on the lowers. Did it 1030, 1400, 1730."
        || line.Contains('=') && line.Split(". ").Any(s => !s.Contains('=') && CellTerms.Read(s) is [{ Text: "did" or "i did" or "we did" or "done" }, ..] after && after.Exists(t => t.Kind == TermKind.Time));

    private static bool TellsOfDone(string line) => JustPuts().Match(line) is { Success: true } put && line[..put.Index] is var before && CellTerms.Read(before) is var told && told.Exists(t => t.Kind == TermKind.Time)
        && (DidIt().IsMatch(before) || !told.Exists(t => t.Is(Sense.Plan) || t.Is(Sense.Advice)));

    // "14/03/2026, 07:12 - Mum: …" is when it was written.
    private static string WithoutStamp(string line) => line.Length > 0 && (char.IsAsciiDigit(line[0]) || line[0] == '[') && line.IndexOf(": ", StringComparison.Ordinal) is > 0 and < 60 and var end ? line[(end + 2)..] : line;

    [GeneratedRegex(@"\b(?:did|done|gave|given)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex DidIt();

    // "When I say I did her claps": the word without who did it.
    [GeneratedRegex(@"^(?:(?:i|we|she|he|did|do|done|her|his|the|him|my|their) )+", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Spoken();

    private static readonly string[] Leads = ["when i write ", "when i say ", "when i put ", "if i write ", "if i put ", "if i say ", "where i put ", "where i write ", "when we write ", "if it says ", "when it says "];
    private static readonly System.Buffers.SearchValues<string> AnyLead = System.Buffers.SearchValues.Create(Leads, StringComparison.OrdinalIgnoreCase);

    /// <summary>"When I write full it is left down 3 min, right down 3 min": the same as "full = …".</summary>
    public static string? WhenIWrite(string line)
    {
        // "Where Ouma says pump she means his salbutamol puffer."
        if (line.Contains(" mean", StringComparison.OrdinalIgnoreCase) && SaysAndMeans().Match(line) is { Success: true } said) return said.Groups[1].Value + " = " + said.Groups[2].Value.TrimEnd('.', ' ');
        if (!line.AsSpan().ContainsAny(AnyLead)) return null;
        foreach (var lead in Leads)
        {
            var at = line.IndexOf(lead, StringComparison.OrdinalIgnoreCase);
            if (at < 0) continue;
            var rest = line[(at + lead.Length)..];
            foreach (var verb in (string[])[" it is ", " it's ", " it means ", " i mean ", " that is ", " that's ", " this is ", ", it is ", " its "])
                if (rest.IndexOf(verb, StringComparison.OrdinalIgnoreCase) is > 0 and < KeyMeanings.LongestWord and var gap) return Spoken().Replace(rest[..gap].Trim(',', ' '), "") + " = " + AllOfThat(rest[(gap + verb.Length)..], line[..at]);
        }
        return null;
    }

    // "clap bottoms 3 min each side, tops 2 each side. If I put full it's all of that": what was told before.
    private static string AllOfThat(string means, string before) => Before().IsMatch(means) && before.Split(". ").LastOrDefault(s => AreasOf(s) >= 2) is { } told ? told.TrimEnd(' ', '.', ',') : means;

    [GeneratedRegex(@"^(?:all (?:of )?)?(?:that|this|these|those|the above)(?: lot)?\W*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Before();

    [GeneratedRegex(@"\b(?:where|when|if|by)\b[^.,;=]{0,20}?\b(?:says?|writes?|puts?)\s+""?([\p{L}]+(?: [\p{L}]+)??)""?,?\s+(?:it |that |this |she |he |i |we )?means?\s+(.+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SaysAndMeans();

    /// <summary>"usual: pat lower 3 min each side, upper 2": a colon serves as well where a session's areas or techniques follow with their minutes.</summary>
    public static FamilyWord? Usual(string line)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        if (colon is <= 0 or > KeyMeanings.LongestWord || char.IsAsciiDigit(line[colon - 1]) || UsualWord(line[..colon].Trim('-', '*', '#', '•', ' ')) is not { } word) return null;
        var means = line[(colon + 1)..];
        if (means.IndexOf(". ", StringComparison.Ordinal) is > 0 and var stop) means = means[..stop];
        var terms = CellTerms.Read(means);
        return terms.Exists(t => t.Is(Sense.Technique) || t.Is(Sense.Area) || t.Is(Sense.SideArea)) && terms.Exists(t => t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Range) && !terms.Exists(t => t.Kind == TermKind.Time)
            ? new FamilyWord(word, means.Trim().TrimEnd('.')) : null;
    }

    /// <summary>"the normal clapping is three minutes each on the bottoms and two on the tops"</summary>
    public static FamilyWord? UsualIs(string line)
    {
        var terms = CellTerms.Read(line);
        var usual = terms.FindIndex(t => t.Is(Sense.Usual));
        if (usual < 0 || usual + 2 >= terms.Count || terms[usual + 1].Text is not ("is" or "are" or "means")) return null;
        var told = line[terms[usual + 2].Start..];
        if (told.IndexOf(". ", StringComparison.Ordinal) is > 0 and var stop) told = told[..stop];
        return AreasOf(told) >= 2 && !CellTerms.Read(told).Exists(t => t.Kind == TermKind.Time) ? new FamilyWord(line[terms[usual].Start..terms[usual].End], told) : null;
    }

    /// <summary>"A klop is clapping with the cupped hand, two minutes each side at the bottom and two minutes each side at the top": a word for what is done, with all its minutes.</summary>
    public static FamilyWord? TechniqueIs(string line)
    {
        foreach (var sentence in line.Split(". "))
        {
            if (WordIs().Match(sentence) is not { Success: true } match) continue;
            var (word, told) = (match.Groups[1].Value, match.Groups[2].Value.TrimEnd('.'));
            var terms = CellTerms.Read(told);
            if (CellTerms.Read(word) is [{ } own] && (own.Is(Sense.Technique) || own.Is(Sense.Session)) && terms.Exists(t => t.Is(Sense.Technique)) && AreasOf(told) >= 4 && !terms.Exists(t => t.Kind == TermKind.Time)) return new FamilyWord(word, told);
        }
        return null;
    }

    [GeneratedRegex(@"^(?:an? |the )?(\p{L}+) (?:is|are|means) (.+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex WordIs();

    /// <summary>"Usual CPT", "our usual chest": the word for the usual, without the session that it is of.</summary>
    public static string? UsualWord(string key)
    {
        var terms = CellTerms.Read(key);
        // "The usual for anyone new"
        if (terms.Count is > 2 and <= 7 && terms.Find(t => t.Is(Sense.Usual)) is { } leading && terms.IndexOf(leading) <= 1 && terms.TrueForAll(t => t.Kind == TermKind.Word)) return key[leading.Start..leading.End];
        return terms.Count is > 0 and <= 4 && terms.TrueForAll(t => t.Is(Sense.Usual) || t.Is(Sense.Session) || t.Is(Sense.Person) || t.Is(Sense.Article) || t.Kind == TermKind.Reference || t is { Kind: TermKind.Word, Meanings.Length: 0 }) && terms.Find(t => t.Is(Sense.Usual)) is { } usual
            ? key[usual.Start..usual.End] : null;
    }

    /// <summary>"percussion on RLL LLL RUL LUL. "Full set" = 3 min on every area": the places stand before the word that is explained.</summary>
    public static string InNamedPlaces(string before, string means)
    {
        var minutes = AreaGrammar.Read(CellTerms.Read(means));
        if (minutes.NamesPlace || minutes.EverySpot.Count == 0) return means;
        var terms = CellTerms.Read(before);
        var first = terms.FindIndex(IsOfPlace);
        if (first < 0 || AreaGrammar.Read(terms).Areas.Count(a => a.Area != Records.ChestArea.Unknown) < 2) return means;
        var technique = terms.Find(t => t.Is(Sense.Technique));
        return $"{(technique is null ? "" : before[technique.Start..technique.End] + " ")}{before[terms[first].Start..terms[terms.FindLastIndex(IsOfPlace)].End]} {means}";

        static bool IsOfPlace(Term term) => term.Is(Sense.SideArea) || term.Is(Sense.Area) || term.Is(Sense.Side) || term.Is(Sense.EachSide);
    }

    /// <summary>"Chest as shown to me by the physiotherapist: lower left three minutes, lower right three": what "as shown" stands for.</summary>
    public static FamilyWord? Taught(string line) => line.AsSpan().ContainsAny(AnyTaught) && AsTaught().Match(line) is { Success: true } match && match.Groups[2].Value.Split(". ").FirstOrDefault(s => AreasOf(s) >= 2) is { } told && !CellTerms.Read(told).Exists(t => t.Kind == TermKind.Time)
        ? new FamilyWord(match.Groups[1].Value.ToLowerInvariant(), told.TrimEnd('.')) : null;

    private static readonly System.Buffers.SearchValues<string> AnyTaught = System.Buffers.SearchValues.Create(["as shown", "as taught", "as instructed", "as directed", "as demonstrated"], StringComparison.OrdinalIgnoreCase);

    [GeneratedRegex(@"\b(as (?:shown|taught|instructed|directed|demonstrated))\b[^:]{0,80}:\s*(.+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex AsTaught();

    public static int AreasOf(string text) => AreaGrammar.Read(CellTerms.Read(text)).Areas.Count(a => a.Minutes is not null);

    private static readonly string[] PlanWords = ["per plan", "as per plan", "as plan", "to plan", "as care plan", "as per care plan", "per care plan", "per order", "per orders", "per new orders", "as ordered"];
    private static readonly string[] PlanTitles = ["plan", "care plan", "physio plan", "chest plan", "our plan", "his plan", "her plan", "order:", "orders", "new order"];

    /// <summary>"PLAN (fridge): physio twice a day. LLL 3, RLL 3, LUL 2, RUL 2, hand percussion": what "per plan" stands for is the sentence with areas and minutes.</summary>
    public static string? Plan(string line)
    {
        var title = line.TrimStart('-', '*', ' ', '#');
        // "CPT per order: perc LLL RLL 4 min"
        if (title.IndexOf(" per order:", StringComparison.OrdinalIgnoreCase) is > 0 and < 20 and var per) title = title[(per + 5)..];
        if (!PlanTitles.Any(t => title.StartsWith(t, StringComparison.OrdinalIgnoreCase)) || line.IndexOf(':', StringComparison.Ordinal) is < 0 or > 40) return null;
        var areas = line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Split(". ").Where(s => AreasWithMinutes(CellTerms.Read(s)) >= 2 || AreasOf(s) >= 2).ToList();
        return areas.Count == 1 ? areas[0].Trim().TrimEnd('.') : null;
    }

    /// <summary>The plan in a sentence of its own.</summary>
    public static string? PlanWithin(string line) => line.Contains(". ", StringComparison.Ordinal) ? line.Split(". ").Select(Plan).FirstOrDefault(p => p is not null) : null;

    public static IEnumerable<FamilyWord> PerPlan(string plan) => PlanWords.Select(w => new FamilyWord(w, plan));

    private static int AreasWithMinutes(List<Term> terms) => Enumerable.Range(1, Math.Max(0, terms.Count - 1)).Count(i => (terms[i - 1].Is(Sense.SideArea) || terms[i - 1].Is(Sense.Area) || terms[i - 1].Is(Sense.Side)) && terms[i] is { Kind: TermKind.Number or TermKind.Quantity, Number: > 0 and <= 15 });
}
