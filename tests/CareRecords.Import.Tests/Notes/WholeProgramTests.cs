using CareRecords.Import.Notes;

namespace CareRecords.Import.Tests.Notes;

/// <summary>
/// The months of every set as files through the whole import: whether a text is notes or a table is decided there, and ordinary notes with commas ("Puffer 6.15, clapped 6.30, bases 4")
/// were once taken for tables.
/// </summary>
public sealed class WholeProgramTests
{
    // Exports, and drawn tables that are all of their text.
    private static readonly string[] Tables = ["nh03", "ne06", "nc05", "e03"];

    [Fact]
    public void NotesOfFamilies_AreReadAsNotesAndAsWellAsByTheirReader()
    {
        var folder = Directory.CreateTempSubdirectory("carerecords-notes");
        var (direct, whole) = (new ReadingScore(), new ReadingScore());
        var misjudged = new List<string>();
        try
        {
            foreach (var set in Directory.GetDirectories(Path.Combine(AppContext.BaseDirectory, "Notes")).Select(p => Path.GetFileName(p)).Where(n => n != "Examples"))
                foreach (var sample in Samples.Of(set))
                {
                    var path = Path.Combine(folder.FullName, sample.Text.File);
                    File.WriteAllLines(path, sample.Text.Lines);
                    if (sample.Context.NotAfter is { } last) File.SetLastWriteTimeUtc(path, last.AtMidnight().PlusHours(12).ToDateTimeUnspecified());
                    var log = Importer.Import([path], new ImportOptions { MachineZone = "UTC", Zone = "UTC", DateOrder = sample.Context.DateOrder });
                    Assert.True(log.Lines.Balances);
                    if (log.Inputs[0].Kind == "notes" == Tables.Contains(sample.Name)) misjudged.Add(sample.Name);
                    direct.Add(sample.Score());
                    whole.Add(ReadingScore.Of(NotesReader.Read(sample.Text, sample.Context) with { Entries = log.Entries, Problems = [.. log.Problems.Where(p => p.Source.Line is not null)] }, sample.Expected, sample.Asks));
                }
        }
        finally
        {
            folder.Delete(recursive: true);
        }

        Assert.Empty(misjudged);
        Assert.True(whole.Found >= direct.Found * 0.998 && whole.True >= direct.True * 0.998 && whole.Swallowed <= direct.Swallowed + 30, $"through the program {whole}, by the reader {direct}");
    }
}
