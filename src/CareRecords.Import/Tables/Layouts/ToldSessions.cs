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
        var only = -1;
        for (var i = from; i < entries.Count; i++)
        {
            if (entries[i] is not Session of || of.Start?.Stated != start.Stated) continue;
            if (only >= 0) return;
            only = i;
        }

        if (only < 0) return;
        var session = (Session)entries[only];
        if (session.End is null && (when.End ?? OwnEnd(reading, times, row, start)) is { } end && end.Earliest >= start.Stated)
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
                entries[i] = check with { Start = Notes.TimesOfEvents.OfSession(start.Stated, session.End, check.Phase) };
    }

    private static UncertainTime? OwnEnd(BlockReading reading, RowTimesReader times, BlockRow row, UncertainTime start)
    {
        for (var c = 0; c < reading.Block.Columns.Count; c++)
            if (reading.Block.Columns[c].Role is Role.End or Role.SessionEnd && !row[c].Cell.IsEmpty && !reading.IsUsed(row[c])) return times.EndAfter(start, row[c], RowTimesReader.MostHours(TableKind.Sessions));
        return null;
    }
}
