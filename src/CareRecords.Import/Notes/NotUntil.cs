using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>"I did not put the night feed on until half past nine": done, at that time.</summary>
internal static class NotUntil
{
    /// <summary>The terms with such a "not" taken out.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        for (var not = 0; not < terms.Count; not++)
        {
            if (!terms[not].Is(Sense.Not) || terms[not].Is(Sense.Correction)) continue;
            var time = terms.FindIndex(not, t => t.Kind == TermKind.Time || t.Kind == TermKind.Symbol);
            if (time < 0 || terms[time].Kind != TermKind.Time || !terms.Skip(not).Take(time - not).Any(t => t.NamesEvent) || !IsUntil(terms, time)) continue;
            terms = [.. terms.Take(not), .. terms.Skip(not + 1).Take(time - not - 1).Where(t => t.Text is not ("until" or "till" or "til")), terms[time] with { Meanings = [.. terms[time].Meanings.Where(m => m.Sense != Sense.To)], At = true }, .. terms.Skip(time + 1).Select((t, i) => IsUnwell(terms, time + 1 + i) ? t with { Meanings = [] } : t)];
        }

        return terms;
    }

    // "because his stomach was off": nothing was turned off.
    private static bool IsUnwell(List<Term> terms, int at) => terms[at].Text == "off" && terms[at - 1].Text is "was" or "is";

    private static bool IsUntil(List<Term> terms, int time) => terms[time].Is(Sense.To) || terms[time - 1].Text is "until" or "till" or "til";
}
