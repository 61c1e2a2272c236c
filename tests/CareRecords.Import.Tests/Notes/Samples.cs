using System.Text.Json;
using CareRecords.Import.Notes;
using CareRecords.Import.Reading;
using NodaTime.Text;

namespace CareRecords.Import.Tests.Notes;

/// <summary>A sample text with the reading fixed for it.</summary>
internal sealed record Sample(string Name, SourceText Text, ReadingContext Context, IReadOnlyList<ExpectedReading> Expected, IReadOnlyList<int> Asks)
{
    /// <summary>As the program reads: a second time, with the words that the first reading explained.</summary>
    public ReadingScore Score() => ReadingScore.Of(NotesReader.Read(Text, Context with { Words = FamilyWords.None.With(NotesReader.Read(Text, Context).Words) }), Expected, Asks);
}

/// <summary>The samples beside the tests.</summary>
internal static class Samples
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Notes");

    public static IEnumerable<Sample> Lines()
    {
        foreach (var line in File.ReadLines(Path.Combine(Folder, "Examples", "lines.jsonl")))
        {
            var json = JsonDocument.Parse(line).RootElement;
            yield return new Sample(json.GetProperty("id").GetString()!, new SourceText("line.txt", [json.GetProperty("text").GetString()!]), Context(json.GetProperty("dateContext")),
                ExpectedReading.Of(json.GetProperty("expect")), []);
        }
    }

    public static IEnumerable<Sample> Days() => Files(Path.Combine(Folder, "Examples", "days"));

    /// <summary>The months of one set.</summary>
    /// <param name="set">Its folder: "Voices", "Unseen", "Fresh", "Later".</param>
    public static IEnumerable<Sample> Of(string set) => Files(Path.Combine(Folder, set));

    public static IEnumerable<Sample> Files(string folder)
    {
        foreach (var path in Directory.GetFiles(folder).Where(p => Path.GetExtension(p) is ".txt" or ".md").Order(StringComparer.Ordinal))
        {
            var json = JsonDocument.Parse(File.ReadAllText(Path.ChangeExtension(path, "json"))).RootElement;
            var asks = json.TryGetProperty("asks", out var list) ? ExpectedAsks(list) : [];
            yield return new Sample(Path.GetFileNameWithoutExtension(path), new SourceText(Path.GetFileName(path), File.ReadAllText(path).Split('\n').Select(l => l.TrimEnd('\r')).ToList()),
                Context(json.GetProperty("dateContext")), ExpectedReading.Of(json.GetProperty("expect")), asks);
        }
    }

    private static List<int> ExpectedAsks(JsonElement asks) =>
        [.. asks.EnumerateArray().Select(a => int.Parse(a.GetProperty("source").GetString()!.Split(':')[1], System.Globalization.CultureInfo.InvariantCulture))];

    private static ReadingContext Context(JsonElement json) => new()
    {
        DateOrder = json.GetProperty("dateOrder").GetString() switch { "dmy" => DateOrder.DayMonthYear, "mdy" => DateOrder.MonthDayYear, "ymd" => DateOrder.YearMonthDay, _ => null },
        Date = json.TryGetProperty("date", out var date) ? LocalDatePattern.Iso.Parse(date.GetString()!).Value : null,
        NotAfter = json.TryGetProperty("fileDate", out var last) ? LocalDatePattern.Iso.Parse(last.GetString()!).Value : null,
    };
}
