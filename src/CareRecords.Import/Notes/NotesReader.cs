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
    /// <summary>Reads a whole text file. The work grows with its length; memory beyond the records holds one day's lines.</summary>
    public static NotesReading Read(SourceText text, ReadingContext context) => new NotesRun(text, context).Read();

    /// <summary>
    /// Reads one free-text cell holding any number of events of one day; the records carry <paramref name="source"/>.
    /// <see cref="NotesReading.Fates"/> holds one fate: the cell's.
    /// </summary>
    public static NotesReading ReadCell(SourceLine source, CellContext cell, ReadingContext context)
    {
        var words = cell.Heading is { Length: > 0 } heading ? heading + ": " + source.Text : source.Text;
        if (cell.Time is { } time) words = time.Time.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture) + (time is { Time.Hour: 12, Half: HalfOfDay.Pm } ? "pm " : " ") + words;
        words = words.ReplaceLineEndings(" / ");
        var run = new NotesRun(new SourceText(source.File, [words]), context with { Date = cell.Date }) { IgnoresHeadings = true };
        var reading = run.Read();
        return reading with
        {
            Entries = [.. reading.Entries.Select(e => e with { Sources = [source] })],
            Omitted = [.. reading.Omitted.Select(o => o with { Source = source })],
            FamilyQuestions = [.. reading.FamilyQuestions.Select(_ => source)],
            SetAside = [.. reading.SetAside.Select(s => s with { Source = source })],
            Problems = [.. reading.Problems.Select(p => p with { Source = source, Question = p.Question?.Replace($"{source.File}:1", $"{source.Place}", StringComparison.Ordinal) })],
            Questions = reading.Questions.ToDictionary(q => q.Key.Replace($"{source.File}:1", $"{source.Place}", StringComparison.Ordinal), q => q.Value),
        };
    }
}
