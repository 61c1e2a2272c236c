using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Decides whether a source writes the day or the month first, from all of its dates together.</summary>
internal static class DayOrder
{
    // Days of a log follow one another: read the wrong way they jump from month to month.
    private const int NextDays = 4;

    /// <summary>The order; null when the dates fit more than one and do not run on in just one of them, or when there are none in doubt.</summary>
    /// <param name="dates">Dates as written, in the order of the source.</param>
    /// <param name="notAfter">A day that no date lies after; null when not known.</param>
    public static DateOrder? Decide(IReadOnlyList<DateWritten> dates, LocalDate? notAfter)
    {
        // "31/02" is a slip in any order and settles none.
        dates = [.. dates.Where(d => d.First is not { } first || d.Second is not { } second || IsDay(first, second) || IsDay(second, first))];
        var year = dates.FirstOrDefault(d => d.Year is not null)?.Year ?? notAfter?.Year ?? 2000;
        // One date with a number over 12 settles the source; a source with both kinds mixes the orders and settles nothing.
        var fitting = DateReader.OrdersThatFit(dates, year)
            .Where(o => o == DateOrder.DayMonthYear ? !dates.Any(d => d.Second > 12) : o == DateOrder.MonthDayYear && !dates.Any(d => d.First > 12)).ToList();
        if (fitting.Count <= 1) return fitting.Count == 1 ? fitting[0] : null;
        // A year that nobody writes is any: only the steps from day to day are looked at.
        var running = fitting.Where(o => RunsOn(Days(dates, o, notAfter ?? new LocalDate(year, 7, 1)))).ToList();
        return running.Count == 1 ? running[0] : null;
    }

    /// <summary>The order in which every date lies in one of the months that the titles name; null when both orders do, or neither.</summary>
    public static DateOrder? OfMonths(IReadOnlyList<DateWritten> dates, IReadOnlyList<int> months)
    {
        var open = dates.Where(d => d.First is not null && d.Second is not null).ToList();
        if (months.Count == 0 || open.Count == 0) return null;
        var (dayFirst, monthFirst) = (open.TrueForAll(d => months.Contains(d.Second!.Value)), open.TrueForAll(d => months.Contains(d.First!.Value)));
        return dayFirst == monthFirst ? null : dayFirst ? DateOrder.DayMonthYear : DateOrder.MonthDayYear;
    }

    private static bool IsDay(int day, int month) => month is >= 1 and <= 12 && day >= 1 && day <= CalendarSystem.Iso.GetDaysInMonth(2000, month);

    /// <summary>Whether any of the dates needs an order to be read.</summary>
    public static bool IsNeeded(IEnumerable<DateWritten> dates) => dates.Any(d => d.First is not null && d.Second is not null && d.First != d.Second);

    // Most steps from one day to the next are short, and there are at least two of them.
    private static bool RunsOn(List<LocalDate> days)
    {
        var distinct = days.Distinct().ToList();
        if (distinct.Count < 3) return distinct.Count == 2 && Math.Abs(Period.DaysBetween(distinct[0], distinct[1])) <= NextDays;
        var near = distinct.Zip(distinct.Skip(1), (a, b) => Math.Abs(Period.DaysBetween(a, b))).Count(d => d <= NextDays);
        return near * 3 >= (distinct.Count - 1) * 2;
    }

    private static List<LocalDate> Days(IReadOnlyList<DateWritten> dates, DateOrder order, LocalDate near)
    {
        var days = new List<LocalDate>();
        foreach (var written in dates)
            if (DateReader.Settle(written, order, days.Count > 0 ? days[^1] : near).TryGet(out var day))
                days.Add(day);
        return days;
    }
}
