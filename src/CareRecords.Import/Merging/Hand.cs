using CareRecords.Records;

namespace CareRecords.Import.Merging;

/// <summary>Who wrote an entry and where: one book by one person.</summary>
internal readonly record struct Hand(string File, string? Sheet, string? By)
{
    /// <summary>The hand of an entry.</summary>
    public static Hand Of(CareEntry entry) => new(entry.Sources[0].File, entry.Sources[0].Sheet, entry.By);

    /// <summary>True for two books, or two people who signed in one book.</summary>
    public static bool Differs(CareEntry one, CareEntry other)
    {
        var (a, b) = (Of(one), Of(other));
        if (one.Sources.Any(s => other.Sources.Contains(s))) return false;
        return a.File != b.File || (a.By is not null && b.By is not null && !string.Equals(a.By, b.By, StringComparison.OrdinalIgnoreCase));
    }
}
