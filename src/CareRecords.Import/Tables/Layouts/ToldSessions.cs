using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>A session that the words of a row tell ("Full, 4 min on the lowers" under "What we did") takes the end written in its own column, and the readings of before and after beside it are of its start and end.</summary>
internal static class ToldSessions
{
    /// <summary>Completes the entries of the row, from the given place on.</summary>
    public static void Complete(BlockReading reading, RowTimesReader times, BlockRow row, int from, RowWhen when)
    {
        if (when.Start is not { IsExact: true } start) return;
        var entries = reading.Into.Entries;
        var at = Enumerable.Range(from, entries.Count - from).Where(i => entries[i] is Session s && s.Start?.Stated == start.Stated).ToList();
        if (at is not [var only]) return;
        var session = (Session)entries[only];
        var column = Enumerable.Range(0, reading.Block.Columns.Count).FirstOrDefault(c => reading.Block.Columns[c].Role is Role.End or Role.SessionEnd && !row[c].Cell.IsEmpty && !reading.IsUsed(row[c]), -1);
        if (session.End is null && (when.End ?? (column < 0 ? null : times.EndAfter(start, row[column], RowTimesReader.MostHours(TableKind.Sessions)))) is { } end && end.Earliest >= start.Stated)
        {
            var ended = session with { End = end };
            reading.Replace(only, session, ended);
            session = ended;
        }

        // "Full", which the key explains, beside the times of the session.
        if (session is { Areas.Count: 0, MinutesWritten: null } && row.Cells.FirstOrDefault(c => c.Cell.Kind == CellKind.Text && reading.Context.Words.MeaningOf(c.Cell.Text.Trim()) is not null) is { IsNone: false } word
            && AreasReader.Read(word.Cell.Text, reading.Context.Words) is { Outcome: Outcome.Certain, Value.Areas: { Count: > 1 } areas } && areas.All(a => a.Minutes is not null))
        {
            var full = session with { Areas = areas, HowRead = session.HowRead ?? $"'{word.Cell.Words}' read as the key explains it." };
            reading.Replace(entries.IndexOf(session), session, full);
            session = full;
        }

        for (var i = from; i < entries.Count; i++)
            if (entries[i] is Check { Start: { IsExact: true } measured, Phase: CheckPhase.Before or CheckPhase.After } check && measured.Stated == start.Stated)
                entries[i] = check with { Start = Notes.TimesOfEvents.Borrowed(check.Phase == CheckPhase.After ? (session.End ?? start).Stated : start.Stated, check.Phase) };
    }
}
