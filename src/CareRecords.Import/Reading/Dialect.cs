using System.Collections.Frozen;

namespace CareRecords.Import.Reading;

/// <summary>Small words as they are spoken in Scots and in northern English, and as they are typed in haste, with the standard word for each.</summary>
internal static class Dialect
{
    private static readonly FrozenDictionary<string, string> Standard = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["aff"] = "off",
        ["nae"] = "no",
        ["naw"] = "no",
        ["noo"] = "now",
        ["doon"] = "down",
        ["oot"] = "out",
        ["wi"] = "with",
        ["gied"] = "gave",
        ["gie"] = "give",
        ["efter"] = "after",
        ["afore"] = "before",
        ["didnae"] = "didnt",
        ["wasnae"] = "wasnt",
        ["wisnae"] = "wasnt",
        ["cannae"] = "cant",
        ["couldnae"] = "couldnt",
        ["wouldnae"] = "wouldnt",
        ["hasnae"] = "hasnt",
        ["isnae"] = "isnt",
        ["wasn"] = "wasnt",
        ["didn"] = "didnt",
        ["couldn"] = "couldnt",
        ["befor"] = "before",
        ["aftr"] = "after",
        ["w/out"] = "without",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, string>.AlternateLookup<ReadOnlySpan<char>> Lookup = Standard.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The standard word; null when the word is standard already.</summary>
    public static string? StandardOf(ReadOnlySpan<char> word) => Lookup.TryGetValue(word, out var standard) ? standard : null;
}
