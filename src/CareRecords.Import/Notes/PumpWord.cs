using System.Text.RegularExpressions;

namespace CareRecords.Import.Notes;

/// <summary>Whether a family's "pump" is its inhaler: some call it the asthma pump, and their feed runs on a machine.</summary>
internal static partial class PumpWord
{
    private const int MostLines = 2_000;

    /// <summary>True where the notes name an asthma pump and tell of no pump that is turned on or off, or that gives millilitres.</summary>
    public static bool IsInhaler(IReadOnlyList<string> lines) => lines.Take(MostLines).Any(l => Asthma().IsMatch(l)) && !lines.Take(MostLines).Any(l => OfFeed().IsMatch(l));

    [GeneratedRegex(@"\b(asthma|blue|puffer|reliever) pump\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Asthma();

    [GeneratedRegex(@"\b(feed|feeding|milk|night|tube|peg) pump\b|\bpump (feed|on|off|stopped|finished|running|started)\b|\b(on|off) (the )?pump\b|\bpump\b[^.]{0,20}\d ?ml", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OfFeed();
}
