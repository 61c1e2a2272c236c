using System.Text.RegularExpressions;

namespace CareRecords.Import.Notes;

/// <summary>Tells whether "pt" is the patient in a text, as nurses write it, or Friday in Polish, and not physiotherapy.</summary>
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

    /// <summary>Whether the text's days are headed in Polish, where "pt" is Friday.</summary>
    public static bool IsFriday(IReadOnlyList<string> lines) => lines.Count(l => l.Length < 40 && Polish().IsMatch(l)) >= LeastTimes;

    [GeneratedRegex(@"^\W*(pon|wt|śr|sr|czw|sob|niedz|nd)\b\W*\d", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Polish();

    [GeneratedRegex(@"\bpt('s)?\s+(tol\w*|in\s+(bed|chair|cot|wheelchair)|asleep|awake|sleeping|slept|resting|rested|alert|settled|calm|stable|comfortable|fussy|crying|agitated|refus\w*|repositioned|turned|suctioned|bathed|had|is|was|has|received|remains|appears|denies|kicking|coughing|vomiting|vomited|coughed|sitting|upset|tired|warm|up\s+in|to\s+school|home)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Person();
}
