using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>The year that a sheet's name, its file's name or the words above its tables give to dates written without one.</summary>
internal static class TitleYear
{
    private const int TitleRows = 8;

    /// <summary>The middle of the one year named (each month of it is nearer than of its neighbours); null when none is named, or more than one.</summary>
    public static LocalDate? Of(Place place, IReadOnlyList<GridRow> rows)
    {
        var years = rows.Take(TitleRows).SelectMany(r => r.Cells).Where(c => c.Kind == CellKind.Text).Select(c => c.Text)
            .Append(place.Sheet ?? "").Append(place.File).SelectMany(Years).Distinct().ToList();
        return years.Count == 1 ? new LocalDate(years[0], 7, 1) : null;
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
