using System.Globalization;
using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// "Planned time | What | Done at": the time is the one at which it was done. A tick is the planned time; where a key says that an empty cell was not done, such a row is of something left out.
/// What was only planned is no time of any record.
/// </summary>
internal static partial class DoneTimes
{
    /// <summary>The block with one column of times; as it is where it does not tell both.</summary>
    /// <param name="block">The table.</param>
    /// <param name="around">The words around it.</param>
    public static Block Taken(Block block, IReadOnlyList<string> around)
    {
        var planned = Find(block, Planned());
        var done = Find(block, Done());
        if (block.IsAcross || planned < 0 || done < 0 || !Told(block, planned).All(IsTime) || Told(block, done) is not { Count: > 0 } told || told.Count(c => IsTime(c) || SmallWords.ReadYesNo(c.Text) == true) * 5 < told.Count * 4) return block;
        var kind = block.Columns.ToList().FindIndex(c => c.Role == Role.Kind);
        var emptyIsNone = around.Any(EmptyIsNone().IsMatch);
        return block with
        {
            Columns = [.. block.Columns.Select((c, i) => i == planned ? c with { Role = Role.Ignore } : i == done ? c with { Role = Role.Time } : c)],
            Rows = [.. block.Rows.Select(r => Timed(r, planned, done, emptyIsNone ? kind : -1))],
        };
    }

    private static BlockRow Timed(BlockRow row, int planned, int done, int kind)
    {
        var (plan, when) = (row[planned].Cell, row[done].Cell);
        if (plan.IsEmpty) return row;
        if (SmallWords.ReadYesNo(when.Text) == true && !IsTime(when)) return With(row, done, plan);
        // "6.40" beside 18:30: of the half of the day that the plan is nearer to.
        if (Near(plan, when) is { } settled) return With(row, done, settled);
        if (!when.IsEmpty && SmallWords.ReadYesNo(when.Text) != false || kind < 0 || row[kind].Cell.Words is not { } what) return row;
        return With(With(row, done, plan), kind, Cell.Of(what + " not done"));
    }

    private static Cell? Near(Cell plan, Cell when)
    {
        if (when.Kind != CellKind.Text || CellTimes.Read(when).Clock is not { Start: { Half: HalfOfDay.Unknown } bare, End: null } || bare.Time.Hour is 0 or > 12 || CellTimes.Read(plan).Clock is not { Start.Time: var due }) return null;
        var later = bare.Time.PlusHours(12);
        return Math.Abs(Period.Between(later, due, PeriodUnits.Minutes).Minutes) < Math.Abs(Period.Between(bare.Time, due, PeriodUnits.Minutes).Minutes) ? Cell.Of(later.ToString("HH:mm", CultureInfo.InvariantCulture)) : null;
    }

    private static BlockRow With(BlockRow row, int at, Cell words) => new([.. row.Cells.Select((c, i) => i == at ? c with { Row = c.Row with { Cells = [.. c.Row.Cells.Select((x, n) => n == c.Column ? words : x)] } } : c)]);

    private static int Find(Block block, Regex heading) => block.Columns.ToList().FindIndex(c => heading.IsMatch(c.Own.Trim()));

    private static List<Cell> Told(Block block, int column) => [.. block.Rows.Select(r => r[column].Cell).Where(c => !c.IsEmpty)];

    private static bool IsTime(Cell cell) => CellTimes.Read(cell) is { Outcome: Outcome.Certain, Clock: not null };

    [GeneratedRegex(@"^(?:planned|plan|due|scheduled|should be)(?:\s+(?:time|at|for))?$", RegexOptions.IgnoreCase)]
    private static partial Regex Planned();

    [GeneratedRegex(@"^(?:(?:actually\s+)?(?:done|did|given)(?:\s+(?:at|time|when))|actual(?:\s+time)?)\??$", RegexOptions.IgnoreCase)]
    private static partial Regex Done();

    [GeneratedRegex(@"\b(?:empty|blank)\b.*\b(?:not|didn'?t|wasn'?t|never)\b", RegexOptions.IgnoreCase)]
    private static partial Regex EmptyIsNone();
}
