using Xunit.Abstractions;

namespace CareRecords.Import.Tests.Notes;

/// <summary>
/// Months in many voices, each with the reading fixed before the first run. These are the development set: the grammar was
/// bettered on them, so their scores say what is held, not what an unseen family gets.
/// </summary>
public sealed class VoicesTests(ITestOutputHelper output)
{
    [Fact]
    public void Voices_ScoreStaysAboveItsFloor()
    {
        var total = new ReadingScore();
        foreach (var sample in Samples.Voices())
        {
            var score = sample.Score();
            total.Add(score);
            output.WriteLine($"{sample.Name}: {score}");
            foreach (var wrong in score.Wrong) output.WriteLine("    " + wrong);
        }
        output.WriteLine($"together: {total}");
        Assert.True(total.FoundShare >= 0.985, total.ToString());
        Assert.True(total.TrueShare >= 0.985, total.ToString());
        Assert.True(total.ValuesShare >= 0.98, total.ToString());
        Assert.True(total.Swallowed <= 3, total.ToString());
    }

    [Fact]
    public void Voices_EveryLineHasAFate()
    {
        foreach (var sample in Samples.Voices())
            Balance.Holds(sample.Text, CareRecords.Import.Notes.NotesReader.Read(sample.Text, sample.Context));
    }
}
