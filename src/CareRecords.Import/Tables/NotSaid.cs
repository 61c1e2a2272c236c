namespace CareRecords.Import.Tables;

/// <summary>Marks that families put into a cell to show that it was left empty on purpose.</summary>
internal static class NotSaid
{
    private static readonly HashSet<string> Marks =
        new(["-", "--", "---", "–", "—", "?", ".", "/", "x", "n/a", "na", "not done", "not taken", "forgot", "n.a.", "not recorded", "not checked", "no reading", "nil", "none", "not measured", "not read", "missing", "blank", "unknown", "nr", "n/r", "didn't check", "didnt check", "not given"], StringComparer.OrdinalIgnoreCase);

    /// <summary>True for a dash, "n/a", "forgot" and their like.</summary>
    public static bool Is(string text) => Marks.Contains(text);
}
