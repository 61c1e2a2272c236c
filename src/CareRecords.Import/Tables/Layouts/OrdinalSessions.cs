using System.Text.RegularExpressions;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Headings that count a day's sessions without naming them: "1st time | 1st mins | 2nd time | 2nd mins". Minutes beside each time are of sessions, where no other heading names any.
/// </summary>
internal static partial class OrdinalSessions
{
    private const int Fewest = 2;

    /// <summary>The rows with such headings named; the words written stay as they are.</summary>
    public static IReadOnlyList<GridRow> Named(IReadOnlyList<GridRow> rows)
    {
        for (var i = 0; i < rows.Count; i++)
        {
            var counted = rows[i].Cells.Select(c => c.Kind == CellKind.Text ? Counted().Match(c.Text.Trim()) : Match.Empty).ToList();
            var both = counted.Where(m => m.Success).GroupBy(m => m.Groups[1].Value, StringComparer.OrdinalIgnoreCase).Count(g => g.Any(m => m.Groups[2].Success) && g.Any(m => m.Groups[3].Success));
            if (both < Fewest || rows[i].Cells.Where((c, k) => !counted[k].Success && c.Kind == CellKind.Text).Any(c => HeadingReader.IsOfSessions(c.Text))) continue;
            var names = counted.Where(m => m.Success).Select(m => m.Groups[1].Value).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
            var cells = rows[i].Cells.Select((c, k) => counted[k].Success ? Cell.Of(FormattableString.Invariant($"physio {names.FindIndex(n => n.Equals(counted[k].Groups[1].Value, StringComparison.OrdinalIgnoreCase)) + 1} {(counted[k].Groups[2].Success ? "time" : "mins")}")) : c);
            return [.. rows.Take(i), rows[i] with { Cells = [.. cells], Written = rows[i].Written ?? rows[i].Text }, .. rows.Skip(i + 1)];
        }

        return rows;
    }

    [GeneratedRegex(@"^(1st|2nd|3rd|4th|5th|first|second|third|fourth|fifth|[1-5])\s+(?:(time|at|start|when)|(min|mins|minutes|how long|length))\.?$", RegexOptions.IgnoreCase)]
    private static partial Regex Counted();
}
