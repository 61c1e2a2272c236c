using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>One of several events in a cell: its time and the words after it.</summary>
/// <param name="Clock">Its time; null with <paramref name="Impossible"/> set.</param>
/// <param name="Words">The words beside the time, without the separators; empty when there are none.</param>
/// <param name="Ends">True for "off 6.20".</param>
/// <param name="Impossible">Why its time cannot be; null when it can.</param>
/// <param name="BareHours">True where only hours are written one beside another ("8 and 6"): nothing tells morning from evening.</param>
internal sealed record CellEvent(ClockSpan? Clock, string Words, bool Ends, string? Impossible, bool BareHours = false);

/// <summary>Takes a cell with several events apart: "7.05 3/3/2/2; 16:40 same", "off 6.10; 12.00-12.30 150", "6.40 x4, 12.20 x4".</summary>
internal static class EventCell
{
    private const int LongestTime = 4;

    private static readonly HashSet<string> Ends = new(["off", "stopped", "stop", "ended", "end", "finished", "fin", "until", "till", "done", "fini", "terminé", "terminó", "acabó", "fertig", "klaar", "aus"], StringComparer.OrdinalIgnoreCase);
    private static readonly HashSet<string> Fillers = new(["at", "@", "on", "started", "start", "~", "from", "given"], StringComparer.OrdinalIgnoreCase);
    private static readonly HashSet<string> Joins = new(["and", "&", "+", "then"], StringComparer.OrdinalIgnoreCase);

    /// <summary>The events; null when a part of the cell does not begin with a time.</summary>
    /// <param name="text">The cell's words.</param>
    /// <param name="continues">Tells words without a time that belong to the event before them ("7.20, bases 4 tops 2"); null where none do.</param>
    public static IReadOnlyList<CellEvent>? Read(string text, Predicate<string>? continues = null)
    {
        var events = new List<CellEvent>();
        // "07:00 / 17:30": a list of times and nothing else.
        if (text.Contains('/') && text.Split('/') is { Length: > 1 } times && times.All(t => t.AsSpan().IndexOfAny(':', '.') > 0 && CellTimes.Clock(t.Trim()).Outcome is Outcome.Certain or Outcome.Impossible)) text = string.Join("; ", times);
        foreach (var part in Parts(text))
        {
            if (events.Count > 0 && continues?.Invoke(part) == true) events[^1] = events[^1] with { Words = events[^1].Words.Length == 0 ? part : $"{events[^1].Words}, {part}" };
            else if (Part(part) is { } found) events.AddRange(found);
            else return null;
        }

        return events.Count > 0 ? events : null;
    }

    private static List<CellEvent>? Part(string part)
    {
        var words = part.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        var (at, ends) = (0, false);
        while (at < words.Length && (Ends.Contains(words[at].TrimEnd(':')) || Fillers.Contains(words[at])))
            ends |= Ends.Contains(words[at++].TrimEnd(':'));
        var times = new List<(Reading<ClockSpan> Clock, string Words)>();
        while (Time(words, ref at) is { } time)
        {
            times.Add(time);
            if (at < words.Length && words[at..].All(w => w.AsSpan().IndexOfAny(':', '.') > 0 && CellTimes.Clock(w.Trim(',')).Outcome is Outcome.Certain or Outcome.Impossible)) continue;
            if (at < words.Length && Joins.Contains(words[at]) && at + 1 < words.Length && StartsTime(words, at + 1)) at++;
            else break;
        }

        if (times.Count == 0) return null;
        while (at < words.Length && Ends.Contains(words[at].Trim(':', ','))) (ends, at) = (true, at + 1);
        var rest = string.Join(' ', words[at..]).Trim();
        if (times.Count > 1 && rest.StartsWith("both ", StringComparison.OrdinalIgnoreCase)) rest = rest[5..];
        var bare = times.Count > 1 && times.All(t => t.Words.All(char.IsAsciiDigit) && t.Words.Length <= 2);
        return [.. times.Select(t => new CellEvent(t.Clock.Outcome == Outcome.Certain ? t.Clock.Value : null, rest.Trim(':', '-', ' '), ends,
            t.Clock.Outcome == Outcome.Impossible ? t.Clock.Why ?? $"'{t.Words}' is not a time." : null, bare))];
    }

    /// <summary>True for words that begin with a clock of hours and minutes, or with a half of the day beside the hour.</summary>
    public static bool BeginsWithTime(string text)
    {
        var words = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        var at = 0;
        return Time(words, ref at) is { } time && (time.Words.AsSpan().IndexOfAny(':', '.') > 0 || time.Words.Any(char.IsLetter));
    }

    private static bool StartsTime(string[] words, int at) => Time(words, ref at) is not null;

    // The longest run of words that is a time: "half past 7", "12.00 - 12.30", "6.05am".
    private static (Reading<ClockSpan> Clock, string Words)? Time(string[] words, ref int at)
    {
        for (var length = Math.Min(LongestTime, words.Length - at); length > 0; length--)
        {
            var text = string.Join(' ', words[at..(at + length)]).Trim(',', ':');
            // "7:10 - 3 each side": the minutes of two sides, not the end of a range.
            if (length > 1 && at + length < words.Length && words[at + length - 1] is { Length: <= 2 } bare && bare.All(char.IsAsciiDigit) && text.AsSpan().IndexOfAny('-', '–') > 0 && !IsHalf(words[at + length])) continue;
            var clock = CellTimes.Clock(text);
            if (clock.Outcome == Outcome.Certain || (clock.Outcome == Outcome.Impossible && length == 1 && text.Any(char.IsAsciiDigit)))
            {
                at += length;
                return (clock, text);
            }
        }

        return null;
    }

    private static bool IsHalf(string word) => word.Trim('.', ',').Replace(".", "", StringComparison.Ordinal).ToLowerInvariant() is "am" or "pm" or "a" or "p" or "noon";

    /// <summary>The parts between semicolons and line ends, and between commas where a figure follows outside brackets.</summary>
    public static IEnumerable<string> Parts(string text)
    {
        var (from, depth) = (0, 0);
        for (var i = 0; i <= text.Length; i++)
        {
            if (i < text.Length && text[i] is '(' or '[') depth++;
            if (i < text.Length && text[i] is ')' or ']') depth--;
            if (i < text.Length && !(depth <= 0 && IsBreak(text, i))) continue;
            if (text.AsSpan(from, i - from).Trim() is { IsEmpty: false } part) yield return part.ToString();
            from = i + 1;
        }
    }

    private static bool IsBreak(string text, int at) => text[at] is ';' or '\n' or '\r'
        || (text[at] == ',' && at + 2 < text.Length && text[at + 1] == ' ' && (char.IsAsciiDigit(text[at + 2]) || char.IsLetter(text[at + 2])) && HasTimeBefore(text, at));

    private static bool HasTimeBefore(string text, int at) => text.AsSpan(0, at).ContainsAnyInRange('0', '9');
}
