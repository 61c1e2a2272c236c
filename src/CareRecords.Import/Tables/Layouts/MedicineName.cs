namespace CareRecords.Import.Tables.Layouts;

/// <summary>Takes the name of a medicine out of a heading: "Blue inhaler (am)" is about "blue inhaler".</summary>
internal static class MedicineName
{
    private static readonly HashSet<string> Fillers = new(["y", "n", "given", "time", "times", "at", "puffs", "puff", "dose", "mins", "before", "after", "pre", "post", "amount", "no", "of", "taken"], StringComparer.Ordinal);

    /// <summary>The name; the heading itself when nothing of it is left.</summary>
    public static string In(string heading)
    {
        var words = heading.Split([' ', '(', ')', '/', ',', ':', '?', '-'], StringSplitOptions.RemoveEmptyEntries)
            .Where(w => !Fillers.Contains(w.ToLowerInvariant()) && PartOfRow.Read(w) is null && !w.All(char.IsAsciiDigit)).ToList();
        return words.Count == 0 ? heading.Trim() : string.Join(' ', words);
    }
}
