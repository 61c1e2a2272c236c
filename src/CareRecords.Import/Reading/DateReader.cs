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
internal static class DateReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as a date as written; <see cref="Outcome.Nothing"/> when other words stand beside it.</summary>
    public static Reading<DateWritten> Read(string text) => throw new NotImplementedException(text);

    /// <summary>The orders of day and month under which every one of the dates exists and day of week (where written) agrees; ordered by fit.</summary>
    public static IReadOnlyList<DateOrder> OrdersThatFit(IEnumerable<DateWritten> dates, int yearHint) => throw new NotImplementedException(yearHint.ToString(System.Globalization.CultureInfo.InvariantCulture));

    /// <summary>
    /// Settles a date. A year not written is the one that puts the date nearest to <paramref name="near"/>; a weekday alone is the nearest such day
    /// on or after <paramref name="near"/>. <see cref="Outcome.Doubtful"/> when day and month could change places and no order is given.
    /// </summary>
    /// <param name="written">As written.</param>
    /// <param name="order">The source's order; null when not known.</param>
    /// <param name="near">A day known to be near (the row above, the option, the file's date); null when none is.</param>
    public static Reading<LocalDate> Settle(DateWritten written, DateOrder? order, LocalDate? near) => throw new NotImplementedException(written.ToString());
}
