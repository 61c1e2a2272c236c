using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>A family's one device: where "blue puffer" is explained and no other puffer is, "puffer" alone is that one.</summary>
internal static class Devices
{
    /// <summary>The names of devices without their colour, where they can mean only one medicine.</summary>
    public static IEnumerable<FamilyWord> Alone(IReadOnlyList<FamilyWord> words)
    {
        var named = words.Select(w => (Word: w, Noun: NounOf(w.Word))).Where(n => n.Noun is not null && CellTerms.Read(n.Word.Means).Exists(t => t.Is(Sense.Medicine))).ToList();
        return named.GroupBy(n => n.Noun!, StringComparer.OrdinalIgnoreCase).Where(g => g.Select(n => n.Word.Means).Distinct().Count() == 1 && !words.Any(w => w.Word.Equals(g.Key, StringComparison.OrdinalIgnoreCase)))
            .Select(g => new FamilyWord(g.Key, g.First().Word.Means));
    }

    private static string? NounOf(string word) => word.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [_, var noun] && CellTerms.Read(noun) is [{ } term] && term.Is(Sense.Device) ? noun : null;
}
