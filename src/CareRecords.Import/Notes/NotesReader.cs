using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>What a cell's place in its table says about the words in it.</summary>
internal sealed record CellContext
{
    /// <summary>Day of the row.</summary>
    public required LocalDate Date { get; init; }

    /// <summary>The column's heading as written ("Morning physio", "sats before"), read for kind, half of day and phase; null when there is none.</summary>
    public string? Heading { get; init; }

    /// <summary>The time of the row or column, where one is written; null otherwise.</summary>
    public ClockTime? Time { get; init; }
}

/// <summary>Reads free-text notes: day headings, several events a line, and what carries over from line to line.</summary>
internal static class NotesReader
{
    /// <summary>Reads a whole text file.</summary>
    public static NotesReading Read(SourceText text, ReadingContext context) => throw new NotImplementedException(text.File + context);

    /// <summary>
    /// Reads one free-text cell holding any number of events of one day; the records carry <paramref name="source"/>.
    /// <see cref="NotesReading.Fates"/> holds one fate: the cell's.
    /// </summary>
    public static NotesReading ReadCell(SourceLine source, CellContext cell, ReadingContext context) => throw new NotImplementedException(source.Place + cell + context);
}
