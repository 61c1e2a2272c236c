using CareRecords.Findings.Modelling;

namespace CareRecords.Findings.Tests.Illness.Model;

public sealed class RaisedOxygenTests
{
    private static RaisedOxygen Of(Func<int, double?> flowAt, int readings = 240) =>
        RaisedOxygen.Of([.. Enumerable.Range(0, readings).Select(i => new Observation(i * 4, 96, flowAt(i), false))], [.. Enumerable.Repeat(0.5, 60)]);

    [Fact]
    public void No_flow_written_is_never_raised() => Assert.All(Of(_ => null).AtObservation, p => Assert.Equal(0, p));

    [Fact]
    public void Written_flows_name_the_state()
    {
        var oxygen = Of(i => i is >= 60 and < 90 ? 1 : 0.5);
        Assert.True(oxygen.AtObservation[59] < 0.01);
        Assert.True(oxygen.AtObservation[60] > 0.99);
        Assert.True(oxygen.AtObservation[89] > 0.99);
        Assert.True(oxygen.AtObservation[90] < 0.01);
    }

    [Fact]
    public void A_flow_left_out_between_two_raised_ones_is_raised() => Assert.True(Of(i => i == 75 ? null : i is >= 60 and < 90 ? 1 : 0.5).AtObservation[75] > 0.95);

    [Fact]
    public void Where_only_raised_flows_are_written_silence_soon_means_usual()
    {
        var oxygen = Of(i => i is >= 60 and < 90 ? 1 : null);
        Assert.True(oxygen.AtObservation[89] > 0.99);
        Assert.True(oxygen.AtObservation[92] < 0.1);
    }

    [Fact]
    public void Where_flows_are_often_left_out_silence_says_little()
    {
        // Every fifth flow is written, whichever it is: usual is written at reading 95 after raised at 85.
        var oxygen = Of(i => i % 5 != 0 ? null : i is >= 60 and < 90 ? 1 : 0.5);
        Assert.True(oxygen.AtObservation[86] > 0.6);
    }

    [Fact]
    public void The_return_lies_between_the_last_raised_flow_and_the_first_usual_one()
    {
        var oxygen = Of(i => i is >= 60 and < 90 ? 1 : 0.5);
        Assert.True(oxygen.BackBy(89 * 4, 60, 200) < 0.02);
        Assert.InRange(oxygen.BackBy(89.5 * 4, 60, 200), 0.1, 0.9);
        Assert.True(oxygen.BackBy(90 * 4, 60, 200) > 0.97);
    }
}
