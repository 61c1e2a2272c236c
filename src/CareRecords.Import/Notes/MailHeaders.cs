using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>
/// The headers of letters that a family writes to itself or to the clinic: "Subject: chest record, Monday 14 July 2025". A day in the subject, or the day of sending, heads the
/// letter; the other headers tell of nothing. A subject that tells of care at a time ("Subject: 14/7 physio 7am") is a line like any other, after its day.
/// </summary>
internal static partial class MailHeaders
{
    /// <summary>Whether a text is made of letters: some line is a subject.</summary>
    public static bool Are(IReadOnlyList<string> lines) => lines.Any(l => l.StartsWith("subject:", StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether a line is a header.</summary>
    public static bool Is(string line) => Header().IsMatch(line);

    /// <summary>Whether a subject tells of care at a time or of an amount, and must be read as a line is.</summary>
    /// <param name="line">The header.</param>
    /// <param name="from">Position in it after its day, or 0.</param>
    public static bool TellsCare(string line, int from)
    {
        if (Header().Match(line) is not { Success: true } header || !header.Groups[2].Success) return false;
        var terms = CellTerms.Read(line[Math.Max(from, header.Length)..]);
        return terms.Exists(t => t.NamesEvent) && terms.Exists(t => t.Kind is TermKind.Time or TermKind.Quantity or TermKind.Duration or TermKind.Range);
    }

    /// <summary>The day that a header names, however many words stand before it, and what follows it when that tells of care; null when it names none.</summary>
    public static Heading? Day(string line)
    {
        if (Header().Match(line) is not { Success: true } header || !header.Groups[1].Success) return null;
        var terms = CellTerms.Raw(line);
        for (var at = 1; at < terms.Count; at++)
        {
            if (DateGrammar.Read(terms, at, line, out var next) is not { } date || (date.Day is null && date.First is null && date.DayOfWeek == IsoDayOfWeek.None)) continue;
            var end = terms[next - 1].End;
            var care = TellsCare(line, end);
            return new Heading(date, care ? end : line.Length, care, line[terms[at].Start..end], false, false);
        }

        return null;
    }

    [GeneratedRegex(@"^\s*(?:((subject)|sent|date)|to|from|cc|bcc|reply-to)\s*:", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Header();
}
