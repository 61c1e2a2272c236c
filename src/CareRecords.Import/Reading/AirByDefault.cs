using System.Text.RegularExpressions;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Reading;

/// <summary>Reads what a family says once for all of its saturations: "sats all in room air", "SpO2 taken without oxygen", "on air unless O2 written"; and a heading "SpO2 after (RA)".</summary>
internal static partial class AirByDefault
{
    /// <summary>True for words that say it of every saturation, and tell of no reading.</summary>
    public static bool Says(string text) => !Reading().IsMatch(text) && (Unless().IsMatch(text) && OfSaturation().IsMatch(text) || OfAll().IsMatch(text) || AllOf().IsMatch(text) || OfSaturation().IsMatch(text) && NoFlow().IsMatch(text));

    /// <summary>True for the heading of saturations that are all in air.</summary>
    public static bool HeadingSays(string heading) => InAir().IsMatch(heading) && !Flow().IsMatch(heading);

    /// <summary>Whether the oxygen that was turned to some flow may still run at a time: for a day after it was turned on, and nothing says off, nobody knows what a reading without a flow was taken on.</summary>
    /// <param name="turned">The last change of the oxygen; null when there was none.</param>
    /// <param name="at">The time of the reading.</param>
    public static bool MayBeOnOxygen(Check? turned, LocalDateTime at) =>
        turned is { OxygenLitresPerMinute: > 0, When.Stated: var since } && Period.Between(since, at, PeriodUnits.Hours).Hours is >= 0 and < HoursOfOxygen;

    // Chosen by CareRecords: the next day's notes begin anew.
    private const int HoursOfOxygen = 24;

    private const string Air = @"(?:\b(?:room air|(?:in|on|at) air|without (?:any )?(?:o2|oxygen)|no (?:o2|oxygen))\b|\bRA\b)";
    private const string Saturation = @"\b(?i:sats?|s[pa]o2|saturations?|oximeter|readings?)\b";

    [GeneratedRegex(@"\b(?:sats?|s[pa]o2|sp|saturations?|oximeter|readings?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OfSaturation();

    [GeneratedRegex(Air, RegexOptions.CultureInvariant)]
    private static partial Regex InAir();

    // "air unless said", "room air unless O2 written"
    [GeneratedRegex(@"\b(?:air|RA)\b\W{0,3}(?:unless|if not|except)\b", RegexOptions.CultureInvariant)]
    private static partial Regex Unless();

    // "Sats: litres of oxygen in brackets, no brackets = on air"
    [GeneratedRegex(@"\b(?:no|without|nothing in) (?:brackets?|number|figure|litres?|flow)\b[^.;]{0,12}\b(?:air|RA)\b|\bblank\b[^.;]{0,6}\b(?:on air|in air|room air|RA)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex NoFlow();

    // "SpO2 all taken without oxygen"
    [GeneratedRegex(Saturation + @"[^.;/=]{0,20}\b(?i:all|always|taken|are)\b[^.;/=]{0,30}" + Air, RegexOptions.CultureInvariant)]
    private static partial Regex OfAll();

    // "all sats in air"
    [GeneratedRegex(@"\b(?i:all|every)\b[^.;/=]{0,20}" + Saturation + @"[^.;/=]{0,30}" + Air, RegexOptions.CultureInvariant)]
    private static partial Regex AllOf();

    // "sats all morning 94 in air" is a reading.
    [GeneratedRegex(@"\b[6-9]\d\b|\b100\b", RegexOptions.CultureInvariant)]
    private static partial Regex Reading();

    [GeneratedRegex(@"\b(?:l/min|lpm|litres?|liters?|flow)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Flow();
}
