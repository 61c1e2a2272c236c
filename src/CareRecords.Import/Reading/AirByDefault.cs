using System.Text.RegularExpressions;

namespace CareRecords.Import.Reading;

/// <summary>Reads what a family says once for all of its saturations: "sats all in room air", "SpO2 taken without oxygen", "on air unless O2 written"; and a heading "SpO2 after (RA)".</summary>
internal static partial class AirByDefault
{
    /// <summary>True for words that say it of every saturation, and tell of no reading.</summary>
    public static bool Says(string text) => OfSaturation().IsMatch(text) && InAir().IsMatch(text) && OfAll().IsMatch(text) && !Reading().IsMatch(text);

    /// <summary>True for the heading of saturations that are all in air.</summary>
    public static bool HeadingSays(string heading) => InAir().IsMatch(heading) && !Oxygen().IsMatch(WithoutAir(heading));

    private static string WithoutAir(string heading) => InAir().Replace(heading, "");

    [GeneratedRegex(@"\b(?:sats?|s[pa]o2|sp|saturations?|oximeter|readings?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OfSaturation();

    [GeneratedRegex(@"\b(?:room air|(?:in|on|at) air|air unless|without (?:any )?(?:o2|oxygen)|no (?:o2|oxygen))\b|\bRA\b", RegexOptions.CultureInvariant)]
    private static partial Regex InAir();

    [GeneratedRegex(@"\b(?:all|always|every|each|unless|otherwise|taken|are)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OfAll();

    // "sats all morning 94 in air" is a reading.
    [GeneratedRegex(@"\b[6-9]\d\b|\b100\b", RegexOptions.CultureInvariant)]
    private static partial Regex Reading();

    [GeneratedRegex(@"\b(?:l/min|lpm|litres?|liters?|flow)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Oxygen();
}
