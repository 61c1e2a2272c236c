using CareRecords.Records;

namespace CareRecords.Import.Merging;

/// <summary>Puts entries in order of time; those of the same minute stay in the order in which they were written.</summary>
internal static class ByTime
{
    /// <summary>The entries in order. A list already in order, as most logs are, is only walked once.</summary>
    public static IReadOnlyList<CareEntry> Sort(IReadOnlyList<CareEntry> entries)
    {
        for (var i = 1; i < entries.Count; i++)
            if (entries[i].When.Stated < entries[i - 1].When.Stated)
                return [.. entries.OrderBy(e => e.When.Stated)];
        return entries;
    }
}
