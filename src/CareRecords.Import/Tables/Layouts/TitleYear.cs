using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>The year that a sheet's name, its file's name or the words above its tables give to dates written without one.</summary>
internal static class TitleYear
{
    private const int TitleRows = 8;
    private const int FewestWeekdays = 3;
    private const int MostWeekdays = 400;
    private const int YearsBack = 5;

    /// <summary>The middle of the one year named (each month of it is nearer than of its neighbours); null when none is named, or more than one.</summary>
    public static LocalDate? Of(Place place, IReadOnlyList<GridRow> rows)
    {
        var years = rows.Take(TitleRows).SelectMany(r => r.Cells.Where(c => c.Kind == CellKind.Text && (c.Text.Trim().Length > 4 || r.Cells.Count(x => !x.IsEmpty) < 3))).Select(c => c.Text)
            .Append(place.Sheet ?? "").Append(place.File).SelectMany(Years).Distinct().ToList();
        return years.Count == 1 ? new LocalDate(years[0], 7, 1) : null;
    }

    /// <summary>The middle of the one recent year in which the weekdays written beside days without a year are right; null when there is none.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="notAfter">The last day that they can speak of; null when not known.</param>
    public static LocalDate? OfWeekdays(IReadOnlyList<GridRow> rows, LocalDate? notAfter)
    {
        if (notAfter is not { } last) return null;
        var dates = rows.SelectMany(r => r.Cells).Where(c => c.Kind == CellKind.Text && c.Text.Length is > 5 and < 24 && char.IsLetter(c.Text.Trim()[0])).Take(MostWeekdays)
            .Select(c => CellTimes.Read(c).Date).OfType<Reading.DateWritten>().Where(d => d.DayOfWeek != IsoDayOfWeek.None && d.Year is null && (d.Month is not null || d.Second is not null)).Distinct().ToList();
        if (dates.Count < FewestWeekdays) return null;
        var fitting = (from back in Enumerable.Range(0, YearsBack)
                       from order in new[] { DateOrder.DayMonthYear, DateOrder.MonthDayYear }
                       let near = new LocalDate(last.Year - back, 7, 1)
                       let right = dates.Count(d => Reading.DateReader.Settle(d with { DayOfWeek = IsoDayOfWeek.None }, order, near).TryGet(out var day) && day.DayOfWeek == d.DayOfWeek && day <= last)
                       where right * 5 >= dates.Count * 4
                       select near).Distinct().ToList();
        return fitting.Count == 1 ? fitting[0] : null;
    }

    private static IEnumerable<int> Years(string text)
    {
        for (var i = 0; i + 4 <= text.Length; i++)
        {
            var alone = (i == 0 || !char.IsAsciiDigit(text[i - 1])) && (i + 4 == text.Length || !char.IsAsciiDigit(text[i + 4]));
            if (alone && text.AsSpan(i, 4) is ['1', '9', _, _] or ['2', '0', _, _] && int.TryParse(text.AsSpan(i, 4), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var year)) yield return year;
        }
    }
}
