using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>What "same" or "as …" points at.</summary>
internal enum ReferTo
{
    /// <summary>The last of its kind.</summary>
    Last,

    /// <summary>The one at a time of day.</summary>
    Time,

    /// <summary>The one of the morning, afternoon, evening or night.</summary>
    Part,

    /// <summary>The last of an earlier day.</summary>
    Day,

    /// <summary>The line with a number in the list.</summary>
    Item,

    /// <summary>The family's usual, when it has said what that is.</summary>
    Usual,
}

/// <summary>Finds "same", "ditto", "as am", "same as 2)", "like yesterday" and makes each one term.</summary>
internal static class References
{
    /// <summary>The terms with their references put together. The kind of reference is in the value of <see cref="Sense.Same"/>.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        if (!terms.Exists(t => t.Is(Sense.Same) || t.Is(Sense.SameAs) || t.Is(Sense.Usual) || t.IsSymbol("\""))) return terms;
        var result = new List<Term>(terms.Count);
        for (var i = 0; i < terms.Count;)
        {
            if (Read(terms, i, result) is { } found) { result.Add(found.Term); i = found.Next; }
            else { result.Add(terms[i]); i++; }
        }
        return result;
    }

    private static (Term Term, int Next)? Read(List<Term> terms, int at, List<Term> before)
    {
        var term = terms[at];
        if (term.IsSymbol("\"") && (before.Count == 0 || before[^1].Kind is TermKind.Symbol or TermKind.Time) && !terms.Skip(at + 1).Any(t => t.IsSymbol("\"") && !IsCellStart(terms, t)))
            return (Make(term, term, ReferTo.Last), at + 1);
        // "0330 restarted same rate": of the feed.
        if (term.Is(Sense.Same) && at + 1 < terms.Count && terms[at + 1].Is(Sense.RateWord)) return (term with { End = terms[at + 1].End, Text = "same rate", Meanings = [new Meaning(Sense.Feed, "")] }, at + 2);
        if (term.Is(Sense.Same) || term.Is(Sense.SameAs))
        {
            var next = at + 1;
            while (next < terms.Count && (terms[next].Is(Sense.SameAs) || terms[next].Text is "the" or "in" or "on" or "one" or "at" or "did" or "your" or "my" or "his" or "her" || (terms[next].Is(Sense.At) && terms[next].Kind == TermKind.Word) || terms[next].Is(Sense.Same))) next++;
            if (next < terms.Count && (terms[next - 1].Is(Sense.SameAs) || term.Is(Sense.SameAs) || term.Text.EndsWith("as", StringComparison.Ordinal) || term.Text.EndsWith("of", StringComparison.Ordinal)) && Target(terms, next) is { } target)
                return (target.Term with { Start = term.Start }, target.Next);
            // "left 3, right 3, then the same up top": as many minutes as the place before, no other session.
            if (at > 0 && terms[at - 1].Is(Sense.Then) && at + 1 < terms.Count && terms[at + 1].Is(Sense.Area) && terms.Take(at).Any(t => t.Is(Sense.Area) || t.Is(Sense.SideArea))) return null;
            return term.Is(Sense.Same) && !term.Is(Sense.SameAs) ? (Make(term, term, ReferTo.Last), at + 1)
                : term.Text is "same as" or "same as the" or "as per" or "repeat as" ? (Make(term, term, ReferTo.Last), at + 1) : null;
        }
        if (term.Is(Sense.Usual)) return (Make(term, term, ReferTo.Usual), at + 1);
        return null;
    }

    private static bool IsCellStart(List<Term> terms, Term quote) => terms.IndexOf(quote) is var i && i > 0 && terms[i - 1].IsSymbol("|");

    private static (Term Term, int Next)? Target(List<Term> terms, int at)
    {
        var term = terms[at];
        if (term.Kind == TermKind.Time && term.Clock is not null && term.Times.Count == 0) return (Make(term, term, ReferTo.Time), at + 1);
        // "as 1", "same as no 2": a line of the day's list.
        var item = term.Text is "no" or "nr" or "number" && at + 1 < terms.Count ? at + 1 : at;
        if (terms[item] is { Kind: TermKind.Number, IsWhole: true, Number: >= 1 and <= 12 } listed && (item + 1 >= terms.Count || terms[item + 1].Text is "," or "." or ";" || terms[item + 1].Kind == TermKind.Symbol && !terms[item + 1].IsSymbol(")") && !terms[item + 1].Glued || terms[item + 1].Text is "but" or "then" or "without" or "except" || terms[item + 1].Is(Sense.Minus)))
            return (Make(listed, listed, ReferTo.Item), item + 1);
        if (term is { Kind: TermKind.Parts, Parts: [>= 1 and <= 31, >= 1 and <= 31] } && term.Text.Contains('/')) return (Make(term, term, ReferTo.Day), at + 1);
        if (term.Kind == TermKind.Number && term.IsWhole && at + 1 < terms.Count && terms[at + 1].IsSymbol(")")) return (Make(term, terms[at + 1], ReferTo.Item), at + 2);
        if (term.Kind == TermKind.Number && term.IsWhole && at + 1 < terms.Count && terms[at + 1].Glued && terms[at + 1].Text is "st" or "nd" or "rd" or "th") return (Make(term, terms[at + 1], ReferTo.Day), at + 2);
        if (term.Kind == TermKind.Number && term.IsWhole && term.Text.Length >= 3 && term.Clock is not null) return (Make(term, term, ReferTo.Time), at + 1);
        if (term.Kind == TermKind.Word && term.Number is > 0 and <= 31) return (Make(term, term, ReferTo.Day), at + 1);
        // "as yesterday 16:00"
        if ((term.Is(Sense.DayRef, "-1") || term.Is(Sense.Weekday)) && at + 1 < terms.Count && terms[at + 1] is { Kind: TermKind.Time, Clock: not null, Times.Count: 0 } then && (at + 2 >= terms.Count || terms[at + 2].Kind == TermKind.Symbol)) return (Make(term, then, ReferTo.Day) with { Clock = then.Clock }, at + 2);
        // "same as Wed afternoon"
        if (term.Is(Sense.Weekday) && at + 1 < terms.Count && terms[at + 1].Kind == TermKind.Word && (terms[at + 1].Is(Sense.DayPart) || terms[at + 1].Is(Sense.AmPm)) && !terms[at + 1].Is(Sense.DayRef))
            return (Make(term, terms[at + 1], ReferTo.Day) is var whole ? whole with { Text = $"{term.Text} {terms[at + 1].Text}", Meanings = [.. whole.Meanings, .. terms[at + 1].Meanings.Where(m => m.Sense is Sense.AmPm or Sense.DayPart)] } : term, at + 2);
        if (term.Is(Sense.DayRef, "-1") || term.Is(Sense.Weekday)) return (Make(term, term, ReferTo.Day), at + 1);
        if (term.Is(Sense.AmPm) || term.Is(Sense.DayPart)) return (Make(term, term, ReferTo.Part), at + 1);
        return null;
    }

    private static Term Make(Term word, Term last, ReferTo to) => word with
    {
        Kind = TermKind.Reference,
        End = last.End,
        Meanings = [new Meaning(Sense.Same, to.ToString()), .. word.Meanings.Where(m => m.Sense is Sense.DayRef or Sense.Weekday or Sense.AmPm or Sense.DayPart or Sense.Usual)],
    };
}
