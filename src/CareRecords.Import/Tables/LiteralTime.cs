using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables;

/// <summary>How a cell stands against the contract's own way of writing a time.</summary>
internal enum LiteralOutcome
{
    /// <summary>Written another way.</summary>
    Otherwise,

    /// <summary>A date and a time.</summary>
    Moment,

    /// <summary>A date alone.</summary>
    DateOnly,

    /// <summary>Written in the contract's way, and no such date or time exists.</summary>
    Impossible,
}

/// <summary>Reads <c>yyyy-MM-dd HH:mm</c> (also with T, with seconds, or the date alone) and nothing else: the contract's own form, quickly.</summary>
internal static class LiteralTime
{
    /// <summary>Reads a cell's words.</summary>
    public static LiteralOutcome Read(ReadOnlySpan<char> text, out LocalDateTime at)
    {
        at = default;
        text = text.Trim();
        if (text.Length < 10 || text[4] != '-' || text[7] != '-' || !Digits(text[..4], out var year) || !Digits(text[5..7], out var month) || !Digits(text[8..10], out var day))
            return LiteralOutcome.Otherwise;
        var (hour, minute, second) = (0, 0, 0);
        var dateOnly = text.Length == 10;
        if (!dateOnly)
        {
            if (text.Length is not (16 or 19) || text[10] is not (' ' or 'T') || text[13] != ':' || !Digits(text[11..13], out hour) || !Digits(text[14..16], out minute))
                return LiteralOutcome.Otherwise;
            if (text.Length == 19 && (text[16] != ':' || !Digits(text[17..], out second))) return LiteralOutcome.Otherwise;
        }

        if (year is < 1900 or > 2200 || month is < 1 or > 12 || day < 1 || day > CalendarSystem.Iso.GetDaysInMonth(year, month)
            || hour > 23 || minute > 59 || second > 59)
            return LiteralOutcome.Impossible;
        at = new LocalDateTime(year, month, day, hour, minute, second);
        return dateOnly ? LiteralOutcome.DateOnly : LiteralOutcome.Moment;
    }

    // Room of "about" on either side, minutes: the same as the notes give it (chosen by CareRecords).
    private const int AboutMinutes = 15;

    private static readonly string[] AboutWords = ["about ", "around ", "approx ", "approx. ", "~", "ca ", "ca. ", "circa "];

    /// <summary>The text without a leading "about" or its like.</summary>
    public static ReadOnlySpan<char> WithoutAbout(string text, out bool about)
    {
        var trimmed = text.AsSpan().Trim();
        about = false;
        if (trimmed.IsEmpty || char.IsAsciiDigit(trimmed[0])) return trimmed;
        foreach (var word in AboutWords)
        {
            if (!trimmed.StartsWith(word, StringComparison.OrdinalIgnoreCase)) continue;
            about = true;
            return trimmed[word.Length..].TrimStart();
        }

        return trimmed;
    }

    /// <summary>A time written with "about": a quarter of an hour on both sides.</summary>
    public static UncertainTime About(LocalDateTime at) =>
        UncertainTime.Between(at.PlusMinutes(-AboutMinutes), at, at.PlusMinutes(AboutMinutes), TimePrecision.About);

    private static bool Digits(ReadOnlySpan<char> text, out int number)
    {
        number = 0;
        foreach (var c in text)
        {
            if (!char.IsAsciiDigit(c)) return false;
            number = number * 10 + (c - '0');
        }

        return true;
    }
}
