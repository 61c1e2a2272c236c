using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Findings;

/// <summary>Numbers and times inside sentences, the same on every machine.</summary>
internal static class Words
{
    private static readonly LocalDateTimePattern MinutePattern = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");
    private static readonly LocalDatePattern ShortDayPattern = LocalDatePattern.CreateWithInvariantCulture("d MMM");
    private static readonly LocalTimePattern ClockPattern = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    public static string Number(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    public static string Whole(double value) => Math.Round(value).ToString("0", CultureInfo.InvariantCulture);

    public static string At(LocalDateTime at) => MinutePattern.Format(at);

    public static string Clock(LocalDateTime at) => ClockPattern.Format(at.TimeOfDay);

    public static string Day(LocalDate day) => LocalDatePattern.Iso.Format(day);

    /// <summary>"30 Mar": for sentences that stand beside dates written so.</summary>
    public static string ShortDay(LocalDate day) => ShortDayPattern.Format(day);

    public static string Minutes(double low, double high) =>
        Math.Round(low) == Math.Round(high) ? $"{Whole(low)} minutes" : $"{Whole(low)} to {Whole(high)} minutes";

    public static string Count(int count, string one, string many) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    public static string Flow(double litresPerMinute) => litresPerMinute == 0 ? "air" : $"{Number(litresPerMinute)} L/min";
}
