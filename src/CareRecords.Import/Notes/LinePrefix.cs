using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>The stamp of a chat line.</summary>
/// <param name="Date">The stamp's date as written.</param>
/// <param name="Time">The stamp's time of day.</param>
/// <param name="By">The sender's name as written.</param>
internal sealed record ChatStamp(DateWritten Date, LocalTime Time, string By);

/// <summary>What stands before the words of a line: a bullet, a number in a list, the stamp and sender of a chat.</summary>
/// <param name="ContentStart">Zero-based position at which the words begin.</param>
/// <param name="Item">The number of the line in its list ("2)"); null when none.</param>
/// <param name="Stamp">The chat stamp; null when the line has none.</param>
internal sealed record LinePrefix(int ContentStart, int? Item, ChatStamp? Stamp)
{
    /// <summary>Reads the prefix of a line.</summary>
    public static LinePrefix Read(string line, TermReader reader)
    {
        if (Chat(line, reader) is { } chat) return chat;
        var at = 0;
        int? item = null;
        while (at < line.Length && (char.IsWhiteSpace(line[at]) || line[at] is '#' or '*' or '•' or '▪' or '·' or '●' or '◦' or '>' or '_'
            || (line[at] is '-' or '–' or '—' && at + 1 < line.Length && char.IsWhiteSpace(line[at + 1])))) at++;
        if (line.AsSpan(at).StartsWith("[ ]", StringComparison.Ordinal) || line.AsSpan(at).StartsWith("[x]", StringComparison.OrdinalIgnoreCase)) at += 3;
        var digits = at;
        while (digits < line.Length && char.IsAsciiDigit(line[digits])) digits++;
        if (digits - at is 1 or 2 && digits < line.Length && line[digits] is ')' or '.' && digits + 1 < line.Length && char.IsWhiteSpace(line[digits + 1]))
        {
            item = int.Parse(line.AsSpan(at, digits - at), System.Globalization.CultureInfo.InvariantCulture);
            at = digits + 1;
        }
        while (at < line.Length && char.IsWhiteSpace(line[at])) at++;
        return new LinePrefix(at, item, null);
    }

    // "[14/03/2025, 07:41] Nan: ...", "14/03/2025, 07:41 - Nan: ...", "2025-03-14 07:41 Nan: ..."
    private static LinePrefix? Chat(string line, TermReader reader)
    {
        var first = 0;
        while (first < line.Length && (line[first] is '[' or '(' || char.IsWhiteSpace(line[first]) || char.GetUnicodeCategory(line[first]) == System.Globalization.UnicodeCategory.Format)) first++;
        if (first >= line.Length || !char.IsAsciiDigit(line[first])) return null;
        const int longest = 90;
        var head = line.Length > longest ? line[..longest] : line;
        var colon = head.IndexOf(": ", StringComparison.Ordinal);
        if (colon < 0 && head.EndsWith(':')) colon = head.Length - 1;
        if (colon < 0) return null;
        var terms = reader.Raw(head[..(colon + 1)]);
        var i = 0;
        if (terms.Count > 0 && terms[0].Text is "[" or "(") i++;
        if (i >= terms.Count || terms[i] is not { Kind: TermKind.Parts, Parts.Count: 3 }) return null;
        if (DateGrammar.Read(terms, i, head, out var next) is not { } date || next != i + 1) return null;
        if (next < terms.Count && terms[next].IsSymbol(",")) next++;
        if (next >= terms.Count || terms[next] is not { Kind: TermKind.Time, Parts: [<= 23, <= 59] } clock) return null;
        var hour = (int)clock.Parts[0];
        next++;
        if (next < terms.Count && terms[next].ValueOf(Sense.AmPm) is { } half && hour is >= 1 and <= 12) { hour = hour % 12 + (half == "pm" ? 12 : 0); next++; }
        if (next < terms.Count && terms[next].Text is "]" or ")" or "-" or "—") next++;
        if (next >= terms.Count || terms[next].Kind != TermKind.Word || terms[^1].Text != ":") return null;
        var sender = head[terms[next].Start..colon].Trim();
        if (sender.Length is 0 or > 40) return null;
        var start = colon + 1;
        while (start < line.Length && char.IsWhiteSpace(line[start])) start++;
        return new LinePrefix(start, null, new ChatStamp(date, new LocalTime(hour, (int)clock.Parts[1]), sender));
    }
}
