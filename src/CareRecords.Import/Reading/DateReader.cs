using NodaTime;

namespace CareRecords.Import.Reading;

/// <summary>A date as written, before the order of day and month, the year and the neighbours settle it.</summary>
/// <param name="First">The first of two numbers in "a/b", where day and month are only numbers; otherwise null.</param>
/// <param name="Second">The second of the two.</param>
/// <param name="Year">The year when written; otherwise null.</param>
/// <param name="Month">The month when written as a word, or certain; otherwise null.</param>
/// <param name="Day">The day of the month when certain; otherwise null.</param>
/// <param name="DayOfWeek">The day of the week when written; <see cref="IsoDayOfWeek.None"/> otherwise.</param>
internal sealed record DateWritten(int? First, int? Second, int? Year, int? Month, int? Day, IsoDayOfWeek DayOfWeek)
{
    /// <summary>Days from the day before it in the source, for "today" (0), "yesterday" (-1), "next day" (1); null otherwise.</summary>
    public int? DaysFromContext { get; init; }
}

/// <summary>Reads dates of every common form.</summary>
internal static partial class DateReader
{
    // Costs of an order over a source: a date that cannot be outweighs any number of leaps; a weekday that disagrees, most of them.
    private const double ImpossibleCost = 1000;
    private const double WeekdayCost = 60;
    private const double ClearMargin = 20;

    /// <summary>Reads the whole of <paramref name="text"/> as a date as written; <see cref="Outcome.Nothing"/> when other words stand beside it.</summary>
    public static Reading<DateWritten> Read(string text)
    {
        text = DayFirst(text);
        var terms = CellTerms.Raw(text);
        if (terms.Count == 0) return Reading.Nothing<DateWritten>();
        if (terms is [{ Kind: TermKind.Word } word] && word.ValueOf(Sense.DayRef) is { } days)
            return Reading.Certain(new DateWritten(null, null, null, null, null, IsoDayOfWeek.None) { DaysFromContext = int.Parse(days, System.Globalization.CultureInfo.InvariantCulture) });
        return Notes.DateGrammar.Read(terms, 0, text, out var next) is { } date && next == terms.Count ? Reading.Certain(date) : Reading.Nothing<DateWritten>();
    }

    // "8.11.", with a stop behind the month as well, is the 8th of November and no time: so dates are written where the day comes first.
    private static string DayFirst(string text) => text.EndsWith('.') && StopBehindMonth().Match(text) is { Success: true } match && int.Parse(match.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) is >= 1 and <= 12 and var month
        ? $"{text[..match.Index]}{match.Groups[1].Value} {System.Globalization.CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month)}" : text;

    [System.Text.RegularExpressions.GeneratedRegex(@"(?<![\d.])(\d{1,2})\.\s?(\d{1,2})\.$", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex StopBehindMonth();

    /// <summary>The orders under which every one of the dates exists and the day of week (where written) agrees; the best fit first.</summary>
    public static IReadOnlyList<DateOrder> OrdersThatFit(IEnumerable<DateWritten> dates, int yearHint)
    {
        var list = dates.ToList();
        var near = new LocalDate(Math.Clamp(yearHint, 1900, 2200), 7, 1);
        // How far apart the days lie says which order is likelier, never that one is impossible: ten years of days are far apart in all.
        return new[] { DateOrder.DayMonthYear, DateOrder.MonthDayYear }
            .Select(order => (order, cost: CostOf(list, order, near, out var steps), steps)).Where(pair => pair.cost - pair.steps < ImpossibleCost)
            .OrderBy(pair => pair.cost).Select(pair => pair.order).ToList();
    }

    /// <summary>The order that the whole source and its neighbours settle; null when both fit about as well.</summary>
    public static DateOrder? OrderOf(IReadOnlyList<DateWritten> dates, LocalDate? near)
    {
        if (!dates.Any(d => d.First is not null)) return null;
        var (dmy, mdy) = (CostOf(dates, DateOrder.DayMonthYear, near, out _), CostOf(dates, DateOrder.MonthDayYear, near, out _));
        if (Math.Abs(dmy - mdy) < ClearMargin) return null;
        return dmy < mdy ? DateOrder.DayMonthYear : DateOrder.MonthDayYear;
    }

    // The cost, and the part of it that is of the steps from day to day.
    private static double CostOf(IReadOnlyList<DateWritten> dates, DateOrder order, LocalDate? near, out double steps)
    {
        (var cost, steps) = (0.0, 0.0);
        foreach (var date in dates)
        {
            if (date is { First: { } first, Second: { } second } && (order == DateOrder.DayMonthYear ? second > 12 : first > 12)) { cost += ImpossibleCost; continue; }
            var reading = Settle(date, order, near, null, false);
            if (reading.Outcome != Outcome.Certain) { if (date.First is not null) cost += ImpossibleCost; continue; }
            if (date.DayOfWeek != IsoDayOfWeek.None && reading.Value.DayOfWeek != date.DayOfWeek) cost += WeekdayCost;
            if (near is { } before) steps += Math.Min(60, Math.Abs(Period.DaysBetween(before, reading.Value)) / 2.0);
            near = reading.Value;
        }
        return cost + steps;
    }

    /// <summary>
    /// Settles a date. A year not written is the one that puts the date nearest to <paramref name="near"/>; a weekday alone is the nearest such day
    /// on or after <paramref name="near"/>. <see cref="Outcome.Doubtful"/> when day and month could change places and no order is given.
    /// </summary>
    /// <param name="written">As written.</param>
    /// <param name="order">The source's order; null when not known.</param>
    /// <param name="near">A day known to be near (the row above, the option, the file's date); null when none is.</param>
    public static Reading<LocalDate> Settle(DateWritten written, DateOrder? order, LocalDate? near) => Settle(written, order, near, null, true);

    /// <summary>The same, with the last day that the source can speak of.</summary>
    /// <param name="written">As written.</param>
    /// <param name="order">The source's order; null when not known.</param>
    /// <param name="near">A day known to be near; null when none is.</param>
    /// <param name="notAfter">The last day that the source can speak of; null when not known.</param>
    /// <param name="onward">Whether <paramref name="near"/> is the day before in the source, so that a weekday alone is the next one.</param>
    public static Reading<LocalDate> Settle(DateWritten written, DateOrder? order, LocalDate? near, LocalDate? notAfter, bool onward)
    {
        near ??= notAfter;
        if (written.DaysFromContext is { } days) return near is { } from ? Reading.Certain(from.PlusDays(days)) : Reading.Nothing<LocalDate>();
        if (written.First is { } first && written.Second is { } second)
        {
            if (first > 12 && second > 12) return Reading.Impossible<LocalDate>($"{first}/{second} is no day and month.");
            var dayFirst = Dated(second, first, written, near, notAfter);
            var monthFirst = Dated(first, second, written, near, notAfter);
            if (order is not null && !(order == DateOrder.DayMonthYear ? second > 12 : first > 12))
                return (order == DateOrder.DayMonthYear ? dayFirst : monthFirst) is { } chosen ? Reading.Certain(chosen) : Reading.Impossible<LocalDate>("No such day.");
            if (first == second || first > 12) return dayFirst is { } only ? Reading.Certain(only) : Reading.Impossible<LocalDate>("No such day.");
            if (second > 12) return monthFirst is { } only ? Reading.Certain(only) : Reading.Impossible<LocalDate>("No such day.");
            return Either(dayFirst, monthFirst, written, near);
        }
        if (written is { Year: null, Month: not null, Day: not null } && near is null) return Reading.Doubtful<LocalDate>(default, "No year is written.");
        if (written is { Month: { } month, Day: { } day }) return Dated(month, day, written, near, notAfter) is { } dated ? Reading.Certain(dated) : Reading.Impossible<LocalDate>("No such day.");
        if (near is not { } context) return Reading.Nothing<LocalDate>();
        if (written.Day is { } dayOfMonth) return DayOfMonth(dayOfMonth, written.DayOfWeek, context, onward);
        if (written.DayOfWeek == IsoDayOfWeek.None) return Reading.Nothing<LocalDate>();
        // The first weekday of a text is the one on or before its known day; later ones follow each other.
        if (!onward) return Reading.Certain(context.PlusDays(-(((int)context.DayOfWeek - (int)written.DayOfWeek + 7) % 7)));
        return Reading.Certain(context.PlusDays(((int)written.DayOfWeek - (int)context.DayOfWeek + 7) % 7));
    }

    // Which of two readings the weekday, or the day before in the source, settles.
    private static Reading<LocalDate> Either(LocalDate? dayFirst, LocalDate? monthFirst, DateWritten written, LocalDate? near)
    {
        if (dayFirst is null || monthFirst is null) return (dayFirst ?? monthFirst) is { } one ? Reading.Certain(one) : Reading.Impossible<LocalDate>("No such day.");
        if (written.DayOfWeek != IsoDayOfWeek.None && (dayFirst.Value.DayOfWeek == written.DayOfWeek) != (monthFirst.Value.DayOfWeek == written.DayOfWeek))
            return Reading.Certain(dayFirst.Value.DayOfWeek == written.DayOfWeek ? dayFirst.Value : monthFirst.Value);
        if (near is { } context)
        {
            var (a, b) = (Math.Abs(Period.DaysBetween(context, dayFirst.Value)), Math.Abs(Period.DaysBetween(context, monthFirst.Value)));
            if (a <= 10 && b > 40) return Reading.Certain(dayFirst.Value);
            if (b <= 10 && a > 40) return Reading.Certain(monthFirst.Value);
        }
        return Reading.Doubtful(dayFirst.Value, "Day and month could change places.", "day first", "month first");
    }

    private static LocalDate? Dated(int month, int day, DateWritten written, LocalDate? near, LocalDate? notAfter)
    {
        if (month is < 1 or > 12 || day is < 1 or > 31) return null;
        if (written.Year is { } year) return Made(year, month, day);
        if (near is not { } context) return null;
        LocalDate? best = null;
        foreach (var candidate in new[] { context.Year - 1, context.Year, context.Year + 1 })
        {
            if (Made(candidate, month, day) is not { } made || (notAfter is { } last && made > last)) continue;
            if (best is null || Math.Abs(Period.DaysBetween(context, made)) < Math.Abs(Period.DaysBetween(context, best.Value))) best = made;
        }
        return best;
    }

    private static LocalDate? Made(int year, int month, int day) =>
        year is >= 1900 and <= 2200 && day <= CalendarSystem.Iso.GetDaysInMonth(year, month) ? new LocalDate(year, month, day) : null;

    private static Reading<LocalDate> DayOfMonth(int day, IsoDayOfWeek weekday, LocalDate near, bool onward)
    {
        LocalDate? best = null;
        var bestDistance = int.MaxValue;
        for (var shift = -2; shift <= 2; shift++)
        {
            var month = near.PlusMonths(shift);
            if (Made(month.Year, month.Month, day) is not { } made) continue;
            var ahead = Period.DaysBetween(near, made);
            var distance = (ahead < 0 ? -ahead * (onward ? 3 : 1) : ahead) + (weekday != IsoDayOfWeek.None && made.DayOfWeek != weekday ? 100 : 0);
            if (distance < bestDistance) (best, bestDistance) = (made, distance);
        }
        return best is { } found ? Reading.Certain(found) : Reading.Impossible<LocalDate>($"No month near has a day {day}.");
    }
}
