using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Takes the day out of headings that hold it ("Mon 3 Nov physio | Mon 3 Nov sats | Tue 4 Nov physio"): a row of days over a row of what stands under each.</summary>
internal static class DaysInHeadings
{
    private const int FewestCells = 4;
    private const int LongestDay = 4;
    private const int LongestHeading = 40;

    /// <summary>The rows with such a heading written in two; the line stays the same.</summary>
    public static IReadOnlyList<GridRow> Apart(IReadOnlyList<GridRow> rows)
    {
        List<GridRow>? apart = null;
        for (var i = 0; i < rows.Count; i++)
        {
            if (rows[i].Cells.Length > FewestCells && Split(rows[i]) is var (days, under))
            {
                apart ??= [.. rows.Take(i)];
                apart.Add(days);
                apart.Add(under);
            }
            else apart?.Add(rows[i]);
        }

        return apart ?? rows;
    }

    private static (GridRow Days, GridRow Under)? Split(GridRow row)
    {
        if (row[0].Kind is not (CellKind.Text or CellKind.Empty) || CellTimes.Read(row[0]).Date is not null) return null;
        var parts = row.Cells.Select((c, i) => i == 0 || c.Kind != CellKind.Text || c.Text.Length > LongestHeading ? null : Parts(c.Text.Trim())).ToList();
        var found = parts.OfType<(string Day, string Heading)>().ToList();
        if (found.Count < FewestCells || found.Count * 5 < row.Cells.Skip(1).Count(c => !c.IsEmpty) * 4 || found.Select(f => f.Day).Distinct(StringComparer.OrdinalIgnoreCase).Count() < 2) return null;
        var (days, under, last) = (new Cell[row.Cells.Length], new Cell[row.Cells.Length], "");
        for (var i = 0; i < row.Cells.Length; i++)
        {
            (days[i], under[i]) = (i == 0 ? row[0] : Cell.Empty, i == 0 ? Cell.Empty : row[i]);
            if (parts[i] is not (var day, var heading)) continue;
            days[i] = string.Equals(day, last, StringComparison.OrdinalIgnoreCase) ? Cell.Empty : Cell.Of(day);
            (under[i], last) = (Cell.Of(heading), day);
        }

        return (row with { Cells = days }, row with { Cells = under });
    }

    // The longest run of words at either end that is a day, and a known heading or part of the day beside it.
    private static (string Day, string Heading)? Parts(string text)
    {
        var words = text.Split([' ', '\n', ',', ':'], StringSplitOptions.RemoveEmptyEntries);
        for (var length = Math.Min(LongestDay, words.Length - 1); length > 0; length--)
            foreach (var front in new[] { true, false })
            {
                var day = string.Join(' ', front ? words[..length] : words[^length..]);
                var heading = string.Join(' ', front ? words[length..] : words[..^length]).Trim('-', '–', ' ');
                if (heading.Length == 0 || CellTimes.Read(Cell.Of(day)) is not { Outcome: Outcome.Certain, Date: { } date, Clock: null } || date.DaysFromContext is not null) continue;
                if (PartOfRow.Read(heading) is not null || HeadingReader.Read(heading) is { IsKnown: true } or { Phase: not Records.CheckPhase.None }) return (day, heading);
            }

        return null;
    }
}
