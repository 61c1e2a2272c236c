using System.Text.RegularExpressions;

namespace CareRecords.Import.Notes;

/// <summary>Whether a source writes its times on a clock of 24 hours: 06:00, 18:05 and never am or pm. Ten and eleven are then in the morning.</summary>
internal static partial class ClockStyle
{
    private const int LeastOfEach = 3;
    // Enough to know a family's way of writing.
    private const int MostLines = 2_000;

    /// <summary>Whether these notes write so throughout.</summary>
    public static bool IsTwentyFour(IReadOnlyList<string> lines)
    {
        var (early, late) = (0, 0);
        foreach (var line in lines.Take(MostLines))
        {
            if (Halves().IsMatch(line)) return false;
            early += Early().Count(line);
            late += Late().Count(line);
        }
        return early >= LeastOfEach && late >= LeastOfEach;
    }

    [GeneratedRegex(@"(?<![\d/.:-])0\d[:h]?[0-5]\d(?![\d/])", RegexOptions.CultureInvariant)]
    private static partial Regex Early();

    [GeneratedRegex(@"(?<![\d/.:-])(1[3-9]|2[0-3])[:h]?[0-5]\d(?![\d/])", RegexOptions.CultureInvariant)]
    private static partial Regex Late();

    [GeneratedRegex(@"\b\d{1,2}([:.]\d\d)? ?(am|pm|a\.m|p\.m|o.?clock)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Halves();
}
