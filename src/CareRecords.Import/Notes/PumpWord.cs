using System.Text.RegularExpressions;
using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>Whether a family's "pump" is its inhaler: some call it the asthma pump, and their feed runs on a machine.</summary>
internal static partial class PumpWord
{
    private const int MostLines = 2_000;

    /// <summary>
    /// What "pump" stands for where the notes name an asthma pump, count its puffs or say what it holds, and tell of no pump that is turned on or off, or that gives millilitres; null elsewhere.
    /// </summary>
    public static string? Inhaler(IReadOnlyList<string> lines)
    {
        if (!lines.Take(MostLines).Any(l => Asthma().IsMatch(l)) || lines.Take(MostLines).Any(l => OfFeed().IsMatch(l))) return null;
        // "Pump is the blue one, salbutamol."
        foreach (var line in lines.Take(MostLines))
            if (Holds().Match(line) is { Success: true } said && CellTerms.Read(said.Groups[1].Value).Find(t => t.Is(Sense.Medicine)) is { } medicine) return medicine.Text;
        return "asthma pump";
    }

    [GeneratedRegex(@"\bpump (?:is|=|means|has) ([^.;]{0,40})", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Holds();

    [GeneratedRegex(@"\b(asthma|blue|puffer|reliever) pump\b|\bpump (is the blue|\d{1,2} puffs)|\bpuffs of (the |his |her )?pump\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Asthma();

    [GeneratedRegex(@"\b(feed|feeding|milk|night|tube|peg) pump\b|\bpump (feed|on|off|stopped|finished|running|started)\b|\b(on|off) (the )?pump\b|\bpump\b[^.]{0,20}\d ?ml", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OfFeed();
}
