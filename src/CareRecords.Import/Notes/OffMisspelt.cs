using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>"feed of 6", "of oxgen 10": an f left out beside a pump, a feed or the oxygen, before a time or at the end.</summary>
internal static class OffMisspelt
{
    /// <summary>The terms with such words put right.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        for (var i = 0; i < terms.Count; i++)
        {
            if (terms[i].Text != "of" || terms[i].Kind != TermKind.Word) continue;
            var after = i > 0 && (terms[i - 1].Is(Sense.Feed) || terms[i - 1].Is(Sense.Pump) || terms[i - 1].Is(Sense.OxygenLabel)) && (i + 1 == terms.Count || terms[i + 1].Clock is not null || terms[i + 1].Kind == TermKind.Symbol);
            var before = i == 0 && terms.Count > 1 && (terms[1].Is(Sense.OxygenLabel) || terms[1].Is(Sense.Pump)) && (terms.Count == 2 || terms[2].Clock is not null);
            if (after) terms[i] = terms[i] with { Text = "off", Meanings = [new Meaning(Sense.Stop, "")] };
            else if (before && terms[1].Is(Sense.OxygenLabel)) { terms[0] = terms[0] with { Text = "no oxygen", End = terms[1].End, Meanings = [new Meaning(Sense.Air, "")] }; terms.RemoveAt(1); }
            else if (before) terms[i] = terms[i] with { Text = "off", Meanings = [new Meaning(Sense.Stop, "")] };
        }
        return terms;
    }
}
