using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using CareRecords.Import.Reading.Keys;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads the explanations that stand around a table: "inhaler = salbutamol", "PT numbers are L base/R base/L top/R top".</summary>
internal static partial class Legends
{
    /// <summary>The words that a line explains; empty when it explains none.</summary>
    public static IReadOnlyList<FamilyWord> Words(string text)
    {
        var words = new List<FamilyWord>();
        foreach (var line in text.Split('\n'))
            if (line.Contains('=')) words.AddRange(KeyReader.Read(line));

        foreach (Match match in IsMedicine().Matches(text))
            // "Blue puffer is the salbutamol.", beside other words "Inhaler is always salbutamol."
            if ((words.Count == 0 || match.Groups[2].Success || match.Index == 0) && Lexicon.Find(match.Groups[1].Value, out _).Any(k => k.Concept == Concept.Inhaler) && Lexicon.Find(match.Groups[3].Value, out _) is [{ Medicine: not null }]) words.Add(new FamilyWord(match.Groups[1].Value.Trim(), match.Groups[3].Value.Trim() + match.Groups[4].Value));
        foreach (Match match in IsAmount().Matches(text))
            // "Albuterol is 4 puffs w/ spacer unless noted."
            if (Lexicon.Find(match.Groups[1].Value, out _).Any(k => k.Medicine is not null)) words.Add(new FamilyWord(match.Groups[1].Value.Trim(), match.Groups[2].Value.Trim()));
        return words;
    }

    [GeneratedRegex(@"(?:^|[.;]\s*)(?:the\s+)?([A-Za-z][A-Za-z ]{2,24}?)\s+(?:is|means|has)\s+(?:(always)\b|the\b|our\b|his\b|her\b|a\b)?\s*([A-Za-z]{5,24})\b(\s+\d+(?:\.\d+)?\s*(?:mg|mcg|puffs?|ml)\b)?", RegexOptions.IgnoreCase)]
    private static partial Regex IsMedicine();

    [GeneratedRegex(@"(?:^|[.;]\s*)(?:the\s+)?([A-Za-z]{5,24})\s+(?:is|always|are|always is)\s+(\d+(?:\.\d+)?\s*(?:puffs?|ml|mg|drops))\b", RegexOptions.IgnoreCase)]
    private static partial Regex IsAmount();

    /// <summary>The parts of the chest that a line names one after another with strokes between, for numbers in the same order; empty when it names none so.</summary>
    public static IReadOnlyList<AreaName> AreaOrder(string text)
    {
        // "… L up / R up.  v = vibes after": the next sentence speaks of something else.
        var order = Sentences().Split(text).Select(Order).FirstOrDefault(o => o.Count > 2) ?? Order(text);
        // "… left lower / right lower / left upper / right upper. All cupping."
        return order.Any(a => a.Technique == Records.Technique.Unknown) && order.All(a => a.Technique is Records.Technique.Unknown or Records.Technique.Percussion) && (AllOneTechnique().IsMatch(text) || OnlyPercussion(text)) ? [.. order.Select(a => a with { Technique = Records.Technique.Percussion })] : order;
    }

    // "Patting with cupped hand. Mins = left bottom + right bottom + …"
    private static bool OnlyPercussion(string text) => Lexicon.Find(text, out _).Select(k => k.Concept).ToHashSet() is var concepts && concepts.Contains(Concept.Percussion) && !concepts.Contains(Concept.Vibration);

    [GeneratedRegex(@"\ball(?: is| are| by)? (?:cupping|clapping|percussion|perc|tapping|patting)\b", RegexOptions.IgnoreCase)]
    private static partial Regex AllOneTechnique();

    private static IReadOnlyList<AreaName> Order(string text)
    {
        // "Mins = left bottom + right bottom + left top + right top"
        var longest = text.Contains('/') || text.Contains(" + ", StringComparison.Ordinal) ? AreaNames.In(text) : [];
        // "cupping minutes L low / R low": the technique before the first is of all.
        if (IsOrder(longest)) return longest[0].Technique != Records.Technique.Unknown && longest.Skip(1).All(a => a.Technique == Records.Technique.Unknown) ? [.. longest.Select(a => a with { Technique = longest[0].Technique })] : longest;
        // "minutes go LL/RL/LU/RU (copied off the fridge)"
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            if (word.Contains('/') && AreaNames.In(word.Trim(',', '.', ';', '(', ')')) is var joined && IsOrder(joined) && joined.All(a => a.Area != Records.ChestArea.Unknown) && joined.Count == word.Count(c => c == '/') + 1) return joined;
        // "mins go: L bottom, R bottom, L top, R top"
        return SaysOrder().Match(text) is { Success: true } order && AreaNames.In(text[(order.Index + order.Length)..]) is var listed && IsOrder(listed) && listed.All(a => a.Area != Records.ChestArea.Unknown) && listed.Count == text[(order.Index + order.Length)..].Split(',').Length ? listed : [];
    }

    [GeneratedRegex(@"(?<=\p{L})\.\s+|\s{2,}|;\s+")]
    private static partial Regex Sentences();

    private static bool IsOrder(IReadOnlyList<AreaName> names) => names.Count >= 2 && names.All(a => a.Side != Records.Side.Unknown);

    [GeneratedRegex(@"\b(?:mins?|minutes|numbers|order)\b[^:]{0,20}:", RegexOptions.IgnoreCase)]
    private static partial Regex SaysOrder();
}
