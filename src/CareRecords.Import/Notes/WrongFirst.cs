using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>
/// Takes out what was written wrongly at first and is put right in the same breath: "(not 69, my writing)", "(I had 39.3 down first, my mistake)", "39.1 (38.1? no, 39.1)",
/// "38.4, I first wrote 37.8", "a hundred ml, scratch that, a hundred and twenty ml".
/// </summary>
internal static class WrongFirst
{
    private const int FarthestAmount = 4;

    /// <summary>The terms without it.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        for (var open = 0; open < terms.Count; open++)
        {
            if (!terms[open].IsSymbol("(") || terms.FindIndex(open, t => t.IsSymbol(")")) is not (> 0 and var close)) continue;
            var inside = terms.GetRange(open + 1, close - open - 1);
            if (SaysWrong(inside) || open > 0 && ComesBackTo(terms[open - 1], inside)) terms = [.. terms.Take(open), .. terms.Skip(close + 1)];
        }

        return AmountSaidAgain(WroteFirst(terms));
    }

    private static bool SaysWrong(List<Term> inside) =>
        // One value, and no care beside it: "(not 40, he was sick)" tells of that too.
        inside.Count(IsValue) == 1 && (inside is [{ Text: "not" }, var wrong, ..] && IsValue(wrong) && !inside.Exists(t => t.NamesEvent && !IsValue(t))
        || inside.Exists(t => t.Text is "i had" or "had" or "wrote" or "i wrote" or "put" or "i put" or "said") && inside.Exists(t => t.Text.Contains("mistake", StringComparison.Ordinal) || t.Text is "wrong" or "wrongly" or "misread" or "typo" or "first"));

    // "39.1 (38.1? no, 39.1)": a doubt that ends where it began.
    private static bool ComesBackTo(Term told, List<Term> inside) => IsValue(told) && inside.Count(IsValue) == 2 && IsValue(inside[^1]) && inside[^1].Number == told.Number && inside.Exists(t => t.Text is "no") && !inside.Exists(t => t.NamesEvent && !IsValue(t));

    // "38.4, I first wrote 37.8", "95, first put 85 by mistake".
    private static List<Term> WroteFirst(List<Term> terms)
    {
        var wrote = terms.FindIndex(t => t.Text is "wrote" or "put" or "i wrote" or "i put");
        if (wrote < 2 || wrote + 1 >= terms.Count || !terms[wrote - 1].Is(Sense.First) || !IsValue(terms[wrote + 1])) return terms;
        var from = terms[wrote - 2].Text is "i" or "we" or "she" or "he" ? wrote - 2 : wrote - 1;
        if (from == 0 || !terms[from - 1].IsSymbol(",") || !terms.Take(from).Any(t => IsValue(t) && t.Unit == terms[wrote + 1].Unit)) return terms;
        var end = terms.FindIndex(wrote + 2, t => t.Kind == TermKind.Symbol);
        return [.. terms.Take(from - 1), .. end < 0 ? [] : terms.Skip(end)];
    }

    // "a hundred mils of milk no scratch that a hundred and twenty mils": the amount said last.
    private static List<Term> AmountSaidAgain(List<Term> terms)
    {
        for (var i = 1; i + 1 < terms.Count; i++)
        {
            if (!terms[i].Is(Sense.Correction) || terms[i].Is(Sense.Not)) continue;
            var again = terms.FindIndex(i + 1, Math.Min(2, terms.Count - i - 1), t => t.Kind == TermKind.Quantity);
            if (again < 0 || terms[again].Unit is not (Unit.Ml or Unit.Oz or Unit.Mg or Unit.Puffs)) continue;
            var first = terms.FindLastIndex(i - 1, Math.Min(FarthestAmount, i), t => t.Kind == TermKind.Quantity && t.Unit == terms[again].Unit);
            if (first < 0 || terms.Skip(first).Take(i - first).Any(t => t.Kind == TermKind.Time)) continue;
            return [.. terms.Take(first), .. terms.Skip(again)];
        }

        return terms;
    }

    private static bool IsValue(Term term) => term.Kind is TermKind.Number or TermKind.Quantity or TermKind.Time or TermKind.Parts;
}
