using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>The technique, and the places, of all sessions of a table, where a title or key says it: "Mins are clapping: L lower / R lower", "bottoms / tops = minutes clapping on EACH side", "all cupping".</summary>
internal static partial class TitleTechnique
{
    /// <summary>Whether the words around a table say that its minutes are of percussion, and speak of no other technique in one sentence.</summary>
    public static bool SaysPercussion(IEnumerable<string> around) => around.SelectMany(t => SentenceEnd().Split(t)).Any(s => IsOfAllMinutes(s) || IsTitle(s));

    /// <summary>The four places, where the words around a table say that its sessions are of all of them ("chest is clapping on all four areas"); empty otherwise.</summary>
    public static IReadOnlyList<AreaName> AllPlaces(IEnumerable<string> around)
    {
        var sentences = around.SelectMany(t => SentenceEnd().Split(t)).ToList();
        foreach (var sentence in sentences)
        {
            if (!OnAll().IsMatch(sentence)) continue;
            var concepts = ConceptsOf(sentence);
            // "Same 4 spots every time: bottom R, bottom L, top R, top L. Cupped hand": what was done there stands beside it.
            var named = AreaNames.In(sentence).Count(a => a is { Side: not Side.Unknown, Area: not ChestArea.Unknown }) == FourPlaces;
            if (!named && !concepts.Overlaps([Concept.Session, Concept.Percussion])) continue;
            if (named && !concepts.Contains(Concept.Percussion)) concepts = [.. sentences.SelectMany(ConceptsOf)];
            var technique = concepts.Contains(Concept.Percussion) && !concepts.Contains(Concept.Vibration) ? Technique.Percussion : Technique.Unknown;
            return [new(Side.Left, ChestArea.Lower, technique), new(Side.Right, ChestArea.Lower, technique), new(Side.Left, ChestArea.Upper, technique), new(Side.Right, ChestArea.Upper, technique)];
        }

        return [];
    }

    private const int FourPlaces = 4;

    private static HashSet<Concept> ConceptsOf(string sentence) => [.. Lexicon.Find(sentence, out _).Select(k => k.Concept)];

    /// <summary>Whether they say that the minutes of vibration are on each place that was treated: "Shakes = vibration, minutes per area on the same areas".</summary>
    public static bool SaysShakesEachPlace(IEnumerable<string> around) => around.SelectMany(t => SentenceEnd().Split(t)).Any(s => SessionCells.SaysEachPlace(s) && ConceptsOf(s) is var concepts && concepts.Contains(Concept.Vibration) && !concepts.Contains(Concept.Percussion));

    /// <summary>Whether a key says that minutes are on each of the four places: "Mins = patting, that many on each of the 4 spots".</summary>
    public static bool SaysMinutesEachPlace(IReadOnlyList<string> around) =>
        around.SelectMany(t => SentenceEnd().Split(t)).Any(s => s.Split('=') is [var term, var means] && Lexicon.Find(term, out _) is [{ Concept: Concept.Minutes }] && means.Contains("each", StringComparison.OrdinalIgnoreCase)) && AllPlaces(around).Count > 0;

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:all|each of|same|these|in)(?: the)? (?:4|four) (?:areas|places|spots|zones|lobes|parts)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex OnAll();

    /// <summary>Gives the areas of the sessions from a position on, whose technique is not said, percussion.</summary>
    public static void Apply(List<CareEntry> entries, int from)
    {
        for (var i = from; i < entries.Count; i++)
            if (entries[i] is Session session && session.Areas.Any(IsOpen)) entries[i] = session with { Areas = [.. session.Areas.Select(a => IsOpen(a) ? a with { Technique = Technique.Percussion } : a)] };
    }

    private static bool IsOpen(AreaMinutes area) => area.Technique == Technique.Unknown && (area.Area != ChestArea.Unknown || area.Side != Side.Unknown);

    // "Chest clapping - January 2025": what the table is of.
    private static bool IsTitle(string sentence) => Lexicon.Split(sentence) is { Count: > 1 and <= 6 } words && ConceptsOf(sentence) is var concepts && concepts.Contains(Concept.Percussion) && !concepts.Contains(Concept.Vibration)
        && (words.Any(w => CellTerms.Read(w) is [{ } one] && one.Is(Sense.Month)) || words.Any(w => w is "chart" or "record" or "log" or "diary" or "book" or "sheet")) && !sentence.Contains('=', StringComparison.Ordinal);

    private static bool IsOfAllMinutes(string sentence)
    {
        // "Clapping unless it says vib", "chest is always clapping unless it says shakes".
        if (sentence.IndexOf(" unless ", StringComparison.OrdinalIgnoreCase) is > 0 and var unless) sentence = sentence[..unless] + " all";
        var concepts = ConceptsOf(sentence);
        return concepts.Contains(Concept.Percussion) && !concepts.Contains(Concept.Vibration) && (concepts.Contains(Concept.Minutes) || Lexicon.Split(sentence).Contains("all"));
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"[.;\n]\s")]
    private static partial System.Text.RegularExpressions.Regex SentenceEnd();
}
