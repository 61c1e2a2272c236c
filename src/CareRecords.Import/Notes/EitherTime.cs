using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>"8 or half 8": two times of which only one can be right; the family is asked which.</summary>
internal static class EitherTime
{
    /// <summary>The terms with every such pair marked to be asked about.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        for (var i = 1; i + 1 < terms.Count; i++)
        {
            if (terms[i].Text != "or" || !(terms[i + 1].Kind == TermKind.Time || terms[i - 1].Kind == TermKind.Time) || terms[i - 1].Clock is null || terms[i + 1].Clock is null || terms[i - 1].Times.Count > 0) continue;
            terms[i - 1] = terms[i - 1] with { Kind = TermKind.BadTime, End = terms[i + 1].End, Clock = null, Meanings = [new Meaning(Sense.Clock, "either")] };
            terms.RemoveRange(i, 2);
        }
        return terms;
    }
}
