namespace CareRecords.Import.Tables.Layouts;

/// <summary>Takes the name of a medicine out of a heading: "Blue inhaler (am)" is about "blue inhaler".</summary>
internal static class MedicineName
{
    private static readonly HashSet<string> Fillers = new(["y", "n", "given", "time", "times", "at", "puffs", "puff", "dose", "mins", "before", "after", "pre", "post", "amount", "no", "of", "taken"], StringComparer.Ordinal);

    /// <summary>The name; the heading itself when nothing of it is left.</summary>
    public static string In(string heading)
    {
        var words = heading.Split([' ', '(', ')', '/', ',', ':', '?', '-'], StringSplitOptions.RemoveEmptyEntries)
            .Where(w => !Fillers.Contains(w.ToLowerInvariant()) && PartOfRow.Read(w) is null && !w.All(char.IsAsciiDigit) && !IsClock(w)).ToList();
        return words.Count == 0 ? heading.Trim() : string.Join(' ', words);
    }

    // "6.45am" of "Blue inhaler 6.45am".
    private static bool IsClock(string word) => char.IsAsciiDigit(word[0]) && (word.AsSpan().IndexOfAny('.', ':') > 0 || word[^1] is 'm' or 'M') && CellTimes.Clock(word).Outcome == Reading.Outcome.Certain;
}
