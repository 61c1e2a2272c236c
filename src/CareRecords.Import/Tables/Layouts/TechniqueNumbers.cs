using System.Globalization;
using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads minutes by technique under the heading of a side or part: "P3 V1", "clap 3, vib 1".</summary>
internal static partial class TechniqueNumbers
{
    /// <summary>The minutes for each of the parts; null when the cell is written another way. A letter alone needs the family's key, or is p or c, v or s.</summary>
    public static IReadOnlyList<AreaMinutes>? Read(string text, IReadOnlyList<AreaName> parts, FamilyWords words)
    {
        if (parts.Count == 0 || !text.Any(char.IsLetter) || !Whole().IsMatch(text.Trim())) return null;
        var areas = new List<AreaMinutes>();
        foreach (Match match in Pair().Matches(text))
        {
            if (TechniqueOf(match.Groups[1].Value, words) is not { } technique) return null;
            var minutes = double.Parse(match.Groups[2].ValueSpan, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
            areas.AddRange(parts.Select(p => new AreaMinutes(p.Side, technique == Technique.Vibration ? ChestArea.Unknown : p.Area, technique, minutes)));
        }

        return areas.Count == 0 ? null : areas;
    }

    private static Technique? TechniqueOf(string word, FamilyWords words)
    {
        var known = Lexicon.Find(words.MeaningOf(word) ?? word, out _).Select(k => k.Concept).ToHashSet();
        if (known.Contains(Concept.Vibration)) return Technique.Vibration;
        if (known.Contains(Concept.Percussion)) return Technique.Percussion;
        return word.ToLowerInvariant() switch { "p" or "c" => Technique.Percussion, "v" or "s" => Technique.Vibration, _ => null };
    }

    [GeneratedRegex(@"^(?:[A-Za-z]+\.?\s*[:=]?\s*\d{1,2}(?:\.\d)?\s*(?:min|mins|m)?[\s,;/+]*)+$", RegexOptions.IgnoreCase)]
    private static partial Regex Whole();

    [GeneratedRegex(@"([A-Za-z]+)\.?\s*[:=]?\s*(\d{1,2}(?:\.\d)?)\s*(?:(?:mins?|m)\b)?")]
    private static partial Regex Pair();
}
