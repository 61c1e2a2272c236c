using System.Globalization;
using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads minutes by technique under the heading of a side or part: "P3 V1", "clap 3, vib 1".</summary>
internal static partial class TechniqueNumbers
{
    /// <summary>The minutes for each of the parts; null when the cell is written another way. A letter alone needs the family's key, or is p or c, v or s.</summary>
    /// <param name="text">The cell's words.</param>
    /// <param name="parts">What its heading names.</param>
    /// <param name="words">The family's words.</param>
    /// <param name="hasUpper">True where the column tells lower from upper by letters: then "L" is the lower part, not the left side.</param>
    public static IReadOnlyList<AreaMinutes>? Read(string text, IReadOnlyList<AreaName> parts, FamilyWords words, bool hasUpper)
    {
        if (parts.Count == 0 || !text.Any(char.IsLetter) || !Whole().IsMatch(text.Trim())) return null;
        var areas = new List<AreaMinutes>();
        foreach (Match match in Pair().Matches(text))
        {
            var minutes = double.Parse(match.Groups[2].ValueSpan, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
            if (hasUpper && AreaOf(match.Groups[1].Value) is { } area)
            {
                areas.AddRange(parts.Select(p => new AreaMinutes(p.Side, area, p.Technique, minutes)));
                continue;
            }

            if (TechniqueOf(match.Groups[1].Value, words) is not { } technique) return null;
            areas.AddRange(parts.Select(p => new AreaMinutes(p.Side, technique == Technique.Vibration ? ChestArea.Unknown : p.Area, technique, minutes)));
        }

        return areas.Count == 0 ? null : areas;
    }

    private static ChestArea? AreaOf(string word) => word.ToLowerInvariant() switch
    {
        "l" or "lo" or "low" or "lower" or "b" or "base" or "bottom" => ChestArea.Lower,
        "u" or "up" or "upper" or "t" or "top" or "apex" => ChestArea.Upper,
        "m" or "mid" or "middle" => ChestArea.Middle,
        _ => null,
    };

    /// <summary>True for a cell that names the upper part by a letter or word before its minutes.</summary>
    public static bool NamesUpper(string text) => text.Length < 40 && Whole().IsMatch(text.Trim()) && Pair().Matches(text).Any(m => AreaOf(m.Groups[1].Value) == ChestArea.Upper);

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
