using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>A run of terms between separators.</summary>
internal sealed class Chunk
{
    /// <summary>Its terms, without the separators.</summary>
    public List<Term> Terms { get; } = [];

    /// <summary>Number of the sentence in the line, from 0.</summary>
    public required int Sentence { get; init; }

    /// <summary>The separator before it: "" at the start of the line, ",", ".", "/", "-", "(", "|", ":".</summary>
    public required string Before { get; init; }

    /// <summary>Whether it stands in brackets.</summary>
    public required bool Bracketed { get; init; }

    /// <summary>Whether it ends in a question mark.</summary>
    public bool Asks { get; set; }

    /// <summary>Advice, plan, shopping: its words are no record.</summary>
    public bool Unreal { get; set; }

    // "so chest at 9", "so we did the usual at 7"
    private static bool FollowsUp(List<Term> terms, int at)
    {
        var next = at + 1;
        while (next < terms.Count && next < at + 4 && terms[next].Text is "we" or "i" or "did" or "i did" or "we did" or "gave" or "the" or "her" or "his") next++;
        return next < terms.Count && (terms[next].Is(Sense.Session) || terms[next].Is(Sense.Technique) || terms[next].Kind == TermKind.Reference) && terms.Skip(next).Take(4).Any(t => t.Kind == TermKind.Time);
    }

    /// <summary>Whether it holds a term with the sense.</summary>
    public bool Has(Sense sense) => Terms.Carry(sense);

    /// <summary>Cuts the terms of a line at their separators.</summary>
    public static List<Chunk> Cut(List<Term> terms)
    {
        var chunks = new List<Chunk>();
        var (sentence, before, depth) = (0, "", 0);
        var current = New();
        for (var i = 0; i < terms.Count; i++)
        {
            var term = terms[i];
            if (current.Terms.Exists(t => t.Kind == TermKind.Time) && SomebodySays(terms, i))
            {
                // "usual 7.30 and 5.30 she says", "three goes, 7, 1 and 6, mum says four minutes now": what stands before was done.
                chunks.Add(current);
                before = "-";
                current = New();
            }
            else if (term.Text == "so" && current.Terms.Exists(t => t.Is(Sense.Advice)) && FollowsUp(terms, i))
            {
                // "jo says we can come down a bit so chest at 9 and 6 with four minutes each side": what was done then.
                chunks.Add(current);
                sentence++;
                before = ".";
                current = New();
            }
            else if (EndsTelling(current.Terms, terms, i))
            {
                // "normal physio at six thirty no pump it is finished must collect", "we missed the morning no taxis so normal physio five past four", told without a stop.
                chunks.Add(current);
                sentence++;
                before = ".";
                current = New();
            }
            if (Separator(terms, i) is not { } sign) { current.Terms.Add(term); continue; }
            if (current.Terms.Count > 0) chunks.Add(current);
            current.Asks |= sign == "?";
            if (sign == "(") depth++;
            if (sign == ")") depth = Math.Max(0, depth - 1);
            if (sign is "." or "/" or "|" or "?") sentence++;
            before = sign;
            current = New();
        }
        if (current.Terms.Count > 0) chunks.Add(current);
        return chunks;

        Chunk New() => new() { Sentence = sentence, Before = before, Bracketed = depth > 0 };
    }

    private static bool EndsTelling(List<Term> told, List<Term> terms, int at) =>
        terms[at].Text is "must" or "need to" && told.Exists(t => t.Kind == TermKind.Time) && told.Exists(t => t.NamesEvent)
        || terms[at].Text == "so" && told.Exists(t => t.Is(Sense.Skip)) && !told.Exists(t => t.Kind == TermKind.Time) && at + 2 < terms.Count && terms.Skip(at + 1).Take(3).Any(t => t.NamesEvent || t.Areas is not null) && terms.Skip(at).Any(t => t.Kind == TermKind.Time);

    private static bool SomebodySays(List<Term> terms, int at) => at + 1 < terms.Count && (terms[at].Is(Sense.Person) || terms[at].Text is "she" or "he" or "they" || terms[at] is { Kind: TermKind.Word, Meanings.Length: 0, Text.Length: > 2 }) && terms[at + 1].Text is "says" or "said" or "say" or "reckons" or "reckon";

    // A question mark ends a question of several words; after one word ("feed?") it only doubts it.
    private static bool Asking(List<Term> terms, int at)
    {
        var words = 0;
        for (var i = at - 1; i >= 0 && !(terms[i].Kind == TermKind.Symbol && terms[i].Text is "." or ";" or "!" or "?" or ","); i--)
        {
            if (terms[i].Kind is TermKind.Number or TermKind.Quantity or TermKind.Time or TermKind.Parts) return false;
            words++;
        }
        return words >= 3 || terms.Take(at).Any(t => t.Is(Sense.Asking));
    }

    // "O2 0.5 from 03:00, sats 93 + clap 06:30 lowers 4": an event with its time on either side.
    private static bool PartsEvents(List<Term> terms, int at)
    {
        if (at == 0) return false;
        var from = terms.FindLastIndex(at - 1, at, IsEnd) + 1;
        var to = terms.FindIndex(at + 1, t => IsEnd(t) || t.IsSymbol(","));
        return Tells(terms.GetRange(from, at - from)) && Tells(terms.GetRange(at + 1, (to < 0 ? terms.Count : to) - at - 1));

        static bool IsEnd(Term term) => term.Kind == TermKind.Symbol && term.Text is "+" or "." or ";" or "|";
        static bool Tells(List<Term> part) => part.Exists(t => t.Kind == TermKind.Time) && part.Exists(t => t.NamesEvent);
    }

    private static string? Separator(List<Term> terms, int at)
    {
        var term = terms[at];
        if (term.Kind != TermKind.Symbol) return null;
        // A comma inside a family's word parts nothing.
        if (term.Mended is not null && at > 0 && at + 1 < terms.Count && terms[at - 1].Start == term.Start && terms[at + 1].Start == term.Start) return null;
        var loose = !term.Glued || (at + 1 < terms.Count && !terms[at + 1].Glued);
        return term.Text switch
        {
            "." or ";" or "!" => ".",
            "?" => Asking(terms, at) ? "?" : null,
            "/" when loose && !(at > 0 && terms[at - 1].Kind is TermKind.Number && at + 1 < terms.Count && terms[at + 1].Kind is TermKind.Number) => "/",
            "|" => "|",
            "," => ",",
            "(" or "[" => "(",
            ")" or "]" => ")",
            ":" => ":",
            "+" when !term.Glued && PartsEvents(terms, at) => ".",
            "-" or "—" when !term.Glued => "-",
            "—" => "-",
            _ => null,
        };
    }
}
