namespace CareRecords.Import.Tables;

/// <summary>Marks that families put into a cell to show that it was left empty on purpose.</summary>
internal static class NotSaid
{
    private static readonly HashSet<string> Marks =
        new(["-", "--", "---", "–", "—", "?", ".", "/", "x", "n/a", "na", "not done", "not taken", "forgot", "n.a.", "not recorded", "not checked", "no reading", "nil", "none", "not measured", "not read", "missing", "blank", "unknown", "nr", "n/r", "didn't check", "didnt check", "not given"], StringComparer.OrdinalIgnoreCase);

    private static readonly HashSet<string> NotDone = new(["not done", "not taken", "forgot", "not given", "missed", "skipped", "omitted", "withheld"], StringComparer.OrdinalIgnoreCase);

    /// <summary>True where such words say that it did not take place, not only that nothing was written.</summary>
    public static bool SaysNotDone(string text) => NotDone.Contains(text.Trim().TrimEnd('.'));

    /// <summary>True for a dash, "n/a", "forgot" and their like.</summary>
    public static bool Is(string text) => Marks.Contains(text) || (text.Length > 3 && Marks.Contains(text.TrimEnd('!', '.', '?', ' ')));
}
