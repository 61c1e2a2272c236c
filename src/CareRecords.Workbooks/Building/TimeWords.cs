using CareRecords.Records;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Workbooks.Building;

/// <summary>Times, days and numbers in words, always in the same form.</summary>
internal static class TimeWords
{
    private static readonly LocalDatePattern DayPattern = LocalDatePattern.CreateWithInvariantCulture("d MMM");
    private static readonly LocalDatePattern LongDayPattern = LocalDatePattern.CreateWithInvariantCulture("d MMMM yyyy");
    private static readonly LocalDatePattern WeekdayPattern = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");
    private static readonly LocalDatePattern NightPattern = LocalDatePattern.CreateWithInvariantCulture("ddd d");
    private static readonly LocalDateTimePattern ClockPattern = LocalDateTimePattern.CreateWithInvariantCulture("d MMM HH:mm");
    private static readonly LocalDateTimePattern HourPattern = LocalDateTimePattern.CreateWithInvariantCulture("HH:mm");

    public static string Day(LocalDate day) => DayPattern.Format(day);

    /// <summary>"14–16 Mar" within a month, "30 Mar–2 Apr" over two.</summary>
    public static string Days(LocalDate from, LocalDate to) =>
        from.Month == to.Month && from.Year == to.Year ? FormattableString.Invariant($"{from.Day}–{Day(to)}") : $"{Day(from)}–{Day(to)}";

    public static string LongDay(LocalDate day) => LongDayPattern.Format(day);

    public static string Clock(LocalDateTime at) => ClockPattern.Format(at);

    /// <summary>"Mon 23 Mar 01:00 (night of Sun 22)": the calendar day, with its clock only where one was written.</summary>
    public static string Moment(Findings.CourseEvent e) => e.Clock is { } clock
        ? $"{WeekdayPattern.Format(e.Date)} {(e.IsAbout ? "about " : "")}{HourPattern.Format(e.Date.At(clock))}" + (e.Date > e.Day ? $" (night of {NightPattern.Format(e.Day)})" : "")
        : WeekdayPattern.Format(e.Date);

    public static string Number(double number) => number.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>"7" or "7 to 9"; "not said" when null.</summary>
    public static string Range(double? low, double? high) => (low, high) switch
    {
        ({ } a, { } b) when Number(a) == Number(b) => Number(a),
        ({ } a, { } b) => $"{Number(a)} to {Number(b)}",
        ({ } a, null) => $"{Number(a)} or more",
        (null, { } b) => $"up to {Number(b)}",
        _ => "not known",
    };

    /// <summary>What is uncertain in a time; empty for an exact one.</summary>
    public static string Uncertain(UncertainTime time) => time.IsExact
        ? time.IsApproximate ? "time " + WorkbookLayout.PrecisionWords[time.Precision] : ""
        : $"time {WorkbookLayout.PrecisionWords[time.Precision]}: {Clock(time.Earliest)} to {(time.Earliest.Date == time.Latest.Date ? HourPattern.Format(time.Latest) : Clock(time.Latest))}";
}
