using CareRecords.Import.Tables.Layouts;

namespace CareRecords.Import.Tables;

/// <summary>Tells a table saved as a text from notes.</summary>
internal static class TableShape
{
    // Sentences with commas hold long cells where a heading would stand.
    private const int LongestHeading = 32;

    // A heading names a column; more words than these tell of something.
    private const int MostWordsOfHeading = 4;

    // Prose has commas and semicolons too.
    private const string MarksOfProse = ",;";

    /// <summary>
    /// True when a heading row stands within the lines and most of the filled lines below it hold the separator: as often as the heading where it is a mark
    /// that sentences have too ("Puffer 6.15, clapped 6.30, bases 4" is no heading, and the lines below it have their commas as they come).
    /// </summary>
    public static bool IsTable(IReadOnlyList<string> lines, char delimiter)
    {
        var rows = NumberedHeadings.Plain([.. DelimitedRows.Read(lines, delimiter).Where(r => !r.IsBlank)]).ToList();
        var ofProse = MarksOfProse.Contains(delimiter, StringComparison.Ordinal);
        var heading = rows.FindIndex(r => CanonicalHeader.Read(r) is not null || (r.Cells.Length >= 3 && r.Cells.All(c => c.Text.Length <= LongestHeading) && !(ofProse && r.Cells.Any(TellsSomething)) && RowShape.Headings(r) is not null));
        if (heading < 0) return false;
        var below = rows.Skip(heading + 1).Where(r => !RowShape.IsRule(r)).ToList();
        if (IsDrawn(rows[heading].Text, delimiter)) return HasDays(rows[heading]) && below.Count(r => Math.Abs(r.Cells.Length - rows[heading].Cells.Length) <= 1) * 4 >= below.Count * 3;
        return ofProse && CanonicalHeader.Read(rows[heading]) is null ? heading <= below.Count && below.Count(r => r.Cells.Length == rows[heading].Cells.Length) * 2 > below.Count : below.Count(r => r.Cells.Length > 1) * 5 >= below.Count * 3;
    }

    // "time | what | sats": drawn by hand among notes, which the notes reader knows with the days and sentences around it, unless all of the text is the table.
    private static bool IsDrawn(string heading, char delimiter) => delimiter == '|' && heading.Contains(" | ", StringComparison.Ordinal);

    private static bool HasDays(GridRow heading) => heading.Cells.Any(c => HeadingReader.Read(c.Text).Role == Role.Date);

    private static bool TellsSomething(Cell cell) => cell.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length > MostWordsOfHeading || FreeWords.HasClock(cell.Text) || cell.Text.TrimEnd().EndsWith('.');
}
