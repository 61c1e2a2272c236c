using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>Headings of sections within a day ("Physio:", "Feeds", "Meds -", "Obs"): what the lines below speak of when they do not say it.</summary>
internal static class Sections
{
    private const int LongestHeading = 24;

    /// <summary>The part of the day that a line names and nothing else ("Evening", "AM:", "Over night"); null when it says more or other.</summary>
    public static Term? PartOfDay(string content, TermReader reader)
    {
        var text = content.Trim().Trim('*', '#', '_', '=', '-', ' ', ':', '—', '–', '.');
        if (text.Length is 0 or > LongestHeading || text.Any(char.IsAsciiDigit)) return null;
        // "Night, Renée LPN": with who is on.
        if (text.IndexOfAny([',', '-', ':']) is > 0 and var end && reader.Read(text[(end + 1)..]).TrueForAll(t => t.Kind == TermKind.Symbol || t.Is(Sense.Person) || t is { Kind: TermKind.Word, Meanings.Length: 0 })) text = text[..end].TrimEnd();
        if (text.ToLowerInvariant() is "midday" or "noon" or "lunch" or "lunchtime") return new Term { Kind = TermKind.Word, Start = 0, End = text.Length, Text = text.ToLowerInvariant(), Meanings = [new Meaning(Sense.Meal, "lunch")] };
        return reader.Read(text) is [var only] && (only.Is(Sense.DayPart) || only.Is(Sense.AmPm)) && !only.NamesEvent && !only.Is(Sense.DayRef) ? only : null;
    }

    /// <summary>The heads that a section's heading names; null when the line is no such heading. Empty for a heading whose lines name their own care ("Meds").</summary>
    public static IReadOnlyList<Term>? Read(string content, TermReader reader)
    {
        var text = content.Trim().Trim('*', '#', '_', '=', '-', ' ');
        if (text.Length is 0 or > LongestHeading || text.Any(char.IsAsciiDigit) && !text.Contains("o2", StringComparison.OrdinalIgnoreCase)) return null;
        var marked = text[^1] == ':' || content.TrimStart().StartsWith('#') || content.Contains("**", StringComparison.Ordinal) || content.Any(char.IsLetter) && content.Where(char.IsLetter).All(char.IsUpper);
        if (!marked) return null;
        var terms = reader.Read(text.TrimEnd(':')).Where(t => t.Kind != TermKind.Symbol && !t.Is(Sense.And) && t.Text is not ("log" or "notes" or "times" or "record" or "done" or "the" or "today")).ToList();
        if (terms.Count is 0 or > 3) return null;
        if (terms.TrueForAll(t => t.Text is "obs" or "observations" or "other" or "notes" or "general" or "comments" or "remarks" or "misc" or "night" or "symptoms" or "signs" || t.Is(Sense.MedicineWord) || t.Is(Sense.Sign))) return [];
        if (!terms.TrueForAll(t => t.NamesEvent)) return null;
        var session = terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique));
        var feed = terms.Exists(t => t.NamesFeed);
        var check = terms.Exists(t => t.Is(Sense.SatLabel) || t.Is(Sense.OxygenLabel) || t.Is(Sense.Air));
        // Two kinds under one heading: each line must say which.
        return (session ? 1 : 0) + (feed ? 1 : 0) + (check ? 1 : 0) > 1 ? [] : terms;
    }
}
