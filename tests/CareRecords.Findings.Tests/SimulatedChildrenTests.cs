using CareRecords.Simulation;

namespace CareRecords.Findings.Tests;

/// <summary>Against children whose truth is known, made without a look at the analysis: exact times, every feed and dose written.</summary>
public class SimulatedChildrenTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void Every_feed_and_inhaler_verdict_agrees(int seed)
    {
        var (log, truth) = SimulatedChild.Make(new() { Seed = seed, Days = 60, GetsExtraOxygen = seed % 2 == 0 });
        var found = Reviewer.Review(log).Sessions.ToDictionary(s => s.Start, s => (s.FeedGap, s.InhalerGap));
        Assert.NotEmpty(truth.Sessions);
        foreach (var session in truth.Sessions)
        {
            var (feed, inhaler) = found[session.Start];
            Assert.Equal((session.Feed?.ToString() ?? "Unknown", session.FeedGap), (feed.Verdict.ToString(), feed.LowMinutes));
            Assert.Equal(session.Inhaler.ToString(), inhaler.Verdict.ToString());
        }
    }

    [Theory]
    [InlineData(11, false)]
    [InlineData(12, true)]
    public void Baseline_lies_within_half_a_point(int seed, bool oxygen)
    {
        var (log, truth) = SimulatedChild.Make(new() { Seed = seed, GetsExtraOxygen = oxygen });
        var baseline = Reviewer.Review(log).Baseline!;
        Assert.InRange(baseline.SpO2, truth.BaselineSpO2 - 0.5, truth.BaselineSpO2 + 0.5);
        Assert.Equal(oxygen ? truth.UsualOxygen : baseline.Oxygen, baseline.Oxygen);
    }
}
