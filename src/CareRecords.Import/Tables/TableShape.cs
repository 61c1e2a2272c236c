using CareRecords.Import.Tables.Layouts;

namespace CareRecords.Import.Tables;

/// <summary>Tells a table saved as a text from notes.</summary>
internal static class TableShape
{
    // Sentences with commas hold long cells where a heading would stand.
    private const int LongestHeading = 32;

    /// <summary>
    /// True when a heading row stands within the lines and most of the filled lines below it hold the separator.
    /// Notes full of commas have no heading row.
    /// </summary>
    public static bool IsTable(IReadOnlyList<string> lines, char delimiter)
    {
        var rows = NumberedHeadings.Plain([.. DelimitedRows.Read(lines, delimiter).Where(r => !r.IsBlank)]);
        var heading = rows.ToList().FindIndex(r => CanonicalHeader.Read(r) is not null || (r.Cells.Length >= 3 && r.Cells.All(c => c.Text.Length <= LongestHeading) && RowShape.Headings(r) is not null));
        if (heading < 0) return false;
        var below = rows.Skip(heading + 1).ToList();
        return below.Count(r => r.Cells.Length > 1) * 5 >= below.Count * 3;
    }
}
