using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>"AM physio at" beside "AM physio": the time of a session in one column or line, and what was done in it in the next.</summary>
internal static class SessionDetails
{
    /// <summary>The block with such words named as details of the session before them.</summary>
    public static Block Beside(Block block)
    {
        for (var i = 0; i + 1 < block.Columns.Count; i++)
        {
            var (time, told) = (block.Columns[i], block.Columns[i + 1]);
            if (time.Role != Role.Session || told.Role != Role.Session || time.Group != told.Group || time.Half != told.Half || time.Part != told.Part) continue;
            var cells = block.Rows.Select(r => (Time: r[i].Cell, Told: r[i + 1].Cell)).ToList();
            // Nobody writes a time in the second: each of its words needs one from the first.
            if (!cells.Exists(c => !c.Told.IsEmpty) || cells.Exists(c => !c.Told.IsEmpty && (CellTimes.Read(c.Told).Clock is not null || FreeWords.HasClock(c.Told.Text)))) continue;
            if (!cells.Exists(c => !c.Time.IsEmpty) || cells.Exists(c => !c.Time.IsEmpty && CellTimes.Read(c.Time) is not { Outcome: Outcome.Certain, Clock: not null } && c.Time.Text.Any(char.IsAsciiDigit))) continue;
            var at = i + 1;
            block = block with { Columns = [.. block.Columns.Select((c, n) => n == at ? c with { Role = Role.Detail, Own = "areas" } : c)] };
            i++;
        }

        return block;
    }
}
