using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>Takes out a remark in brackets between two times of a list: "usual 9am (lie in), 5.30pm".</summary>
internal static class Asides
{
    private const int LongestAside = 5;

    /// <summary>The terms without such remarks.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        for (var open = 1; open < terms.Count; open++)
        {
            if (!terms[open].IsSymbol("(") || terms[open - 1] is not { Clock: not null } || terms.FindIndex(open, t => t.IsSymbol(")")) is not (> 0 and var close) || close - open - 1 > LongestAside) continue;
            if (close + 2 >= terms.Count || !(terms[close + 1].IsSymbol(",") || terms[close + 1].Is(Sense.And)) || terms[close + 2].Clock is null) continue;
            // Words that tell of nothing: no care, no person, no day, nothing that was not done.
            if (terms.GetRange(open + 1, close - open - 1).TrueForAll(t => t is { Kind: TermKind.Word, Meanings.Length: 0 } || t.Text is "in")) terms = [.. terms.Take(open), .. terms.Skip(close + 1)];
        }

        return terms;
    }
}
