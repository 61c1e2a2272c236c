using System.Globalization;
using System.Text.RegularExpressions;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads minutes of two parts behind each side, in the order that the key names: "Rt 4/2, Lt 4/2" with "minutes lower / upper".</summary>
internal static partial class SideNumbers
{
    /// <summary>True for words written so.</summary>
    public static bool Is(string text) => Whole().IsMatch(text.Trim());

    /// <summary>The areas; those of unknown parts where no order is known. Null when the text is written another way.</summary>
    /// <param name="text">The words; what stands behind a further comma or plus sign is left to others.</param>
    /// <param name="explained">Keys, headings and titles that may name the order.</param>
    public static IReadOnlyList<AreaMinutes>? Read(string text, IEnumerable<string> explained)
    {
        if (!Is(text)) return null;
        var order = explained.Select(Order).FirstOrDefault(o => o is not null);
        var areas = new List<AreaMinutes>();
        foreach (Match match in Pair().Matches(text))
        {
            var side = AreaNames.In(match.Groups[1].Value) is [{ Side: not Side.Unknown and var named }] ? named : Side.Unknown;
            for (var i = 0; i < 2; i++)
                if (double.TryParse(match.Groups[i + 2].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var minutes))
                    areas.Add(new AreaMinutes(side, order is var (first, second) ? i == 0 ? first : second : ChestArea.Unknown, Technique.Unknown, minutes));
        }

        return areas;
    }

    /// <summary>True where one of the texts names the order.</summary>
    public static bool IsExplained(IEnumerable<string> explained) => explained.Any(t => Order(t) is not null);

    private static (ChestArea First, ChestArea Second)? Order(string text)
    {
        var found = Names().Match(text);
        if (!found.Success) return null;
        return AreaNames.In(found.Groups[1].Value) is [{ Area: not ChestArea.Unknown and var first }] && AreaNames.In(found.Groups[2].Value) is [{ Area: not ChestArea.Unknown and var second }] && first != second ? (first, second) : null;
    }

    [GeneratedRegex(@"^(?:[A-Za-z]{1,6}\.?\s*\d+(?:\.\d+)?\s*[/\\]\s*(?:\d+(?:\.\d+)?|-|x)\s*[,;&+]?\s*){1,2}$", RegexOptions.IgnoreCase)]
    private static partial Regex Whole();

    [GeneratedRegex(@"([A-Za-z]{1,6})\.?\s*(\d+(?:\.\d+)?|-)\s*[/\\]\s*(\d+(?:\.\d+)?|-|x)", RegexOptions.IgnoreCase)]
    private static partial Regex Pair();

    [GeneratedRegex(@"\b([A-Za-z]+)\s*[/\\]\s*([A-Za-z]+)\b")]
    private static partial Regex Names();
}
