using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>Words whose meaning hangs on the words beside them: "sick 2.20", "both 3 minutes each side", "did not do the 7 pm chest", "1145 … 1130 not 1145".</summary>
internal static class Neighbours
{
    private static readonly Meaning Vomit = new(Sense.Sign, "vomit");

    /// <summary>The terms with such words given their meaning, or taken out where they only repeat.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        for (var i = 0; i < terms.Count; i++)
        {
            var term = terms[i];
            if (term is { Kind: TermKind.Word, Text: "sick", Meanings.Length: 0 } && IsAtTime(terms, i)) terms[i] = term with { Meanings = [Vomit] };
            else if (term.Text == "both" && term.Is(Sense.Side) && i + 1 < terms.Count && terms[i + 1].Kind is TermKind.Quantity or TermKind.Number && terms.Skip(i + 2).Take(2).Any(t => t.Is(Sense.EachSide) || t.Is(Sense.Each)))
                terms[i] = term with { Meanings = [] };
            // "off at 5.40 no scratch that 5.50": the later time stands for the earlier.
            else if (term.Is(Sense.Correction) && !term.Is(Sense.Not) && i + 1 < terms.Count && terms[i + 1] is { Kind: TermKind.Time, Times.Count: 0, Clock: { } meant } && (terms[i - (i > 1 && terms[i - 1].Text is "no" or "," ? 2 : i > 0 ? 1 : 0)] is { Kind: TermKind.Time, Times.Count: 0 } said))
            {
                var first = terms.IndexOf(said);
                terms[first] = said with { Clock = meant };
                terms.RemoveRange(first + 1, i + 1 - first);
                i = first;
            }
            // "both sides, lower 3 each and upper 2 each", "both patting, lower 4 each": the areas that follow are of both sides.
            else if (term.Is(Sense.Side, "both") && i + 1 < terms.Count && (terms[i + 1].IsSymbol(",") || terms[i + 1].Is(Sense.Technique)) && !(i > 0 && (terms[i - 1].Is(Sense.Area) || terms[i - 1].Kind is TermKind.Quantity or TermKind.Number)) && terms.Skip(i + 1).Take(4).Any(t => t.Is(Sense.Area)) && terms.Skip(i + 1).Any(t => t.Is(Sense.Each) || t.Is(Sense.EachSide)))
                terms[i] = term with { Meanings = [] };
            // "Sat evening the physio was at 7": the day, not a reading.
            else if (term is { Kind: TermKind.Word, Text: "sat" } && i + 1 < terms.Count && terms[i + 1].Text is "evening" or "morning" or "afternoon" or "night" or "eve" or "tea" && !terms.Skip(i + 2).Take(3).Any(t => t is { Kind: TermKind.Number, Number: >= 60 and <= 100 }))
                terms[i] = term with { Meanings = [new Meaning(Sense.Weekday, "6")] };
            // "only 10 min gap": between two things, not of a session.
            else if (term.Text is "gap" or "gaps" && i > 0 && terms[i - 1] is { Kind: TermKind.Quantity, Unit: Unit.Min }) { terms.RemoveAt(i - 1); i--; }
            // "14 nappies left": what remains.
            else if (term.Text == "left" && term.Is(Sense.Side) && i > 1 && (terms[i - 1] is { Kind: TermKind.Word, Meanings.Length: 0 } || terms[i - 1].Is(Sense.None)) && terms[i - 2].Kind is TermKind.Number or TermKind.Quantity && (i + 1 >= terms.Count || terms[i + 1].Kind != TermKind.Number && terms[i + 1].Kind != TermKind.Quantity && !terms[i + 1].Is(Sense.Area)))
                terms[i] = term with { Meanings = [] };
            else if (term is { Text: "do" } && (i > 0 && terms[i - 1].Is(Sense.Not) || i + 1 < terms.Count && (terms[i + 1].Is(Sense.Session) || terms[i + 1].Is(Sense.Technique)))) terms[i] = term with { Meanings = [] };
            else if (term.Text is "not" && i + 1 < terms.Count && i > 1 && terms[i - 1] is { Kind: TermKind.Time, Times.Count: 0, Clock: { } right } && terms[i + 1] is { Kind: TermKind.Time, Times.Count: 0, Clock: { } wrong }
                && terms.FindIndex(0, i - 1, t => t is { Kind: TermKind.Time, Times.Count: 0, Clock: { } told } && told.Start.Time == wrong.Start.Time) is var at and >= 0)
            {
                // The time told first in the same line was wrong.
                terms[at] = terms[at] with { Clock = right };
                terms.RemoveRange(i - 1, 3);
                i -= 2;
            }
        }
        return terms;
    }

    // "sick 2.20", "2.20 sick", "sick again at 6.40"; not "off sick 9.00".
    private static bool IsAtTime(List<Term> terms, int at)
    {
        if (at > 0 && terms[at - 1].Text is "off" or "home" or "is" or "feeling" or "not" or "call" or "called") return false;
        if (at > 0 && terms[at - 1].Kind == TermKind.Time) return true;
        var next = at + 1;
        while (next < terms.Count && next <= at + 2 && terms[next].Kind != TermKind.Time && (terms[next].Text is "again" or "about" or "around" or "twice" || terms[next].Is(Sense.At))) next++;
        return next < terms.Count && (terms[next].Kind == TermKind.Time || (next > at + 1 && (terms[next].Number is > 0 and <= 12 || terms[next].Text is "half" or "quarter" || terms[next].Is(Sense.Half))));
    }
}
