using System.Globalization;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Reads what a chart planned beside what was done: under MORNING and EVENING the columns "Plan | Done | Time". A tick is the plan's minutes, at the time beside it; a tick with a
/// number is as many minutes; a cross was not done. Each part of the day becomes one column of sessions ("7.10 LL 5 RL 5 LU 5 RU 5"); what was only planned is no record.
/// </summary>
internal static class PlannedColumns
{
    /// <summary>The block with a column of sessions for each such part; as it is where it has none.</summary>
    /// <param name="block">The table.</param>
    /// <param name="places">The places that its words say each number of minutes is of; empty where they say none.</param>
    public static Block Joined(Block block, IReadOnlyList<AreaName> places)
    {
        if (block.IsAcross) return block;
        var groups = Enumerable.Range(0, block.Columns.Count).GroupBy(i => block.Columns[i].Group).Select(g => Of(block, [.. g])).OfType<Part>().ToList();
        if (groups.Count == 0) return block;
        return block with
        {
            Columns = [.. block.Columns.Select((c, i) => groups.Find(g => g.Done == i) is not null ? c with { Role = Role.Session, Areas = [], Part = PartOfRow.Read(c.Over), Half = PartOfRow.Half(PartOfRow.Read(c.Over)) } : groups.Exists(g => g.Plan == i || g.Time == i) ? c with { Role = Role.Ignore } : c)],
            Rows = [.. block.Rows.Select(r => Joined(r, groups, places))],
        };
    }

    /// <summary>True for the heading of what was planned.</summary>
    public static bool IsPlanned(string heading) => heading.Trim().ToLowerInvariant() is "plan" or "planned" or "the plan" or "target" or "set" or "due" or "prescribed" or "should be";

    /// <summary>True for the heading of what was done.</summary>
    public static bool IsDone(string heading) => heading.Trim().ToLowerInvariant() is "done" or "done?" or "actual" or "actually done" or "did" or "given" or "what we did";

    private sealed record Part(int Plan, int Done, int Time);

    private static Part? Of(Block block, List<int> columns)
    {
        int Headed(Func<string, bool> fits) => columns.FindIndex(i => fits(block.Columns[i].Own)) is >= 0 and var at ? columns[at] : -1;
        var (plan, done, time) = (Headed(IsPlanned), Headed(IsDone), Headed(h => h.Trim().ToLowerInvariant() is "time" or "at" or "when"));
        return plan >= 0 && done >= 0 && time >= 0 && block.Rows.Select(r => r[plan].Cell).Where(c => !c.IsEmpty).ToList() is { Count: > 0 } planned && planned.Count(c => MinutesReader.Read(c.Text.Trim()).Outcome == Outcome.Certain) * 3 >= planned.Count * 2
            ? new Part(plan, done, time) : null;
    }

    private static BlockRow Joined(BlockRow row, List<Part> parts, IReadOnlyList<AreaName> places)
    {
        var cells = row[0].Row.Cells.ToArray();
        foreach (var part in parts)
            if (row[part.Done].Column is >= 0 and var at && at < cells.Length && !row[part.Done].Cell.IsEmpty && Told(row[part.Plan].Cell, row[part.Done].Cell.Text.Trim(), row[part.Time].Cell, places) is { } told)
                cells[at] = Cell.Of(told);
        var joined = row[0].Row with { Cells = cells };
        return new BlockRow([.. row.Cells.Select(c => c with { Row = joined })]);
    }

    // Null for what is neither a tick nor a number: it stays as it stands.
    private static string? Told(Cell plan, string done, Cell time, IReadOnlyList<AreaName> places)
    {
        var number = done.TrimStart('✓', '✔', '√', '☑', '✅', ' ');
        var ticked = SmallWords.ReadYesNo(done) == true;
        if (!ticked && (number.Length == 0 || !number.All(c => char.IsAsciiDigit(c) || c is '.' or ',' or '½'))) return null;
        var minutes = ticked ? plan.Words : number;
        if (minutes is null || !MinutesReader.Read(minutes.Trim()).TryGet(out var each)) return null;
        var bare = each.Minutes.ToString("0.##", CultureInfo.InvariantCulture);
        var areas = places.Count == 0 ? $"{bare} min" : string.Join(' ', places.Select(p => $"{(p.Side == Side.Left ? "L" : "R")}{(p.Area == ChestArea.Lower ? "L" : "U")} {bare}"));
        return time.IsEmpty ? areas : $"{CellTimes.Shown(time)} {areas}";
    }
}
