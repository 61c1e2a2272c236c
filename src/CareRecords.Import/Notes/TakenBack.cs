using System.Text.RegularExpressions;

namespace CareRecords.Import.Notes;

/// <summary>A line that the next one takes back: "ignore the line above, wrote Tuesday out twice".</summary>
internal static partial class TakenBack
{
    /// <summary>Whether the line after this one says that this one does not hold.</summary>
    public static bool ByNext(IReadOnlyList<string> lines, int at)
    {
        var next = at + 1;
        while (next < lines.Count && string.IsNullOrWhiteSpace(lines[next])) next++;
        return next < lines.Count && Takes().IsMatch(lines[next]);
    }

    [GeneratedRegex(@"^\W*(?:(?:please|pls|sorry),? )?(?:ignore|disregard|scrap|scratch|strike out|cross out) (?:the |that |my )?(?:(?:line|entry) (?:above|before)|(?:last|previous|above) (?:line|entry))\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Takes();
}
