using Xunit.Abstractions;

namespace CareRecords.Import.Tests.Notes;

/// <summary>
/// Ten months by a fourth writer, written without sight of the program and kept back until the first three sets were done.
/// </summary>
public sealed class LaterVoicesTests(ITestOutputHelper output)
{
    [Fact]
    public void Later_ScoreDoesNotFall()
    {
        var total = new ReadingScore();
        foreach (var sample in Samples.Later())
        {
            var score = sample.Score();
            total.Add(score);
            output.WriteLine($"{sample.Name}: {score}");
            foreach (var wrong in score.Wrong) output.WriteLine("    " + wrong);
        }

        output.WriteLine($"together: {total}");
        Assert.True(total.FoundShare >= 0.0, total.ToString());
        Assert.True(total.TrueShare >= 0.0, total.ToString());
        Assert.True(total.ValuesShare >= 0.0, total.ToString());
        Assert.True(total.Swallowed <= 999, total.ToString());
    }

    [Fact]
    public void Later_EveryLineHasAFate()
    {
        foreach (var sample in Samples.Later())
            Balance.Holds(sample.Text, CareRecords.Import.Notes.NotesReader.Read(sample.Text, sample.Context));
    }
}
