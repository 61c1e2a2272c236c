using System.Collections.Frozen;
using CareRecords.Records;

namespace CareRecords.Import.Reading;

/// <summary>
/// Turns a line into terms: words with their meanings (the family's own words first), numbers with units, ranges, times.
/// Each family word is replaced by the terms of its meaning, placed where the word stands.
/// </summary>
internal sealed class TermReader
{
    private const int LeastSaturation = 70;

    // "R" for a routine is no side: shorter names are not told by their letters.
    private const int ShortestWord = 3;

    private readonly Vocabulary _vocabulary;
    private readonly Tokenizer _tokenizer = new(new WordPool());
    private readonly Dictionary<string, List<FamilyPhrase>> _family;
    private readonly HashSet<string> _letters;
    private readonly HashSet<string> _ignored;
    private readonly List<FamilyPhrase> _usual;

    /// <summary>A reader with these family words.</summary>
    public TermReader(Vocabulary vocabulary, FamilyWords words)
    {
        (_vocabulary, _family, _letters, _ignored, _usual) = (vocabulary, new(StringComparer.Ordinal), [], [], []);
        foreach (var word in words.All) Learn(word);
    }

    private TermReader(TermReader other) => (_vocabulary, _family, _letters, _ignored, _usual) = (other._vocabulary, other._family, other._letters, other._ignored, other._usual);

    /// <summary>A reader with the same words, for another thread. Neither may learn any more.</summary>
    public TermReader Fork() => new(this);

    /// <summary>The terms of a line.</summary>
    public List<Term> Read(string line) => Finish(Raw(line));

    /// <summary>The terms before times and quantities are put together: where dates are looked for.</summary>
    public List<Term> Raw(string line) => NumberWords.Reduce(Words(line, _tokenizer.Read(line)));

    /// <summary>Puts times and quantities together.</summary>
    public static List<Term> Finish(List<Term> raw) => QuantityGrammar.Reduce(PlannedTimes.Settle(TimeGrammar.Reduce(OtherSense.Settle(raw))));

    /// <summary>Takes a word's meaning away: the family uses it for something else.</summary>
    public void Ignore(string word) => _ignored.Add(word);

    /// <summary>Makes a family word known; false when its meaning says nothing that the vocabulary knows.</summary>
    public bool Learn(FamilyWord word)
    {
        var key = _tokenizer.Read(word.Word).Select(t => t.Text).ToArray();
        if (key.Length == 0 || key.Length > 6) return false;
        var meaning = Words(word.Means, _tokenizer.Read(word.Means));
        if (key.Length == 1 && key[0].Length == 1) _letters.Add(key[0]);
        if (!meaning.Any(t => t.Meanings.Length > 0 || t.Kind == TermKind.Number)) return false;
        WithoutDoses(meaning);
        // "salbutamol 100 inhaler": the strength on the label is no amount given.
        if (meaning.Exists(t => t.Is(Sense.Medicine)))
            for (var i = meaning.Count - 1; i >= 0; i--)
                if (meaning[i].Kind == TermKind.Number && !(i + 1 < meaning.Count && meaning[i + 1].Is(Sense.Unit))) meaning.RemoveAt(i);
        // "puffs = salbutamol through the spacer": the word counts them as well.
        if (key is ["puffs" or "puff"] && meaning.Exists(t => t.Is(Sense.Medicine)) && _vocabulary.Find(_tokenizer.Read(word.Word), 0, out _, out _) is { } counted && !meaning.Exists(t => t.Is(Sense.Unit, "puffs")))
            meaning.Insert(0, new Term { Kind = TermKind.Word, Start = 0, End = word.Word.Length, Text = key[0], Meanings = [.. counted.Where(m => m.Sense == Sense.Unit)] });
        // "salbutamol pump with spacer": the inhaler.
        if (meaning.Exists(t => t.Is(Sense.Medicine))) meaning.RemoveAll(t => t.Is(Sense.Pump));
        // "mins in order LL RL": nothing of the explanation is a plan, an order or advice.
        meaning.RemoveAll(t => t.Is(Sense.Plan) || t.Is(Sense.Advice) || t.Is(Sense.Shopping) || t.Is(Sense.Question) || t.Is(Sense.Visit) || t.Is(Sense.OtherTherapy) || t.Is(Sense.Rumour) || t.Is(Sense.Correction));
        // "sat = sats, air unless said": what holds unless said is not said beside each number.
        // "s = sats, before>after" tells the order of two numbers, which an arrow tells again.
        if (meaning.Exists(t => t.Is(Sense.SatLabel)))
        {
            // "b = sat before" is of one reading only.
            var both = meaning.Exists(t => t.Is(Sense.Before)) && meaning.Exists(t => t.Is(Sense.After));
            meaning.RemoveAll(t => t.Is(Sense.Air) || both && (t.Is(Sense.Before) || t.Is(Sense.After)) || t.IsSymbol("→") || t.IsSymbol("/"));
            // "after sats 94", so that the number stands beside its label.
            if (meaning.FindIndex(t => t.Is(Sense.Before) || t.Is(Sense.After)) is > 0 and var phase && meaning.FindIndex(t => t.Is(Sense.SatLabel)) < phase) (meaning[0], meaning[phase]) = (meaning[phase], meaning[0]);
        }

        // "P pump ml/h": the unit in which the numbers beside it are.
        if (meaning.Count > 1 && !meaning.Exists(t => t.Kind is TermKind.Number or TermKind.Parts) && meaning.Exists(t => t.Is(Sense.Pump) || t.Is(Sense.Feed))) meaning.RemoveAll(t => t.Is(Sense.Unit, "ml") || t.Is(Sense.Unit, "rate") || t.Is(Sense.RateWord) || t.IsSymbol("/"));
        // "O = oxygen l/min": the unit in which the numbers beside it are.
        if (meaning.Exists(t => t.Is(Sense.OxygenLabel)) && !meaning.Exists(t => t.Kind is TermKind.Number or TermKind.Parts)) meaning.RemoveAll(t => t.Is(Sense.Unit) || t.Is(Sense.Per) || t.IsSymbol("/"));
        // "chest = cupping, left side then right side": the order of the sides, not a part of the chest.
        if (meaning.Exists(t => t.Is(Sense.Then)) && meaning.Exists(t => t.Is(Sense.Technique)) && meaning.TrueForAll(t => t.Is(Sense.Technique) || t.Is(Sense.Side) || t.Is(Sense.EachSide) || t.Is(Sense.Then) || t.Kind == TermKind.Symbol || t.Meanings.Length == 0)) meaning.RemoveAll(t => !t.Is(Sense.Technique));
        // A comma of the explanation parts no events where the word stands.
        if (!meaning.Exists(t => t.Kind is TermKind.Number or TermKind.Parts)) meaning.RemoveAll(t => t.IsSymbol(","));
        // "2.5 each = lower, upper and vibs": the number of the word belongs to its meaning.
        if (char.IsAsciiDigit(key[0][0]) && !meaning.Any(t => t.Kind is TermKind.Number or TermKind.Parts))
            meaning.InsertRange(0, Words(word.Word, _tokenizer.Read(word.Word)));
        if (!_family.TryGetValue(key[0], out var phrases)) _family[key[0]] = phrases = [];
        phrases.RemoveAll(p => p.Key.AsSpan().SequenceEqual(key));
        var phrase = new FamilyPhrase(key, meaning, word.Word, SessionOf(word.Word, meaning));
        phrases.Add(phrase);
        // "big sets 6.45 and 11.30"
        if (phrase.Session is not null && key[^1].Length > 2 && !key[^1].EndsWith('s') && !phrases.Exists(p => p.Key.Length == key.Length && p.Key[^1] == key[^1] + "s")) phrases.Add(phrase with { Key = [.. key[..^1], key[^1] + "s"] });
        if (_vocabulary.Find(_tokenizer.Read(word.Word), 0, out var length, out _) is { } plain && length == key.Length && plain.Any(m => m.Sense == Sense.Usual))
        {
            _usual.RemoveAll(p => p.Key.AsSpan().SequenceEqual(key));
            _usual.Add(phrase);
        }
        phrases.Sort((a, b) => b.Key.Length.CompareTo(a.Key.Length));
        return true;
    }

    // "Chest usual = perc LL RL LU RU 3 min each, after 4 puffs salbutamol", "his normal physio is clapping left bottom three … and the pump is salbutamol two puffs":
    // the word stands for the session; what is given is written each time.
    private static void WithoutDoses(List<Term> meaning)
    {
        if (meaning.Count(t => t.Is(Sense.Area) || t.Is(Sense.SideArea)) < 2 || !meaning.Exists(t => t.Is(Sense.Medicine)) || !meaning.Exists(t => t.Kind == TermKind.Number || t.Is(Sense.NumberWord))) return;
        for (var medicine = meaning.FindIndex(t => t.Is(Sense.Medicine)); medicine >= 0; medicine = meaning.FindIndex(t => t.Is(Sense.Medicine)))
        {
            var from = meaning.FindLastIndex(medicine, IsBreak);
            var to = meaning.FindIndex(medicine, IsBreak);
            if (to < 0) to = meaning.Count;
            if (from < 0) from = 0;
            meaning.RemoveRange(from, to - from);
        }

        static bool IsBreak(Term term) => term.IsSymbol(",") || term.IsSymbol(".") || term.IsSymbol(";") || term.IsSymbol("+") || term.Is(Sense.And) || term.Is(Sense.Then);
    }

    private List<Term> Words(string line, List<Token> tokens)
    {
        var terms = new List<Term>(tokens.Count);
        for (var i = 0; i < tokens.Count;)
        {
            if (_family.Count > 0 && TryFamily(line, tokens, i, terms, out var taken)) { i += taken; continue; }
            var token = tokens[i];
            if (token.Kind is not TokenKind.Clock && _vocabulary.Find(tokens, i, out var length, out var mended) is { } meanings
                && !(token.Kind is TokenKind.Number or TokenKind.Numbers && length == 1) && !(length == 1 && _ignored.Contains(token.Text)))
            {
                var last = tokens[i + length - 1];
                // "the usual", "as usual", "the works": the one usual that the family has explained.
                if (_usual.Count == 1 && meanings.Any(m => m.Sense == Sense.Usual) && IsPlainUsual(line.AsSpan(token.Start, last.End - token.Start))) { Place(_usual[0], token, last, terms); i += length; continue; }
                var text = length == 1 ? token.Text : line[token.Start..last.End].ToLowerInvariant();
                terms.Add(new Term
                {
                    Kind = token.Kind == TokenKind.Symbol && length == 1 && !char.IsLetter(token.Text[0]) ? TermKind.Symbol : TermKind.Word,
                    Start = token.Start,
                    End = last.End,
                    Text = text,
                    Meanings = meanings,
                    Glued = token.Glued,
                    Mended = mended,
                });
                i += length;
                continue;
            }
            terms.Add(Plain(token));
            i++;
        }
        return terms;
    }

    // "sick routine" and "the longer round" are other than the usual, whatever that is.
    private static bool IsPlainUsual(ReadOnlySpan<char> phrase) => phrase.Contains("usual", StringComparison.OrdinalIgnoreCase) || phrase.Contains("normal", StringComparison.OrdinalIgnoreCase) || phrase.Contains("plan", StringComparison.OrdinalIgnoreCase) && !phrase.Contains("sick", StringComparison.OrdinalIgnoreCase) && !phrase.Contains("ill", StringComparison.OrdinalIgnoreCase)
        || phrase.Equals("the works", StringComparison.OrdinalIgnoreCase);

    private static Term Plain(Token token) => new()
    {
        Kind = token.Kind switch
        {
            TokenKind.Number => TermKind.Number,
            TokenKind.Numbers => TermKind.Parts,
            TokenKind.Clock => TermKind.Time,
            TokenKind.Symbol => TermKind.Symbol,
            _ => TermKind.Word,
        },
        Start = token.Start,
        End = token.End,
        Text = token.Text,
        Number = token.Number,
        Parts = token.Parts ?? [],
        Glued = token.Glued,
    };

    private bool TryFamily(string line, List<Token> tokens, int at, List<Term> into, out int taken)
    {
        taken = 0;
        // "0,5 l" is litres, whatever "L" alone stands for.
        if (tokens[at].Text == "l" && at > 0 && tokens[at - 1].Kind == TokenKind.Number && (tokens[at - 1].Number != Math.Floor(tokens[at - 1].Number) || !tokens.Exists(t => t.Text.StartsWith('r') && t.Text.Length <= 2))) return false;
        // "6.40a", "6:00p" are times, whatever "A" and "P" alone stand for.
        if (tokens[at] is { Text: "a" or "p", Glued: true } && at > 0 && (tokens[at - 1].Kind == TokenKind.Clock || tokens[at - 1] is { Kind: TokenKind.Number, Text.Length: >= 4 })) return false;
        // "101.4 F" is a temperature, whatever "F" alone stands for.
        if (tokens[at].Text is "f" or "c" && at > 0 && tokens[at - 1].Kind == TokenKind.Number && tokens[at - 1].Number is (>= 35 and <= 42.5) or (>= 95 and <= 108) && tokens[at - 1].Number != Math.Floor(tokens[at - 1].Number)) return false;
        // "2 pumps" after "pump = the inhaler"
        List<FamilyPhrase>? plural = null;
        if (!_family.TryGetValue(tokens[at].Text, out var phrases) && tokens[at] is { Kind: TokenKind.Word, Text: [_, _, _, .., 's'] several } && _family.TryGetValue(several[..^1], out plural)) phrases = plural;
        if (phrases is null) return TryCompound(tokens, at, into, out taken);
        foreach (var phrase in phrases)
        {
            if (at + phrase.Key.Length > tokens.Count) continue;
            var fits = true;
            for (var k = 0; k < phrase.Key.Length && fits; k++) fits = tokens[at + k].Text == phrase.Key[k] || k == 0 && phrase.Key.Length == 1 && phrases == plural;
            if (!fits) continue;
            // "b4" is before, whatever "b" alone stands for; not where B is a place of the chest and no reading stands before it ("P 0700 B4 T2").
            if (_vocabulary.Find(tokens, at, out var length, out _) is not null && length > phrase.Key.Length && !(IsPlace(phrase.Meaning) && !(at > 0 && tokens[at - 1] is { Kind: TokenKind.Number, Number: >= LeastSaturation and <= 100 }))) continue;
            // "a big green plug" holds no "A = on air".
            if (phrase.Word is "A" && line[tokens[at].Start] == 'a' && at + 1 < tokens.Count && tokens[at + 1].Kind == TokenKind.Word) continue;
            Place(phrase, tokens[at], tokens[at + phrase.Key.Length - 1], into);
            taken = phrase.Key.Length;
            return true;
        }
        return false;
    }

    private static bool IsPlace(List<Term> meaning) => meaning.Exists(t => t.Is(Sense.Area) || t.Is(Sense.SideArea)) && !meaning.Exists(t => t.Is(Sense.Before));

    private static readonly FrozenSet<string> SmallWords = FrozenSet.ToFrozenSet(
        ["am", "an", "as", "at", "be", "by", "do", "go", "he", "if", "in", "is", "it", "me", "my", "no", "of", "on", "or", "pm", "so", "to", "up", "us", "we"], StringComparer.Ordinal);

    // "Lo" after "L = links, o = onder": two letters that the family explained one by one.
    private bool TryCompound(List<Token> tokens, int at, List<Term> into, out int taken)
    {
        taken = 0;
        var text = tokens[at].Text;
        if (_letters.Count < 2 || text.Length != 2 || tokens[at].Kind != TokenKind.Word) return false;
        // "Sp 94" is a saturation, whatever S and P stand for.
        if (_vocabulary.Find(tokens, at, out _, out var mended) is { } plain && mended is null && plain.Any(m => m.Sense == Sense.SatLabel)) return false;
        // "on" and "no" are words of their own, whatever O and N stand for.
        if (SmallWords.Contains(text)) return false;
        if (!_family.TryGetValue(text[..1], out var first) || !_family.TryGetValue(text[1..], out var second)) return false;
        if (first[^1].Key.Length != 1 || second[^1].Key.Length != 1) return false;
        Place(first[^1], tokens[at], tokens[at], into);
        Place(second[^1], tokens[at], tokens[at], into);
        taken = 1;
        return true;
    }

    private static void Place(FamilyPhrase phrase, Token from, Token to, List<Term> into)
    {
        if (phrase.Session is { } areas)
        {
            into.Add(new Term { Kind = TermKind.Word, Start = from.Start, End = to.End, Text = phrase.Word.Length < ShortestWord ? "session" : phrase.Word.ToLowerInvariant(), Meanings = [new Meaning(Sense.Session, "")], Mended = phrase.Word, Areas = areas });
            return;
        }
        var glued = from.Glued;
        foreach (var term in phrase.Meaning)
        {
            into.Add(term with { Start = from.Start, End = to.End, Glued = glued && term.Kind == TermKind.Number, Mended = phrase.Word });
            glued = false;
        }
    }

    private sealed record FamilyPhrase(string[] Key, List<Term> Meaning, string Word, IReadOnlyList<AreaMinutes>? Session);

    // "usual = bottoms 4 each side, tops 2 each side, then vibs": a whole session, of more than one area or technique. Null for words of one place or of other things.
    private static List<AreaMinutes>? SessionOf(string word, List<Term> meaning)
    {
        if (char.IsAsciiDigit(word[0]) || meaning.Exists(t => t.Is(Sense.Medicine) || t.Is(Sense.Device) || t.Is(Sense.Feed) || t.Is(Sense.Pump) || t.Is(Sense.SatLabel) || t.Is(Sense.OxygenLabel))) return null;
        var terms = Finish([.. meaning]);
        var read = AreaGrammar.Read(terms);
        var areas = read.Base.Count > 0 ? AreaChanges.Combine(read.Base, read) : read.Areas;
        // "5 min lowers, 3 min uppers, skip vibration"
        if (Enumerable.Range(1, Math.Max(0, terms.Count - 1)).Any(i => terms[i].Is(Sense.Technique, "vibration") && (terms[i - 1].Is(Sense.Skip) || terms[i - 1].Is(Sense.Not) || terms[i - 1].Is(Sense.Minus)))) areas.RemoveAll(a => a.Technique == Technique.Vibration);
        // "4x/day, lowers 5 min each, uppers 3": how often, beside places with their minutes.
        if (areas.Where(a => a is { Area: not ChestArea.Unknown, Minutes: not null }).Select(a => a.Area).Distinct().Count() > 1) areas.RemoveAll(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown, Technique: not Technique.Vibration });
        // "normal clapping": the word itself names the technique.
        if (CellTerms.Read(word[(word.LastIndexOf(' ') + 1)..]).Exists(t => t.Is(Sense.Technique, "percussion"))) areas = areas.ConvertAll(a => a.Technique == Technique.Unknown ? a with { Technique = Technique.Percussion } : a);
        // "perc = cupping, lowers L and R 4 min each": the word is of sessions, whatever place they are of.
        var ofSessions = areas.Count > 1 && CellTerms.Read(word) is [{ } own] && (own.Is(Sense.Technique, "percussion") || own.Is(Sense.Session));
        return areas.Exists(a => a.Minutes is not null) && (ofSessions || areas.Select(a => (a.Area, a.Technique)).Distinct().Count() > 1) && areas.Exists(a => a.Area != ChestArea.Unknown) ? areas : null;
    }
}
