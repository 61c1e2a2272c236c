using System.Text.RegularExpressions;

namespace CareRecords.Import.Reading.Keys;

/// <summary>Signs before their words without an "=": "LB left bottom, RB right bottom", "bases (LL) and apices (UL)".</summary>
internal static partial class SignLists
{
    /// <summary>"LB left bottom, RB right bottom", "♥ sats   ☕ feed": short signs, each before words that the vocabulary knows.</summary>
    public static void Add(string line, List<FamilyWord> words, int least = 2, bool afterKey = false)
    {
        var titled = afterKey || KeyReader.IsTitled(line);
        var entries = line.Replace("  ", ",", StringComparison.Ordinal).Split(titled ? [',', ';', '(', ')'] : [',', ';', '.'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        // "L lowers U uppers": pairs of a sign and its word without a comma.
        if (titled) entries = [.. entries.SelectMany(e => KeyReader.IsTitled(e) ? [e] : SignsAndWords(e))];
        if (entries.Length < least) return;
        var found = new List<FamilyWord>();
        foreach (var written in entries)
        {
            var entry = titled ? KeyReader.Untitled(written) : written;
            var space = entry.IndexOf(' ', StringComparison.Ordinal);
            if (space <= 0) continue;
            var (key, means) = (entry[..space].TrimEnd(':'), entry[(space + 1)..].Trim('-', ' ', ':'));
            var sign = key.Length <= 3 && (key.All(c => char.IsUpper(c) || char.IsDigit(c) || c is '+' or '-') || titled || least == 1) || !char.IsAscii(key[0]) && !char.IsLetter(key[0]);
            if (!sign || key.All(char.IsDigit) || means.Length == 0) continue;
            var terms = CellTerms.Read(means);
            // "x not done", "O litres"
            if (titled && (terms.Exists(t => t.Is(Sense.Skip)) || terms is [{ } unit] && unit.Is(Sense.Unit, "litre"))) { found.Add(new FamilyWord(key, terms.Exists(t => t.Is(Sense.Skip)) ? "not done" : "oxygen")); continue; }
            // "L lower, R lower": places, no key.
            if (key is "L" or "R" && terms.TrueForAll(t => t.Is(Sense.Area)) && !titled) continue;
            var strength = titled && terms.Exists(t => t.Is(Sense.Medicine) || t.Is(Sense.Device));
            if (!strength && terms.Exists(t => t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Time or TermKind.Range or TermKind.Parts) || !terms.Exists(t => t.NamesEvent || t.Is(Sense.SideArea) || t.Is(Sense.Area) || t.Is(Sense.Side)) || terms.Count(t => t is { Kind: TermKind.Word, Meanings.Length: 0 }) > 2) continue;
            found.Add(new FamilyWord(key, means));
        }
        if (found.Count >= least && found.Count * 2 > entries.Length) words.AddRange(found);
    }

    /// <summary>"percussion both sides, bases (LL) and apices (UL)": the signs for the places just named; not "bases (lower)".</summary>
    public static IEnumerable<FamilyWord> PlacesInBrackets(string line) =>
        line.Contains('(', StringComparison.Ordinal) ? PlaceAndSign().Matches(line).Where(m => CellTerms.Read(m.Groups[1].Value) is [{ } place] && place.Is(Sense.Area)).Select(m => new FamilyWord(m.Groups[2].Value, m.Groups[1].Value)) : [];

    [GeneratedRegex(@"\b(\p{L}{3,}) \(([A-Z]{1,3})\)", RegexOptions.CultureInvariant)]
    private static partial Regex PlaceAndSign();

    private static IEnumerable<string> SignsAndWords(string entry)
    {
        var parts = entry.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return parts.Length >= 4 && parts.Length % 2 == 0 && parts.Where((_, i) => i % 2 == 0).All(p => p.Length <= 2 && char.IsUpper(p[0])) && parts.Where((_, i) => i % 2 == 1).All(p => p.Length > 2)
            ? parts.Chunk(2).Select(p => p[0] + " " + p[1]) : [entry];
    }
}
