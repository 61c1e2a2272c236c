using System.Text.RegularExpressions;

namespace CareRecords.Import.Reading.Keys;

/// <summary>What a word of a key stands for, once it is cut from its meaning; readings ("0605 1L = 94") and units ("O2 = litres") explain nothing.</summary>
internal static partial class KeyMeanings
{
    /// <summary>Longest word that a family explains, characters.</summary>
    public const int LongestWord = 30;

    /// <summary>Adds the words that <paramref name="key"/> and <paramref name="means"/> explain.</summary>
    public static void Add(string key, string means, List<FamilyWord> words)
    {
        // "Physio here means percussion …", "CPT in this log = …"
        foreach (var place in (string[])[" here", " in this log", " in this book", " in these notes"])
            if (key.TrimEnd().EndsWith(place, StringComparison.OrdinalIgnoreCase)) key = key.TrimEnd()[..^place.Length];
        // "P a/b/c/d = percussion minutes", "S x/y = SpO2 before/after": the letters stand for numbers.
        if (Placeholders().Match(key.Trim()) is { Success: true } form) key = form.Groups[1].Value;
        // "SpO2 x/y = before CPT / after CPT": what two numbers are (PairMeanings keeps it), no other word for a saturation.
        if (CellTerms.Read(key) is [{ } label] && label.Is(Sense.SatLabel) && CellTerms.Read(means) is var phases && phases.Exists(t => t.Is(Sense.Before)) && phases.Exists(t => t.Is(Sense.After))) return;
        // "The usual for anyone new (Ann!!)": what stands in brackets explains nothing.
        if (key.IndexOf('(', StringComparison.Ordinal) is > 0 and var bracket && key.Contains(')', StringComparison.Ordinal)) key = key[..bracket];
        if (SignPairs.Read(key, means) is { } signs) { words.AddRange(signs); return; }
        // "and "full set" = …": the word stands in quotation marks.
        if (key.IndexOf('"', StringComparison.Ordinal) is >= 0 and var quote && key.IndexOf('"', quote + 1) is > 0 and var closing && closing > quote + 1) key = key[(quote + 1)..closing];
        if (means.IndexOf(". ", StringComparison.Ordinal) is var stop && stop > 0) means = means[..stop];
        // "chest I mean clapping with my cupped hand like the physio showed us": who taught it says nothing of what it is.
        if (AsTaught().Match(means) is { Success: true } taught && taught.Index > 0) means = means[..taught.Index];
        // "C = clapping, minutes under the place: LL left lower, …": what the figures of a column are.
        if (FiguresUnder().Match(means) is { Success: true } figures) means = means[..figures.Index];
        // "NC = nasal cannula, L/min": the unit of its numbers.
        if (UnitBehind().Match(means) is { Success: true, Index: > 2 } unit) means = means[..unit.Index];
        means = means.Trim().Trim(',', ';', '.', ' ', '-', ')');
        key = key.Trim().Trim('"', '\'', '“', '”', '-', '*', '•', ' ', '#', '(');
        if (key.Length is 0 or > LongestWord || means.Length == 0) return;
        // "n neb = 2.5 mg salbutamol": a sign, its word, and what that is.
        if (key.IndexOf(' ', StringComparison.Ordinal) is > 0 and <= 2 and var gap && CellTerms.Read(key[(gap + 1)..]).Exists(t => t.NamesEvent)) (key, means) = (key[..gap], $"{key[(gap + 1)..]} {means}");
        // "0605 1L = 94", "changed toe = 95" are readings, not explanations.
        if (char.IsAsciiDigit(means[0]) && !means.Any(char.IsLetter)) return;
        if (Leading(means) is >= 50 and <= 100) return;
        if (!key.Any(char.IsLetter) && !IsOneSign(key) || !means.Any(char.IsLetter)) return;
        if (char.IsAsciiDigit(key[0]) && means.Any(char.IsAsciiDigit) && !Explains(key, means)) return;
        // "salb = 4 puffs 7.30" tells of a dose.
        if (means.Any(char.IsAsciiDigit) && CellTerms.Read(means).Exists(t => t.Kind == TermKind.Time)) return;
        // "Albuterol = 2 puffs with spacer": how much of it, not another word for it (Arrangements keeps the amount).
        if (CellTerms.Read(key) is [{ } medicine] && medicine.Is(Sense.Medicine) && !CellTerms.Read(means).Exists(t => t.Is(Sense.Medicine))) { words.Add(new FamilyWord(key, key)); return; }
        // "S4 = salbutamol 4 puffs": with another number the letter means the same.
        if (CodeWithNumber().Match(key) is { Success: true } code && CellTerms.Read(means).Exists(t => t.Kind == TermKind.Quantity && t.Number == int.Parse(code.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) && t.Unit is Unit.Puffs or Unit.Min or Unit.Ml))
            words.Add(new FamilyWord(code.Groups[1].Value, string.Join(' ', CellTerms.Read(means).Where(t => t.NamesEvent).Select(t => means[t.Start..t.End]))));
        // "Ox 0.5 = litres": the number is an example.
        if (CellTerms.Read(key) is [{ Kind: TermKind.Word } flow, { Kind: TermKind.Number, IsWhole: false }] && CellTerms.Read(means) is [{ } litres] && litres.Is(Sense.Unit, "litre")) { words.Add(new FamilyWord(key[flow.Start..flow.End], "oxygen")); return; }
        means = OfOneTechnique(WithoutSynonym(OfOnePlace(SideAndArea(means))));
        // "O2 = litres": the unit of its numbers; the word keeps its meaning.
        if (CellTerms.Read(key) is [{ } measured] && (measured.Is(Sense.OxygenLabel) || measured.Is(Sense.SatLabel) || measured.Is(Sense.Pump)) && CellTerms.Read(means).TrueForAll(t => t.Is(Sense.Unit) || t.Is(Sense.Per))) return;
        // "perc = mins per lobe": what its numbers count; the word keeps its meaning.
        if (CellTerms.Read(key) is [{ } technique] && technique.Is(Sense.Technique) && CellTerms.Read(means) is [{ } counted, ..] told && counted.Is(Sense.Unit, "min") && !told.Exists(t => t.Is(Sense.Technique) || t.NamesEvent)) return;
        if (key.Contains('/')) words.AddRange(SignPairs.Parted(key, means));
        else if (SessionNames.UsualWord(key) is { } usual) words.Add(new FamilyWord(usual, means));
        else
        {
            words.Add(new FamilyWord(key, means));
            // "Neb time = salbutamol 2.5 mg": of the device.
            if (CellTerms.Read(key) is [{ } device, { Text: "time" or "times" }] && device.Is(Sense.Device)) words.Add(new FamilyWord(key[device.Start..device.End], means));
            // "Full physio = …" is later written "full" alone.
            if (CellTerms.Read(key) is [{ Kind: TermKind.Word, Text.Length: > 2 } word, { } session] && session.Is(Sense.Session) && !word.NamesEvent && !word.Is(Sense.DayPart) && !word.Is(Sense.Side) && !word.Is(Sense.Area)) words.Add(new FamilyWord(key[word.Start..word.End], means));
        }
    }

    [GeneratedRegex(@"[,\s]+(?:exactly |just )?(?:like|as|the way|how|that) (?:the |our |his |her )?\p{L}+(?: \p{L}+)? (?:has |have |had )?(?:showed?|shown|taught|teaches|told|set|said|asked) (?:me|us|him|her|you)\b.*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex AsTaught();

    [GeneratedRegex(@",\s*(?:in |all )?(?:l/min|lpm|l per min|litres?(?: (?:a|per) min(?:ute)?)?|liters?(?: (?:a|per) min(?:ute)?)?|deg(?:rees)?\.? ?[cf]|°[cf])\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex UnitBehind();

    [GeneratedRegex(@"[,;(] ?(?:the )?(?:min(?:ute)?s|numbers?|figures?) (?:under|below|in|go under|stand under|are under)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex FiguresUnder();

    // "♥", "🍼": one sign, of however many code units.
    private static bool IsOneSign(string key) => !char.IsAsciiDigit(key[0]) && System.Globalization.StringInfo.GetNextTextElementLength(key) == key.Length;

    [GeneratedRegex(@"^(\w{1,4}) [a-z](?:/[a-z])+$", RegexOptions.CultureInvariant)]
    private static partial Regex Placeholders();

    [GeneratedRegex(@"^([A-Za-z]{1,2})(\d{1,2})$", RegexOptions.CultureInvariant)]
    private static partial Regex CodeWithNumber();

    // "right lower, LU and RU the tops": the place; what follows the comma explains other words.
    private static string OfOnePlace(string means) => means.IndexOf(',', StringComparison.Ordinal) is > 0 and var comma && CellTerms.Read(means[..comma]) is { Count: 1 or 2 } place && place.TrueForAll(t => t.Is(Sense.SideArea) || t.Is(Sense.Side) || t.Is(Sense.Area))
        && CellTerms.Read(means[(comma + 1)..]) is [{ } next, .., { } before, { } last] && next.Is(Sense.SideArea) && last.Is(Sense.Area) && (before.Text == "the" || last.Text.StartsWith("the ", StringComparison.Ordinal)) ? means[..comma] : means;

    // "left (bottoms), all clapping": the side and its area, one place.
    private static string SideAndArea(string means) => SideThenArea().Match(means) is { Success: true } place && CellTerms.Read(place.Groups[2].Value) is [{ } area] && area.Is(Sense.Area) ? $"{place.Groups[1].Value} {area.Text}" : means;

    [GeneratedRegex(@"^(left|right) \((\w+)\)?(?:,|$)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SideThenArea();

    // "bases (lower)", "tops (upper), both sides, mins each side": the area once, and of both sides where the key says so.
    private static string WithoutSynonym(string means)
    {
        if (AreaTwice().Match(means) is not { Success: true } twice || CellTerms.Read(twice.Groups[1].Value) is not [{ } one] || CellTerms.Read(twice.Groups[2].Value) is not [{ } other] || one.ValueOf(Sense.Area) is not { } area || other.ValueOf(Sense.Area) != area) return means;
        return twice.Groups[3].Success ? "both " + twice.Groups[1].Value : twice.Groups[1].Value;
    }

    [GeneratedRegex(@"^(\w+) \((\w+)\)?(?:(, both sides)\b.*)?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex AreaTwice();

    // "percussion, vib written separately": one technique; what follows the comma speaks of another.
    private static string OfOneTechnique(string means)
    {
        var terms = CellTerms.Read(means);
        var comma = terms.FindIndex(t => t.IsSymbol(","));
        return comma > 0 && !terms.Exists(t => t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Parts) && terms.Take(comma).All(t => t.Is(Sense.Technique)) && terms.Skip(comma).Any(t => t.Is(Sense.Technique)) && terms.Skip(comma).Any(t => t is { Kind: TermKind.Word, Meanings.Length: 0 })
            ? means[..terms[comma].Start] : means;
    }

    // "2.5 each = 2½ min left lower and right lower": the key's number returns with its unit beside areas; "0605 1L = 94 on 2" has neither.
    private static bool Explains(string key, string means)
    {
        var terms = CellTerms.Read(means);
        return terms.Exists(t => t.Is(Sense.Area) || t.Is(Sense.SideArea) || t.Is(Sense.Technique)) && terms.Exists(t => t is { Kind: TermKind.Quantity, Unit: Unit.Min })
            && key.Any(char.IsLetter) && !CellTerms.Read(key).Exists(t => t.Kind == TermKind.Time);
    }

    private static int Leading(string means)
    {
        var digits = means.AsSpan()[..means.AsSpan().IndexOfAnyExceptInRange('0', '9')];
        return digits.Length is > 0 and <= 3 ? int.Parse(digits, System.Globalization.CultureInfo.InvariantCulture) : 0;
    }
}
