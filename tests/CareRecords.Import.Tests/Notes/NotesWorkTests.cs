using CareRecords.Import.Notes;
using NodaTime;

namespace CareRecords.Import.Tests.Notes;

/// <summary>Tests that count what the whole process does.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;

/// <summary>The work of reading grows with the text: twice the lines take about twice the memory handed out, a count that no clock disturbs.</summary>
[Collection(nameof(Alone))]
public sealed class NotesWorkTests
{
    private static readonly ReadingContext Context = new() { Date = new LocalDate(2025, 3, 5), DateOrder = DateOrder.DayMonthYear };

    private static long Work(IReadOnlyList<string> lines)
    {
        var text = new SourceText("any.txt", lines);
        var before = GC.GetTotalAllocatedBytes(true);
        NotesReader.Read(text, Context);
        return GC.GetTotalAllocatedBytes(true) - before;
    }

    private static List<string> Month(int lines)
    {
        var some = Samples.Of("Voices").SelectMany(v => v.Text.Lines).Where(l => !l.Contains('=')).Take(400).ToList();
        return [.. Enumerable.Range(0, lines).Select(i => some[i % some.Count])];
    }

    [Fact]
    public void TwiceTheLines_TakeTwiceTheWork()
    {
        var month = Month(8_000);
        Work(month.GetRange(0, 400));
        var (one, two) = (Work(month.GetRange(0, 4_000)), Work(month));
        // The tolerance covers lists that grow by doubling.
        Assert.InRange((double)two / one, 1.7, 2.4);
    }

    [Fact]
    public void OneDayOfAnyLength_TakesWorkInStep()
    {
        var day = Enumerable.Range(0, 8_000).Select(i => $"{i % 24:00}{i % 60:00} sats 9{i % 7} hr 1{i % 10}0, chest L3 R3").ToList();
        Work(day.GetRange(0, 400));
        var (one, two) = (Work(day.GetRange(0, 4_000)), Work(day));
        Assert.InRange((double)two / one, 1.7, 2.4);
    }
}
