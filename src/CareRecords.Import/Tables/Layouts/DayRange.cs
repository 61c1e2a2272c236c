namespace CareRecords.Import.Tables.Layouts;

/// <summary>Tells which end of a day's range a heading names ("best sat", "lowest SpO2").</summary>
internal static class DayRange
{
    /// <summary>True for a measure of the day as a whole.</summary>
    public static bool IsOfDay(string heading) =>
        IsHighest(heading) is not null || Lexicon.Split(heading).Any(w => w is "range" or "overall" or "daily" or "average" or "mean");

    /// <summary>True for the highest, false for the lowest, null for a heading that names neither.</summary>
    public static bool? IsHighest(string heading)
    {
        // "L/min" is a unit.
        if (heading.Contains('/') || heading.Contains("per ", StringComparison.OrdinalIgnoreCase)) return null;
        foreach (var word in Lexicon.Split(heading))
        {
            if (word is "best" or "highest" or "max" or "maximum" or "hi" or "high" or "top") return true;
            if (word is "worst" or "lowest" or "min" or "minimum" or "low") return false;
        }

        return null;
    }
}
