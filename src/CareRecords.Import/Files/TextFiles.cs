using CareRecords.Import.Accounting;
using CareRecords.Import.Notes;
using CareRecords.Import.Tables;
using CareRecords.Records;

namespace CareRecords.Import.Files;

/// <summary>Reads a text file: as notes, or as a delimited table.</summary>
internal static class TextFiles
{
    private const int LinesToJudgeBy = 60;

    /// <summary>What the file gives.</summary>
    public static FileReading Read(SourceFile file, SourceContext context, Action<long>? everyRow)
    {
        using var lines = new OpenLines(file);
        var first = lines.Again().Take(LinesToJudgeBy).ToList();
        var delimiter = Delimiters.Find(first);
        var place = new Place(file.Found.Name, null);
        if (file.MayBeNotes && !(delimiter is { } d && TableShape.IsTable(first, d)))
        {
            if (FixedWidthRows.Read(first) is null || FixedWidthRows.Read([.. lines.Again()]) is not { } rows) return Notes(file, lines, context);
            var linedUp = TableReader.Read(place, () => rows, context with { NotAfter = file.NotAfter }, everyRow);
            return new FileReading([linedUp], new InputFile(file.Found.Name, "table", file.Survey.Sha256, $"{file.Survey.EncodingName}, cells lined up with spaces"));
        }

        var separator = delimiter ?? ',';
        var part = TableReader.Read(place, () => ReadAhead.Of(DelimitedRows.Read(lines.Again(), separator)), context with { NotAfter = file.NotAfter }, everyRow);
        return new FileReading([part], new InputFile(file.Found.Name, "table", file.Survey.Sha256, $"{file.Survey.EncodingName}, cells separated by {NameOf(separator)}"));
    }

    private static FileReading Notes(SourceFile file, OpenLines lines, SourceContext context)
    {
        var text = new SourceText(file.Found.Name, [.. lines.Again()]);
        var reading = NotesReader.Read(text, context.ForNotes(file.Found.Name, file.NotAfter));
        var part = new Gathered { File = file.Found.Name };
        part.Take(reading);
        for (var i = 0; i < reading.Fates.Count; i++) part.Ledger.Mark(i + 1, 1, reading.Fates[i]);
        return new FileReading([part], new InputFile(file.Found.Name, "notes", file.Survey.Sha256, file.Survey.EncodingName));
    }

    private static string NameOf(char delimiter) => delimiter switch
    {
        '\t' => "tabs",
        ';' => "semicolons",
        '|' => "upright bars",
        _ => "commas",
    };

    // The lines of a file, from its start as often as they are asked for; closed together.
    private sealed class OpenLines(SourceFile file) : IDisposable
    {
        private readonly List<TextReader> _open = [];

        public IEnumerable<string> Again()
        {
            var reader = file.OpenText();
            _open.Add(reader);
            return PhysicalLines.Read(reader);
        }

        public void Dispose() => _open.ForEach(r => r.Dispose());
    }
}
