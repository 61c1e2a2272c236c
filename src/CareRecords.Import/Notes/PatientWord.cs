using System.Text.RegularExpressions;

namespace CareRecords.Import.Notes;

/// <summary>Tells whether "pt" is the patient in a text, as nurses write it, and not physiotherapy.</summary>
internal static partial class PatientWord
{
    private const int LeastTimes = 2;

    /// <summary>Whether "pt" stands, twice or more, before words that say something of a person.</summary>
    public static bool IsPatient(IReadOnlyList<string> lines)
    {
        var times = 0;
        foreach (var line in lines)
            if (line.Contains("pt", StringComparison.OrdinalIgnoreCase) && Person().IsMatch(line) && ++times >= LeastTimes) return true;
        return false;
    }

    [GeneratedRegex(@"\bpt('s)?\s+(tol\w*|in\s+(bed|chair|cot|wheelchair)|asleep|awake|sleeping|slept|resting|rested|alert|settled|calm|stable|comfortable|fussy|crying|agitated|refus\w*|repositioned|turned|suctioned|bathed|had|is|was|has|received|remains|appears|denies|up\s+in|to\s+school|home)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Person();
}
