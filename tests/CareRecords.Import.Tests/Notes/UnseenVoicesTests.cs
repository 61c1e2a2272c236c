using Xunit.Abstractions;

namespace CareRecords.Import.Tests.Notes;

/// <summary>
/// Twelve months in other voices, held back while the grammar was written and first scored on 25 November 2026: 51 % of events found, 177
/// swallowed. The floors hold what is reached since; they are far from the goal (95 % found, none swallowed) and are to be raised as it nears. What these months taught was mended in general, so they are no longer unseen.
/// </summary>
public sealed class UnseenVoicesTests(ITestOutputHelper output)
{
    [Fact]
    public void Unseen_ScoreDoesNotFall()
    {
        var total = new ReadingScore();
        foreach (var sample in Samples.Unseen())
        {
            var score = sample.Score();
            total.Add(score);
            output.WriteLine($"{sample.Name}: {score}");
            foreach (var wrong in score.Wrong) output.WriteLine("    " + wrong);
        }

        output.WriteLine($"together: {total}");
        Assert.True(total.FoundShare >= 0.925, total.ToString());
        Assert.True(total.TrueShare >= 0.93, total.ToString());
        Assert.True(total.ValuesShare >= 0.965, total.ToString());
        Assert.True(total.Swallowed <= 26, total.ToString());
    }

    [Fact]
    public void Unseen_EveryLineHasAFate()
    {
        foreach (var sample in Samples.Unseen())
            Balance.Holds(sample.Text, CareRecords.Import.Notes.NotesReader.Read(sample.Text, sample.Context));
    }
}
