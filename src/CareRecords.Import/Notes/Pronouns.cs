using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>"The doctor gave us azithromycin, 3 ml once a day. You had it at noon", "on the half litre. Turned it off at 3": a word that stands for the medicine, the oxygen or the session that the line named before.</summary>
internal static class Pronouns
{
    /// <summary>The terms with such words replaced by what they stand for.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        Term? medicine = null, oxygen = null, session = null;
        for (var i = 0; i < terms.Count; i++)
        {
            // "I did routine at 6.30, then his mother did it at 4 pm"
            if (terms[i].Is(Sense.Session) || terms[i].Is(Sense.Technique) || terms[i].Areas is not null) session = terms[i];
            else if (terms[i].Is(Sense.Medicine) || terms[i].Is(Sense.Device) || terms[i].NamesFeed || terms[i].Is(Sense.Sign)) session = null;
            if (session is not null && terms[i].Text is "did it" && i + 1 < terms.Count && terms[i + 1].Kind == TermKind.Time) { terms[i] = session with { Start = terms[i].Start, End = terms[i].End }; continue; }
            if (terms[i] is { Kind: TermKind.Word } && terms[i].Is(Sense.Medicine)) medicine = terms[i];
            if (terms[i].Is(Sense.OxygenLabel) || terms[i] is { Kind: TermKind.Quantity, Unit: Unit.Litre }) oxygen = terms[i];
            else if (terms[i].Is(Sense.Pump) || terms[i].Is(Sense.Feed)) oxygen = null;
            if (oxygen is not null && terms[i].Text == "it" && i > 0 && terms[i - 1].Text is "turned" or "switched" or "took" or "put" or "turn" or "turning" && i + 1 < terms.Count && (terms[i + 1].Is(Sense.Stop) || terms[i + 1].Text is "off" or "up" or "down"))
                terms[i] = terms[i] with { Text = "oxygen", Meanings = [new Meaning(Sense.OxygenLabel, "")] };
            if (medicine is null || terms[i].Text is not ("it" or "them" or "that") || i == 0 || !terms[i - 1].Is(Sense.Given) || !HasTime(terms, i + 1)) continue;
            terms[i] = medicine;
        }
        return terms;
    }

    // A time before the clause ends, and nothing else that could be meant.
    private static bool HasTime(List<Term> terms, int from)
    {
        for (var i = from; i < terms.Count && !(terms[i].Kind == TermKind.Symbol && terms[i].Text is "." or ";"); i++)
        {
            if (terms[i].Kind == TermKind.Time) return true;
            if (terms[i].NamesEvent) return false;
        }
        return false;
    }
}
