using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>"full chest at 20 past", in a message of 06:52: the minutes of an hour that the message's own stamp gives, as the latest such time before it was written.</summary>
internal static partial class HourOfMessage
{
    /// <summary>The words with such times written out ("at 06:20"); the words themselves where there are none, or another time in the message gives the hour.</summary>
    /// <param name="words">The message.</param>
    /// <param name="stamp">When it was written.</param>
    public static string WrittenOut(string words, LocalDateTime stamp)
    {
        if (!words.Contains(" past", StringComparison.OrdinalIgnoreCase) || PastTheHour().Match(words) is not { Success: true } match || AnyTime().IsMatch(words[..match.Index])) return words;
        var minute = match.Groups[1].Value.ToLowerInvariant() switch { "five" => 5, "ten" => 10, "quarter" or "a quarter" => 15, "twenty" => 20, "twenty five" or "twenty-five" => 25, "half" => 30, var digits => int.Parse(digits, CultureInfo.InvariantCulture) };
        if (minute is 0 or > 59) return words;
        var at = new LocalTime(stamp.Hour, minute);
        if (at > stamp.TimeOfDay) at = at.PlusHours(-1);
        return string.Concat(words.AsSpan(0, match.Index), "at ", at.ToString("HH:mm", CultureInfo.InvariantCulture), words.AsSpan(match.Index + match.Length));
    }

    [GeneratedRegex(@"\b(?:at|about|around|by) (\d{1,2}|five|ten|a quarter|quarter|twenty[ -]five|twenty|half) past\b(?! (?:\d|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|noon|midnight))", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PastTheHour();

    [GeneratedRegex(@"\d[:.h]\d\d|\d ?[ap]\.?m\b|\bat \d|\d o'?clock|\b(?:to|past) (?:\d|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex AnyTime();
}
