using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>Numbers that count sessions or say how often: "three claps today", "all four", "4 x a day", "back to two today". They are no minutes.</summary>
internal static class Counts
{
    /// <summary>Whether a term counts.</summary>
    /// <param name="terms">The terms of its group.</param>
    /// <param name="term">One of them.</param>
    /// <param name="times">How many times of day the group tells.</param>
    public static bool Is(List<Term> terms, Term term, int times)
    {
        if (term.Kind is not (TermKind.Number or TermKind.Times)) return times > 1 && term.Number == times && terms.IndexOf(term) is var other && IsOfTimes(At(terms, other + 1));
        var at = terms.IndexOf(term);
        return times > 1 && term.Number == times && CountsTimes(terms, at)
            || term.Kind == TermKind.Number && CountsSessions(terms, at, times)
            || IsHowMany(terms, at, times)
            || IsFrequency(terms, at);
    }

    // "3x today: 07:30, 13:00, 19:00", "bases 5 each, tops 3 each, all three", "all four LB 4 RB 4": as many as there are times.
    private static bool CountsTimes(List<Term> terms, int at)
    {
        if (terms[at].Kind == TermKind.Times || IsOfTimes(At(terms, at + 1))) return true;
        if (terms[at].Kind != TermKind.Number || at == 0) return false;
        if (At(terms, at + 1)?.Text is ":" && terms[at - 1].Kind == TermKind.Word) return true;
        return terms[at - 1].Text is "all" or "all of"
            && (At(terms, at + 1) is not { } next || next.Kind == TermKind.Symbol || (next.Is(Sense.SideArea) || next.Is(Sense.Area)) && At(terms, at + 2)?.Kind == TermKind.Number);
    }

    // "twice", "times"; not "2 both times", where the 2 are minutes.
    private static bool IsOfTimes(Term? next) => next is not null && next.Is(Sense.Times) && !next.Is(Sense.Each) && !next.Text.StartsWith("both", StringComparison.Ordinal) && !next.Text.StartsWith("all", StringComparison.Ordinal);

    // "four physios", "four lots today, seven and eleven and three and seven", "three claps: 7, 1 and 6", "shakes at the 7s".
    private static bool CountsSessions(List<Term> terms, int at, int times) =>
        // "PT #2", "session no 3": which of the day's it was.
        at > 1 && terms[at] is { IsWhole: true, Number: <= 9 } && (terms[at - 1].IsSymbol("#") || terms[at - 1].Text is "no" or "number" or "nr") && terms[at - 2].Is(Sense.Session)
        || At(terms, at + 1) is { } next && (next.Is(Sense.Session) && next.Text.EndsWith('s')
            || times > 1 && (next.Text is "lots" or "goes" or "rounds" or "sets" || next.Is(Sense.Technique) && next.Text.EndsWith('s') && terms[at].Number == times))
        || at > 0 && terms[at - 1].Text is "the" && terms[at].Text.EndsWith('s');

    // "physio x3 in the day": without times and places a count is of sessions.
    private static bool IsHowMany(List<Term> terms, int at, int times) =>
        times == 0 && terms[at] is { Kind: TermKind.Times, Number: >= 2 and <= 6 } && terms.Exists(t => t.Is(Sense.Session))
        && !terms.Exists(t => t.Is(Sense.Area) || t.Is(Sense.Side) || t.Is(Sense.SideArea) || t.Is(Sense.Each) || t.Is(Sense.EachSide) || t.Kind == TermKind.Reference);

    // "4 x a day", "back to two today": how often, not minutes.
    private static bool IsFrequency(List<Term> terms, int at) =>
        At(terms, at + 1) is { } next && (next.Is(Sense.Frequency)
            || next.Is(Sense.DayRef, "0") && terms[at].Kind == TermKind.Number && at > 0 && terms[at - 1].Is(Sense.Going)
            || next.Is(Sense.Times) && At(terms, at + 2)?.Is(Sense.Frequency) == true);

    private static Term? At(List<Term> terms, int at) => at < terms.Count ? terms[at] : null;
}
