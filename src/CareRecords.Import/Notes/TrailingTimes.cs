using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>"feed off, 7", "physio both sides 3 each, 4.30": what, then when. A number alone after the last comma of a sentence that has no other time.</summary>
internal static class TrailingTimes
{
    /// <summary>The terms with such times put in place.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        var start = 0;
        for (var i = 0; i < terms.Count; i++)
        {
            if (terms[i].Kind == TermKind.Symbol && terms[i].Text is "." or ";" or "|") { start = i + 1; continue; }
            var ends = i + 1 == terms.Count || terms[i + 1].Kind == TermKind.Symbol && terms[i + 1].Text is "." or ";" or "|";
            if (!ends || i < start + 2 || !terms[i - 1].IsSymbol(",") || terms[i] is not { Kind: TermKind.Number, Clock: not null } number || !(number.IsWhole ? number.Number <= 12 || number.Text.Length == 3 : true)) continue;
            var before = terms.GetRange(start, i - 1 - start);
            if (before.Exists(t => t.Kind == TermKind.Time) || !before.Exists(t => t.NamesEvent)) continue;
            // "amoxicillin 8, 2" and "3, 3, 2": lists.
            if (before.FindLastIndex(t => t.IsSymbol(",")) is var comma && comma >= 0 && before.Count - comma == 2 && before[^1].Kind == TermKind.Number) continue;
            if (before.Count == 2 && before[1].Kind == TermKind.Number && !before[0].Is(Sense.Device) && !(before[0].ValueOf(Sense.Medicine) is { } medicine && CareRecords.Records.Medicines.ClassOf(medicine) == CareRecords.Records.MedicineClass.Bronchodilator)) continue;
            terms[i] = number with { Kind = TermKind.Time };
        }
        return terms;
    }
}
