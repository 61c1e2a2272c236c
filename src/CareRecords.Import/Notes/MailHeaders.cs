using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>
/// The headers of letters that a family writes to itself or to the clinic: "Subject: chest record, Monday 14 July 2025". A day in the subject, or the day of sending, heads the
/// letter; the other headers tell of nothing.
/// </summary>
internal static partial class MailHeaders
{
    /// <summary>Whether a text is made of letters: some line is a subject.</summary>
    public static bool Are(IReadOnlyList<string> lines) => lines.Any(l => l.StartsWith("subject:", StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether a line is a header.</summary>
    public static bool Is(string line) => Header().IsMatch(line);

    /// <summary>The day that a header names, however many words stand before it; null when none does, or when it tells of care at a time.</summary>
    public static Heading? Day(string line)
    {
        if (Header().Match(line) is not { Success: true } header || !header.Groups[1].Success) return null;
        var terms = CellTerms.Raw(line);
        for (var at = 1; at < terms.Count; at++)
            if (DateGrammar.Read(terms, at, line, out var next) is { } date && (date.Day is not null || date.First is not null || date.DayOfWeek != IsoDayOfWeek.None))
                return new Heading(date, line.Length, false, line[terms[at].Start..terms[next - 1].End], false, false);
        return null;
    }

    [GeneratedRegex(@"^\s*(?:(subject|sent|date)|to|from|cc|bcc|reply-to)\s*:", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Header();
}
