using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// What two numbers with a stroke between are, where a key beside the table gives an example: "4/3 = 4 mins each side on the bases, 3 mins each side on the tops" is so for "3/2" too.
/// </summary>
internal static partial class PairExamples
{
    /// <summary>The parts of the chest in the order of the numbers, each on both sides; empty where no line explains it.</summary>
    public static IReadOnlyList<AreaName> Of(IReadOnlyList<string> lines) => lines.Select(Explained).FirstOrDefault(o => o.Count > 0) ?? [];

    /// <summary>The areas of a pair of numbers, and the words that follow it; null when the text is no such pair.</summary>
    public static (IReadOnlyList<AreaMinutes> Areas, string Behind)? Read(string text, IReadOnlyList<AreaName> order, Action<string> refuse)
    {
        if (order.Count == 0 || Pair().Match(text) is not { Success: true } pair || AreaNumbers.Read(pair.Value, order, refuse, eachSide: true) is not { Count: > 0 } areas) return null;
        return (areas, text[pair.Length..].Trim(' ', ',', ';', '+'));
    }

    private static IReadOnlyList<AreaName> Explained(string text)
    {
        if (Example().Match(text) is not { Success: true } match) return [];
        var (first, second) = (double.Parse(match.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture), double.Parse(match.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture));
        var areas = AreaGrammar.Read(CellTerms.Read(match.Groups[3].Value)).Areas;
        if (first == second || areas.Count != 4 || !areas.TrueForAll(a => a.Side is Side.Left or Side.Right && a.Area is ChestArea.Lower or ChestArea.Upper)) return [];
        var (ofFirst, ofSecond) = (areas.FindAll(a => a.Minutes == first), areas.FindAll(a => a.Minutes == second));
        return ofFirst is [var one, _] && ofSecond is [var other, _] && ofFirst.TrueForAll(a => a.Area == one.Area) && ofSecond.TrueForAll(a => a.Area == other.Area)
            ? [.. ofFirst.Concat(ofSecond).Select(a => new AreaName(a.Side, a.Area, a.Technique))] : [];
    }

    [GeneratedRegex(@"^\s*(?:mins?:? )?(\d{1,2})\s*/\s*(\d{1,2})\s*=\s*(.+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Example();

    [GeneratedRegex(@"^\s*(?:\d{1,2}(?:[.,]5|½)?|-)\s*/\s*(?:\d{1,2}(?:[.,]5|½)?|-)(?![\d/])", RegexOptions.CultureInvariant)]
    private static partial Regex Pair();
}
