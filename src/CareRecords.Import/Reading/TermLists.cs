namespace CareRecords.Import.Reading;

/// <summary>What several terms say together.</summary>
internal static class TermLists
{
    /// <summary>Whether one of them carries the sense.</summary>
    public static bool Carry(this List<Term> terms, Sense sense)
    {
        foreach (var term in terms)
            if (term.Is(sense)) return true;
        return false;
    }
}
