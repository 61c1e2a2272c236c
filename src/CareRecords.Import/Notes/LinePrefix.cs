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

    // "[14/03/2025, 07:41] Nan: ...", "14/03/2025, 07:41 - Nan: ...", "Tue 8:12 PM - dad: ...", "12 Mar, 07.41 Nan: ...", "[7:41 am, 14/03/2025] Nan: ..."
    private static LinePrefix? Chat(string line, TermReader reader)
    {
        var first = 0;
        while (first < line.Length && (line[first] is '[' or '(' || char.IsWhiteSpace(line[first]) || char.GetUnicodeCategory(line[first]) == System.Globalization.UnicodeCategory.Format)) first++;
        if (first >= line.Length) return null;
        const int longest = 90;
        var head = line.Length > longest ? line[..longest] : line;
        var colon = head.IndexOf(": ", StringComparison.Ordinal);
        if (colon < 0 && head.EndsWith(':')) colon = head.Length - 1;
        if (colon < 0 || !(char.IsAsciiDigit(line[first]) || DateGrammar.MayBegin(FirstWord(line, first)))) return null;
        var terms = reader.Raw(head[..(colon + 1)]);
        var i = 0;
        var bracketed = terms.Count > 0 && terms[0].Text is "[" or "(";
        if (bracketed) i++;
        if (i >= terms.Count || Moment(terms, i, head, out var next) is not var (date, time)) return null;
        var separated = next < terms.Count && terms[next].Text is "]" or ")" or "-" or "—" or ",";
        if (separated) next++;
        // Without its year or brackets a date with a time is a heading with an event, unless a dash leads to a name.
        if (!separated && (!terms.Take(next).Any(t => t.Kind == TermKind.Parts && t.Parts.Count == 3))) return null;
        if (next >= terms.Count || terms[next].Kind != TermKind.Word || terms[^1].Text != ":" || terms.Skip(next).Any(t => t.NamesEvent && !t.Is(Sense.Person))) return null;
        var sender = head[terms[next].Start..colon].Trim();
        if (sender.Length is 0 or > 40) return null;
        var start = colon + 1;
        while (start < line.Length && char.IsWhiteSpace(line[start])) start++;
        return new LinePrefix(start, null, new ChatStamp(date, time, sender));
    }

    // A date and a time, in either order.
    private static (DateWritten Date, LocalTime Time)? Moment(List<Term> terms, int i, string head, out int next)
    {
        if (DateGrammar.Read(terms, i, head, out next) is { } date)
        {
            if (next < terms.Count && (terms[next].IsSymbol(",") || terms[next].Is(Sense.At))) next++;
            return next < terms.Count && Clock(terms, ref next) is { } time ? (date, time) : null;
        }
        next = i;
        if (Clock(terms, ref next) is not { } before) return null;
        while (next < terms.Count && (terms[next].IsSymbol(",") || terms[next].Text is "-" or "on")) next++;
        return next < terms.Count && DateGrammar.Read(terms, next, head, out next) is { } after ? (after, before) : null;
    }

    private static ReadOnlySpan<char> FirstWord(string line, int from)
    {
        var end = from;
        while (end < line.Length && char.IsLetter(line[end])) end++;
        return line.AsSpan(from, end - from);
    }

    // "07:41", "7:41 PM", "7.41pm": the time of a stamp.
    private static LocalTime? Clock(List<Term> terms, ref int next)
    {
        var term = terms[next];
        (int Hour, int Minute)? found = term is { Kind: TermKind.Time, Parts: [<= 23, <= 59] } ? ((int)term.Parts[0], (int)term.Parts[1])
            : term is { Kind: TermKind.Number, IsWhole: false, Text.Length: 4 or 5 } && TimeGrammar.OfDigits(term) is { } dotted ? (dotted.Time.Hour, dotted.Time.Minute) : null;
        if (found is not var (hour, minute)) return null;
        next++;
        // "07:41:05": seconds.
        if (next + 1 < terms.Count && terms[next].IsSymbol(":") && terms[next + 1] is { IsWhole: true, Glued: true }) next += 2;
        if (next < terms.Count && terms[next].ValueOf(Sense.AmPm) is { } half && hour is >= 1 and <= 12) { hour = hour % 12 + (half == "pm" ? 12 : 0); next++; }
        return new LocalTime(hour, minute);
    }
}
