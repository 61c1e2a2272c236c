using System.Globalization;
using NodaTime;

namespace CareRecords.Workbooks.Charts.Paper;

/// <summary>Numbers, dates and counts as the charts write them, the same in every culture.</summary>
internal static class ChartWords
{
    private const string NoBreakSpace = "\u00A0";
    private static readonly string[] Months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
    private static readonly string[] Weekdays = ["", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

    /// <summary>"3 Mar".</summary>
    public static string Day(LocalDate day) => Invariant($"{day.Day} {Months[day.Month - 1]}");

    /// <summary>"Mon 3 Mar".</summary>
    public static string Weekday(LocalDate day) => $"{Weekdays[(int)day.DayOfWeek]} {Day(day)}";

    /// <summary>"1 Mar to 30 Mar 2025", with both years when they differ.</summary>
    public static string Days(LocalDate from, LocalDate to) => from == to
        ? Invariant($"{Day(from)} {from.Year}")
        : from.Year == to.Year
            ? Invariant($"{Day(from)} to {Day(to)} {to.Year}")
            : Invariant($"{Day(from)} {from.Year} to {Day(to)} {to.Year}");

    /// <summary>"04:00".</summary>
    public static string Clock(LocalTime time) => Invariant($"{time.Hour:00}:{time.Minute:00}");

    /// <summary>"1 session", "12 sessions".</summary>
    public static string Count(int number, string one, string? many = null) => Invariant($"{number} {(number == 1 ? one : many ?? one + "s")}");

    /// <summary>A number with at most one decimal; more where one would hide it (0.125 L/min).</summary>
    public static string Number(double value) =>
        value.ToString(Math.Abs(value) < 1 ? "0.###" : "0.#", CultureInfo.InvariantCulture);

    /// <summary>A share as a whole per cent.</summary>
    public static string Percent(double share) => With(Math.Round(share * 100), "%");

    /// <summary>A number with its unit, which no line break parts.</summary>
    public static string With(double value, string unit) => Number(value) + NoBreakSpace + unit;

    /// <summary>"12", or "5–20" where the notes leave room.</summary>
    public static string Range(double low, double high) => low == high ? Number(low) : $"{Number(low)}–{Number(high)}";

    /// <summary>Words as a sentence: with a capital and a full stop; empty stays empty.</summary>
    public static string Sentence(string words) => words.Length == 0
        ? ""
        : char.ToUpperInvariant(words[0]) + words[1..] + (words[^1] is '.' or '!' or '?' ? "" : ".");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
