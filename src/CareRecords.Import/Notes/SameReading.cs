using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>"23.50 sats 93 on 0.5. 00.30 same": the reading of the sentence before, once more; not a session like the last.</summary>
internal static class SameReading
{
    /// <summary>The terms with the words of the reading in the place of "same".</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        for (var i = 2; i < terms.Count; i++)
        {
            if (terms[i].Kind != TermKind.Reference || !terms[i].Is(Sense.Same) || terms[i - 1].Kind != TermKind.Time || !IsEnd(terms, i + 1) || !(terms[i - 2].Kind == TermKind.Symbol && terms[i - 2].Text is "." or "," or ";")) continue;
            var from = terms.FindLastIndex(i - 3, i - 2, t => t.IsSymbol(".") || t.IsSymbol(";")) + 1;
            var before = terms.GetRange(from, i - 2 - from);
            if (!before.Exists(t => t.Is(Sense.SatLabel)) || before.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique) || t.Is(Sense.Medicine) || t.NamesFeed || t.Kind == TermKind.Reference) || before.Exists(t => t.Is(Sense.Before) || t.Is(Sense.After) || t.IsSymbol("→"))
                || before.Count(t => t.Kind == TermKind.Time) != 1 || before.Count(t => t is { Kind: TermKind.Number, Number: >= LeastSaturation and <= 100 }) != 1) continue;
            var reading = before.FindAll(t => t.Kind != TermKind.Time);
            terms.RemoveAt(i);
            terms.InsertRange(i, reading);
            i += reading.Count;
        }

        return terms;
    }

    private const int LeastSaturation = 60;

    private static bool IsEnd(List<Term> terms, int at) => at >= terms.Count || terms[at].Kind == TermKind.Symbol && terms[at].Text is "." or ";" or ",";
}
