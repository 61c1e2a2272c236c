using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>The day or month that the words above a table, or the sheet's or file's name, give to days written without one ("Mon", "3rd").</summary>
internal static class TitleDay
{
    private const int TitleRows = 8;
    private const int LongestDate = 4;

    private static readonly string[] Months12 = ["january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december"];

    /// <summary>
    /// The first day that the table can hold: of "week beginning 3 March 2025" that day, of "week ending" six days before, of "March 2025" the first.
    /// Null when nothing says so.
    /// </summary>
    public static LocalDate? Of(Place place, IReadOnlyList<GridRow> rows, DateOrder? order, LocalDate? year)
    {
        var texts = Titles(place, rows);
        var days = rows.Take(TitleRows).Where(r => r.Cells.Count(c => !c.IsEmpty) <= 2).SelectMany(r => r.Cells).Where(c => c.Kind is CellKind.Date).Select(c => (LocalDate?)c.At.Date);
        return texts.Select(t => Day(t, order, year)).Concat(days).FirstOrDefault(d => d is not null) ?? texts.Select(t => Month(t, year)).FirstOrDefault(d => d is not null);
    }

    /// <summary>The months that the titles, the sheet's name or the file's name write as words.</summary>
    public static IReadOnlyList<int> Months(Place place, IReadOnlyList<GridRow> rows) =>
        [.. Titles(place, rows).SelectMany(Lexicon.Split).Select(MonthOf).Where(m => m > 0).Distinct()];

    /// <summary>
    /// The day that a sheet is named after: "3 Nov" itself, "Mon" or "3rd" counted from the week or month that is known, "Day 2" from its first day.
    /// Null when the name is none.
    /// </summary>
    public static LocalDate? OfSheet(string? sheet, DateOrder? order, LocalDate? year, LocalDate? from)
    {
        if (sheet is null) return null;
        if (Day(sheet, order, year) is { } whole) return whole;
        if (from is not { } first) return null;
        var words = Lexicon.Split(sheet);
        if (words is ["day", { Length: <= 2 } number] && int.TryParse(number, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var count) && count > 0) return first.PlusDays(count - 1);
        return DateReader.Read(sheet) is { Outcome: Outcome.Certain, Value: { First: null, Month: null } written } && DateReader.Settle(written, order, first, null, true).TryGet(out var day) ? day : null;
    }

    /// <summary>The day that the words directly above a table name; null when they name none.</summary>
    public static LocalDate? Above(Block block, DateOrder? order, LocalDate? year) => block.Titles.Reverse().Select(t => Day(t, order, year)).FirstOrDefault(d => d is not null);

    /// <summary>The day that a line of its own names ("Date: 4 March 2025"); null when it names none, or could be read in two ways.</summary>
    public static LocalDate? InLine(string text, LocalDate? year = null) => Day(text, null, year);

    private static List<string> Titles(Place place, IReadOnlyList<GridRow> rows) =>
        [.. rows.Take(TitleRows).Where(r => r.Cells.Count(c => !c.IsEmpty) <= 2).SelectMany(r => r.Cells).Where(c => c.Kind == CellKind.Text).Select(c => c.Text), .. rows.Take(TitleRows).Where(BlockFinder.IsDayLine).Select(r => r.Text), .. rows.Take(TitleRows).Where(r => r.Cells.Length > 2 && (IsMonth(r[0].Text) || r[0].Kind == CellKind.Text && WeekBegins(r[0].Text) && r[0].Text.Any(char.IsAsciiDigit))).Select(r => r[0].Text), place.Sheet ?? "", Path.GetFileNameWithoutExtension(place.File)];

    private static LocalDate? Day(string text, DateOrder? order, LocalDate? year)
    {
        // "Wt 14.2 kg" is no day.
        text = System.Text.RegularExpressions.Regex.Replace(text, @"\b\d+[.,]\d+\s?(?:kg|lbs?|cm|ml|mg|l)\b", "", System.Text.RegularExpressions.RegexOptions.IgnoreCase);
        // "14-15 Feb 2025": the first of the two.
        text = System.Text.RegularExpressions.Regex.Replace(text, @"\b(\d{1,2})(?:st|nd|rd|th)?\s?(?:[-–&/]|into|to|thru|through)\s?(?:[A-Za-z]{2,9}\s)?\d{1,2}(?:st|nd|rd|th)?(?=\s+[A-Za-z]{3})", "$1");
        // "Jan 19-25": of a week, and no year.
        text = System.Text.RegularExpressions.Regex.Replace(text, @"\b([A-Za-z]{3,9}\.?\s\d{1,2})(?:st|nd|rd|th)?\s?[-–]\s?\d{1,2}(?:st|nd|rd|th)?(?=$|[\s,;)])(?!\s*\d{1,2}[:.])", "$1");
        var words = text.Split([' ', ',', ':', '_', '(', ')', '|'], StringSplitOptions.RemoveEmptyEntries);
        for (var length = LongestDate; length > 0; length--)
            for (var at = 0; at + length <= words.Length; at++)
            {
                var phrase = string.Join(' ', words[at..(at + length)]);
                if (!phrase.Any(char.IsAsciiDigit) || DateReader.Read(phrase) is not { Outcome: Outcome.Certain, Value: { } written }) continue;
                if (written is not ({ Month: not null, Day: not null } or { First: not null, Second: not null })) continue;
                if (!DateReader.Settle(written, order, year).TryGet(out var day) && (order is not null || !WeekBegins(text) || OnMonday(written, year) is not { } monday || (day = monday) != monday)) continue;
                return text.Contains("ending", StringComparison.OrdinalIgnoreCase) || text.Contains("w/e", StringComparison.OrdinalIgnoreCase) ? day.PlusDays(-6) : day;
            }

        return null;
    }

    private static bool WeekBegins(string text) => Lexicon.Split(text).Any(w => w is "week" or "commencing" or "beginning" or "starting" or "wc" or "wk");

    // Weeks begin on a Monday or a Sunday: where one reading of "3/11/2025" does, it is that one.
    private static LocalDate? OnMonday(DateWritten written, LocalDate? year)
    {
        var days = new[] { DateOrder.DayMonthYear, DateOrder.MonthDayYear }.Select(o => DateReader.Settle(written, o, year)).Where(r => r.Outcome == Outcome.Certain).Select(r => r.Value)
            .Where(d => d.DayOfWeek is IsoDayOfWeek.Monday or IsoDayOfWeek.Sunday).Distinct().ToList();
        return days is [var only] ? only : null;
    }

    // "Nov 2025" in the corner of a table.
    private static bool IsMonth(string text) => Lexicon.Split(text) is { Count: 1 or 2 } words && MonthOf(words[0]) > 0 && (words.Count == 1 || (words[1].Length == 4 && words[1].All(char.IsAsciiDigit)));

    private static LocalDate? Month(string text, LocalDate? year)
    {
        if (year is not { } known) return null;
        foreach (var word in Lexicon.Split(text))
            if (MonthOf(word) is > 0 and var month)
                return new LocalDate(known.Year, month, 1);
        return null;
    }

    // "mar" and "may" are words too, but here they stand in titles: "mar" is March, "may" alone is May.
    private static int MonthOf(string word) =>
        1 + Array.FindIndex(Months12, m => m == word || (word.Length is 3 or 4 && m.StartsWith(word, StringComparison.Ordinal)));
}
