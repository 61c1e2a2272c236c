using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// The places of minutes that stand without one in a table ("7.10 3 min"), where the words around it name the part of the chest and say that minutes are of each side:
/// "Minutes are for each side. Lowers only unless it says tops."
/// </summary>
internal static partial class TitlePlaces
{
    /// <summary>Gives the sessions from a position on, whose minutes name no place, both sides of the part that the words around the table name, or both sides alone.</summary>
    public static void Apply(List<CareEntry> entries, int from, IReadOnlyList<string> around)
    {
        var sentences = around.SelectMany(t => t.Split(['.', ';', '\n'])).ToList();
        var area = sentences.Select(OnlyArea).FirstOrDefault(a => a != ChestArea.Unknown, ChestArea.Unknown);
        if (!sentences.Exists(s => EachSide().IsMatch(s))) return;
        for (var i = from; i < entries.Count; i++)
        {
            if (entries[i] is not Session session) continue;
            if (session is { Areas.Count: 0, MinutesWritten: { } all }) entries[i] = session with { Areas = Both(area, Technique.Unknown, all, null), MinutesWritten = null, HowRead = session.HowRead ?? How };
            else if (session.Areas.Any(IsBare)) entries[i] = session with { Areas = [.. session.Areas.SelectMany(a => IsBare(a) ? Both(area, a.Technique, a.Minutes, a.MinutesHigh) : [a])], HowRead = session.HowRead ?? How };
        }
    }

    private const string How = "The places are those that the words above the table name.";

    private static bool IsBare(AreaMinutes area) => area is { Side: Side.Unknown, Area: ChestArea.Unknown, Minutes: not null, Technique: not Technique.Vibration };

    private static AreaMinutes[] Both(ChestArea area, Technique technique, double? minutes, double? high) => [new(Side.Left, area, technique, minutes, high), new(Side.Right, area, technique, minutes, high)];

    // "Lowers only unless it says tops"
    private static ChestArea OnlyArea(string sentence)
    {
        var terms = CellTerms.Read(sentence);
        var only = terms.FindIndex(t => t.Is(Sense.Only) || t.Text is "always");
        return only > 0 && terms.Exists(t => t.Text is "unless" or "except") && !terms.Exists(t => t.Kind is TermKind.Number or TermKind.Time) && terms.Take(only).LastOrDefault(t => t.Is(Sense.Area))?.ValueOf(Sense.Area) is { } area
            ? area switch { "lower" => ChestArea.Lower, "upper" => ChestArea.Upper, _ => ChestArea.Unknown } : ChestArea.Unknown;
    }

    [GeneratedRegex(@"\bmin(?:ute)?s?\b.*\b(?:each|per|a|every|both) sides?\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex EachSide();
}
