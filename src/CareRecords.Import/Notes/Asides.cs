using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>
/// Takes out remarks in brackets that would part or change what they stand in: between two times of a list ("usual 9am (lie in), 5.30pm"), why a side had
/// more ("right lower 6 mins (doctor heard more on the right)"), and the time of a handover that tells of another.
/// </summary>
internal static class Asides
{
    private const int LongestAside = 5;

    /// <summary>The terms without such remarks.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        // "2000 handover: off oxygen since 1500": when it was told is not when it was.
        if (terms is [{ Kind: TermKind.Time }, { Text: "handover" or "report" }, ..] && terms.Skip(2).Any(t => t.Kind == TermKind.Time && t.Is(Sense.Since))) terms = terms.GetRange(2, terms.Count - 2);
        for (var open = 1; open < terms.Count; open++)
        {
            if (terms[open].IsSymbol("(") && terms.FindIndex(open, t => t.IsSymbol(")")) is > 0 and var ends && IsReason(terms.GetRange(open + 1, ends - open - 1))) { terms = [.. terms.Take(open), .. terms.Skip(ends + 1)]; continue; }
            if (!terms[open].IsSymbol("(") || terms[open - 1] is not { Clock: not null } || terms.FindIndex(open, t => t.IsSymbol(")")) is not (> 0 and var close) || close - open - 1 > LongestAside) continue;
            if (close + 2 >= terms.Count || !(terms[close + 1].IsSymbol(",") || terms[close + 1].Is(Sense.And)) || terms[close + 2].Clock is null) continue;
            // Words that tell of nothing: no care, no person, no day, nothing that was not done.
            if (terms.GetRange(open + 1, close - open - 1).TrueForAll(t => t is { Kind: TermKind.Word, Meanings.Length: 0 } || t.Text is "in")) terms = [.. terms.Take(open), .. terms.Skip(close + 1)];
        }

        return terms;
    }

    // "doctor heard more on the right", "crackly on the left": names a side without minutes, beside words that say what was heard or felt there.
    private static bool IsReason(List<Term> words) => words.Exists(t => t.Is(Sense.Side) || t.Is(Sense.SideArea) || t.Is(Sense.Area)) && !words.Exists(t => t.Kind != TermKind.Word || t.Is(Sense.Technique) || t.Is(Sense.Session) || t.Is(Sense.Only) || t.Is(Sense.Not) || t.Is(Sense.Skip))
        && words.Exists(t => t.Text is "heard" or "hears" or "sounded" or "sounds" or "worse" or "crackly" or "crackles" or "crackling" or "rattly" or "noisy" or "wheezy" or "stuck" or "tighter");
}
