using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Finds the time that a heading or label fixes for what is under it ("6am physio", "Salbutamol 7:30").</summary>
internal static class HeadingTime
{
    /// <summary>The time; null when the heading names none, or more than one.</summary>
    public static ClockTime? Read(string heading)
    {
        // "noon feed"
        if (Lexicon.Split(heading) is ["noon" or "midday", _, ..]) return CellTimes.Clock("12:00 pm").TryGet(out var noon) ? noon.Start : null;
        if (!heading.AsSpan().ContainsAnyInRange('0', '9')) return null;
        var words = heading.Split([' ', ',', '(', ')', '@', '\n', '-', '–'], StringSplitOptions.RemoveEmptyEntries);
        ClockTime? found = null;
        for (var i = 0; i < words.Length; i++)
        {
            var text = i + 1 < words.Length && words[i + 1].ToLowerInvariant().Replace(".", "", StringComparison.Ordinal) is "am" or "pm" or "noon" or "midnight" ? words[i] + " " + words[i + 1] : words[i];
            // "8pm PT, same as 8am"
            if (i > 0 && words[i - 1].Equals("as", StringComparison.OrdinalIgnoreCase)) continue;
            if (!LooksLikeTime(text) || CellTimes.Clock(text) is not { Outcome: Outcome.Certain, Value: { End: null, Start: { Precision: TimePrecision.Exact } start } }) continue;
            if (found is not null) return null;
            found = start is { Half: HalfOfDay.Unknown, Time.Hour: 0 } ? start.In(HalfOfDay.Pm) : start;
        }

        return found;
    }

    // "7am", "7 pm", "7:30", "0730" and no amount: "2.5" and "120" say how much.
    private static bool LooksLikeTime(string text) => char.IsAsciiDigit(text[0])
        && (text.Contains(':') || text.Length is 4 or 5 && text[^3] is 'h' or 'H' && char.IsAsciiDigit(text[^1]) || text.EndsWith("m", StringComparison.OrdinalIgnoreCase) && text[..^1].TrimEnd('.').EndsWith("a", StringComparison.OrdinalIgnoreCase) || text.EndsWith("pm", StringComparison.OrdinalIgnoreCase) || text.EndsWith("noon", StringComparison.OrdinalIgnoreCase)
            || (text.Length == 4 && text[0] is '0' or '1' && text.All(char.IsAsciiDigit)));
}
