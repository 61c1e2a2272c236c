using CareRecords.Import.Notes;
using NodaTime;

namespace CareRecords.Import.Tests.Notes;

/// <summary>
/// The months of every set as files through the whole import: whether a text is notes or a table is decided there, and ordinary notes with commas ("Puffer 6.15, clapped 6.30, bases 4")
/// were once taken for tables.
/// </summary>
public sealed class WholeProgramTests
{
    // Exports, and drawn tables that are all of their text.
    private static readonly string[] Tables = ["nh03", "ne06", "nc05", "e03"];

    // Files are copied and sent: the day on which they were last saved may be long after their days, and most notes write no year.
    private static readonly LocalDate LongAfter = new(2026, 12, 1);

    [Theory]
    [InlineData(false, 0.998, 30)]
    [InlineData(true, 0.96, 520)]
    public void NotesOfFamilies_AreReadAsNotesAndAsWellAsByTheirReader(bool savedLongAfter, double share, int moreSwallowed)
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
                    if ((savedLongAfter ? LongAfter : sample.Context.NotAfter) is { } last) File.SetLastWriteTimeUtc(path, last.AtMidnight().PlusHours(12).ToDateTimeUnspecified());
                    var log = Importer.Import([path], new ImportOptions { MachineZone = "UTC", Zone = "UTC", DateOrder = savedLongAfter ? null : sample.Context.DateOrder });
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
        Assert.True(whole.Found >= direct.Found * share && whole.True >= direct.True * share && whole.Swallowed <= direct.Swallowed + moreSwallowed, $"through the program {whole}, by the reader {direct}");
    }

    [Theory]
    [InlineData("Mon 13 Oct\nclapped 7am, bottoms 3 min each side\n", "2025-10-13")]
    [InlineData("Night Tues 4 / Wed 5 Nov\n22.10 clapped bottoms 3 min each side\n", "2025-11-04")]
    [InlineData("Copybook, week of Monday 10th November\nMonday 10th\nclapped 7am, bottoms 3 min each side\n", "2025-11-10")]
    [InlineData("13 Oct\nclapped 7am, bottoms 3 min each side\n", "2026-10-13")]
    public void DayWithoutAYear_IsOfTheYearThatItsWeekdayTells(string text, string day) =>
        Assert.Equal(day, Assert.IsType<CareRecords.Records.Session>(Assert.Single(Imported(text).Entries)).Start!.Stated.Date.ToString("uuuu-MM-dd", null));

    [Theory]
    [InlineData("0630 hours", 6, 30)]
    [InlineData("1830 hours", 18, 30)]
    [InlineData("0630 hrs", 6, 30)]
    public void FourFiguresBeforeHours_AreATime(string written, int hour, int minute) =>
        Assert.Equal(new LocalTime(hour, minute), Imported($"3 March 2025\nClapping at {written}, left lower 3 min\n").Entries[0].Start!.Stated.TimeOfDay);

    [Theory]
    [InlineData("clapped 7am, bottoms 3 min each side, tops 2 min each side\nclapped 6pm, 5 and 4\n", "L lower 5, R lower 5, L upper 4, R upper 4")]
    public void TwoNumbers_AreOfTheLowerAndTheUpperChestInTheOrderToldBefore(string text, string areas)
    {
        var last = Assert.IsType<CareRecords.Records.Session>(Imported("3 March 2025\n" + text).Entries[^1]);
        Assert.Equal(areas, string.Join(", ", last.Areas.Select(a => FormattableString.Invariant($"{a.Side.ToString()[0]} {a.Area.ToString().ToLowerInvariant()} {a.Minutes}"))));
        Assert.NotNull(last.HowRead);
    }

    [Fact]
    public void LinesWithAsManyCommas_AreNotes() => Assert.Equal("notes", Imported("3 March 2025\nPuffer 6.15am, clapped 6.30am, bases 3 each\nNursery all day, tired, no temp\nClapped 6pm, bases 3 each, tops 2\n").Inputs[0].Kind);

    [Fact]
    public void TableOfTheContract_IsATableThoughItsRowsEndEarly() => Assert.Equal("table", Imported("checked,spo2,pulse,oxygen,phase,note\n2025-03-03 07:00,95\n2025-03-03 12:00,96,110\n2025-03-03 18:00,94\n").Inputs[0].Kind);

    private static CareRecords.Records.CareLog Imported(string text)
    {
        var folder = Directory.CreateTempSubdirectory("carerecords-notes");
        try
        {
            var path = Path.Combine(folder.FullName, "notes.txt");
            File.WriteAllText(path, text);
            File.SetLastWriteTimeUtc(path, LongAfter.AtMidnight().PlusHours(12).ToDateTimeUnspecified());
            return Importer.Import([path], new ImportOptions { MachineZone = "UTC", Zone = "UTC" });
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
