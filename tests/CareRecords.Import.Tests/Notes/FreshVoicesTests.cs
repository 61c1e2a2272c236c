using Xunit.Abstractions;

namespace CareRecords.Import.Tests.Notes;

/// <summary>
/// Fourteen months by another writer, kept back until the first two sets were done, and first scored on 25 November 2026: ten of them 49 % found and 101
/// swallowed, the last four 47 % found. What they taught was mended in general since, so they are no longer unseen.
/// </summary>
public sealed class FreshVoicesTests(ITestOutputHelper output)
{
    [Fact]
    public void Fresh_ScoreDoesNotFall()
    {
        var total = new ReadingScore();
        foreach (var sample in Samples.Fresh())
        {
            var score = sample.Score();
            total.Add(score);
            output.WriteLine($"{sample.Name}: {score}");
            foreach (var wrong in score.Wrong) output.WriteLine("    " + wrong);
        }

        output.WriteLine($"together: {total}");
        Assert.True(total.FoundShare >= 0.92, total.ToString());
        Assert.True(total.TrueShare >= 0.93, total.ToString());
        Assert.True(total.ValuesShare >= 0.98, total.ToString());
        Assert.True(total.Swallowed <= 32, total.ToString());
    }

    [Fact]
    public void Fresh_EveryLineHasAFate()
    {
        foreach (var sample in Samples.Fresh())
            Balance.Holds(sample.Text, CareRecords.Import.Notes.NotesReader.Read(sample.Text, sample.Context));
    }
}
