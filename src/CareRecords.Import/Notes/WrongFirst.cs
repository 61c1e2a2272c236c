using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>Takes out what was written wrongly at first and is told in brackets: "(not 69, my writing)", "(I had 39.3 down first, my mistake)".</summary>
internal static class WrongFirst
{
    /// <summary>The terms without such brackets.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        for (var open = 0; open < terms.Count; open++)
        {
            if (!terms[open].IsSymbol("(") || terms.FindIndex(open, t => t.IsSymbol(")")) is not (> 0 and var close)) continue;
            if (SaysWrong(terms.GetRange(open + 1, close - open - 1))) terms = [.. terms.Take(open), .. terms.Skip(close + 1)];
        }

        return terms;
    }

    private static bool SaysWrong(List<Term> inside) =>
        // One value, and no care beside it: "(not 40, he was sick)" tells of that too.
        inside.Count(IsValue) == 1 && (inside is [{ Text: "not" }, var wrong, ..] && IsValue(wrong) && !inside.Exists(t => t.NamesEvent && !IsValue(t))
        || inside.Exists(t => t.Text is "i had" or "had" or "wrote" or "i wrote" or "put" or "i put" or "said") && inside.Exists(t => t.Text.Contains("mistake", StringComparison.Ordinal) || t.Text is "wrong" or "wrongly" or "misread" or "typo"));

    private static bool IsValue(Term term) => term.Kind is TermKind.Number or TermKind.Quantity or TermKind.Time or TermKind.Parts;
}
