namespace CareRecords.Import.Reading;

/// <summary>Times at which something was to be, before the time at which it was: "moved from 4 to 6.15", "was meant for 6pm but done at 8pm".</summary>
internal static class PlannedTimes
{
    /// <summary>The terms without the times that did not come about; and with the hour that stands behind an inhaler and belongs to the session that follows.</summary>
    public static List<Term> Settle(List<Term> terms)
    {
        if (!terms.Exists(t => t.Kind == TermKind.Time)) return terms;
        for (var i = 0; i < terms.Count; i++)
        {
            if (terms[i] is { Kind: TermKind.Time, Clock.End: { } moved } span && IsMoved(terms, i)) terms[i] = span with { Clock = new ClockSpan(moved, null) };
            if (IsHourOfInhaler(terms, i)) terms[i] = terms[i] with { Kind = TermKind.Time };
            if (terms[i].Kind == TermKind.Time && PlanOf(terms, i) is >= 0 and var plan && ComesAbout(terms, i))
            {
                terms.RemoveRange(plan, i - plan + 1);
                i = plan - 1;
            }
        }
        return terms;
    }

    // "bumped from" right before the two times: "moved to the chair, physio 4 to 4.20" is a span.
    private static bool IsMoved(List<Term> terms, int time) => IsMove(terms, time - 1) || time > 1 && terms[time - 1].Text == "from" && IsMove(terms, time - 2);

    private static bool IsMove(List<Term> terms, int at) => at >= 0 && terms[at].Text is ("moved" or "shifted" or "bumped" or "postponed" or "delayed" or "rescheduled" or "pushed" or "swapped");

    // "fixed for", "due at", "meant to be at" right before a time.
    private static int PlanOf(List<Term> terms, int time)
    {
        for (var i = time - 1; i >= 0 && i >= time - 4 && terms[i].Kind == TermKind.Word; i--)
            if (Plans(terms[i].Text) && !(terms[i].Text == "for" && !(i > 0 && terms[i - 1].Text == "was"))) return i > 0 && terms[i - 1].Text == "was" ? i - 1 : i;
        return -1;
    }

    private static bool Plans(string words) => (words.StartsWith("was ", StringComparison.Ordinal) ? words[4..] : words).Split(' ')[0] is "for" or "due" or "meant" or "fixed" or "booked" or "planned" or "scheduled";

    // In the same sentence another time, with words that say it was then.
    private static bool ComesAbout(List<Term> terms, int time)
    {
        var told = false;
        for (var i = time + 1; i < terms.Count && !terms[i].IsSymbol("."); i++)
        {
            if (terms[i].Kind == TermKind.Time && told) return true;
            // "amoxicillin due 8am but sick so gave ibuprofen 8.30": the second time is of something else.
            if (terms[i].Is(Sense.Medicine) || terms[i].Is(Sense.Device) || terms[i].Is(Sense.Antibiotic) || terms[i].Is(Sense.Session) || terms[i].Is(Sense.Feed)) return false;
            told |= terms[i].Text is "but" or "so" or "ended up" or "ended" or "instead" or "finally" or "eventually" or "actually" or "at last" or "last" or "in the end" or "done" or "did" or "gave" or "given" or "put back to" or "put back" or "moved to" or "pushed to" or "later" || terms[i].Is(Sense.Given);
        }
        return false;
    }

    // "Inhaler 7, chest 20 past 7": seven o'clock, not seven puffs.
    private static bool IsHourOfInhaler(List<Term> terms, int at) => at > 0 && terms[at] is { IsWhole: true, Number: >= 1 and <= 12, Clock: not null } hour && (terms[at - 1].Is(Sense.Device) || terms[at - 1].Text is "puffs")
        && at + 1 < terms.Count && terms[at + 1].IsSymbol(",")
        && terms.FindIndex(at, t => t.Kind == TermKind.Time) is > 0 and var next && terms[next].Clock!.Start.Time is var start && start.Hour % 12 == (int)hour.Number % 12 && start.Minute is >= 5 and <= 30
        && terms.Take(next).Skip(at).Any(t => t.Is(Sense.Session) || t.Is(Sense.Technique) || t.Kind == TermKind.Reference || t.Areas is not null || t.Is(Sense.Usual) || t.Mended is not null);
}
