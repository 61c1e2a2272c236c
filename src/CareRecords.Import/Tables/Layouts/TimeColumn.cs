using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Finds the column with the times of the rows where its heading, in a word or language not known here, does not tell.</summary>
internal static class TimeColumn
{
    /// <summary>The block, with a column without a known heading named as the time where most of its cells are clock times and no other column has them.</summary>
    public static Block Named(Block block)
    {
        if (block.IsAcross || block.Columns.Any(c => c.Role is Role.Time or Role.Start or Role.End or Role.Session or Role.Feed or Role.FeedStart or Role.FeedEnd or Role.Dose)) return block;
        if (Enumerable.Range(0, block.Columns.Count).Any(i => block.Columns[i].Role == Role.Date && block.Rows.Any(r => CellTimes.Read(r[i].Cell).Clock is not null))) return block;
        for (var i = 0; i < block.Columns.Count; i++)
        {
            if (block.Columns[i].Role is not Role.Unknown) continue;
            var filled = block.Rows.Select(r => r[i].Cell).Where(c => !c.IsEmpty).ToList();
            var times = filled.Count(c => CellTimes.Read(c) is { Date: null, Clock: not null } or { Date: null, Outcome: Outcome.Impossible });
            if (times < 2 || times * 5 < filled.Count * 4) continue;
            var at = i;
            return block with { Columns = [.. block.Columns.Select((c, n) => n == at ? c with { Role = Role.Time } : c)] };
        }

        return block;
    }
}
