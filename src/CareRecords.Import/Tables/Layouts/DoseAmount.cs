namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads the amount of a medicine at the front of a cell: "2 puffs", "2.5mg", "half nebule".</summary>
internal static class DoseAmount
{
    /// <summary>The amount; null when the words begin with none.</summary>
    public static string? In(string text)
    {
        // "2.40pm 5ml": the time stands first.
        if (text.IndexOf(' ', StringComparison.Ordinal) is > 0 and var gap && text[..gap].Any(char.IsLetter) && CellTimes.Clock(text[..gap]).Outcome == Reading.Outcome.Certain) return null;
        if (text.Length is > 1 and <= 16 && text.Count(c => c == ' ') <= 1 && !text.Contains(", ", StringComparison.Ordinal) && char.IsAsciiDigit(text[0]) && text.Any(char.IsLetter) && text.Split(' ', '/').Any(w => w.TrimStart('0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '.', ',').ToLowerInvariant() is "mg" or "ml" or "mcg" or "puffs" or "puff")) return text;
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length >= 2 && (char.IsAsciiDigit(words[0][0]) || words[0].ToLowerInvariant() is "half" or "one" or "two" or "three" or "four" or "quarter" or "½" or "a") && IsUnitOfDose(words[1]) ? $"{words[0]} {words[1].TrimEnd('.', ',')}" : null;
    }

    private static bool IsUnitOfDose(string word) => word.ToLowerInvariant().TrimEnd('.', ',') is "puffs" or "puff" or "ml" or "mls" or "mg" or "mcg" or "g" or "drops" or "drop" or "p"
        or "nebule" or "nebules" or "vial" or "vials" or "amp" or "amps" or "ampoule" or "ampoules" or "respule" or "respules" or "tablet" or "tablets" or "tab" or "tabs" or "capsule" or "capsules"
        or "sachet" or "sachets" or "spoon" or "spoons" or "teaspoon" or "tsp" or "sprays" or "spray" or "units";
}
