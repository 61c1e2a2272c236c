using CareRecords.Simulation;
using NodaTime;
using Xunit.Abstractions;

namespace CareRecords.Findings.Tests;

/// <summary>Against children whose truth is known, made without a look at the analysis: exact times, every feed and dose written.</summary>
public class SimulatedChildrenTests(ITestOutputHelper output)
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

    [Theory]
    [InlineData(1.4, 4, 1, 0)]
    [InlineData(2, 2, 0.9, 0.1)]
    public void Steps_of_the_taper_are_found_within_a_day(double noise, int checks, double feedsWritten, double daysNotWritten)
    {
        var (found, steps, extra, told) = (0, 0, 0, 0);
        for (var seed = 21; seed <= 32; seed++)
        {
            var (log, truth) = SimulatedChild.Make(new() { Seed = seed, Noise = noise, ChecksPerDay = checks, FeedsWritten = feedsWritten, DaysNotWritten = daysNotWritten, GetsExtraOxygen = seed % 2 == 0 });
            var done = Reviewer.Review(log).Taper.Done.Select(s => s.From).ToList();
            // The first level is no step: it is where the record begins.
            var real = truth.Steps.Skip(1).Select(s => s.From).ToList();
            foreach (var step in real) if (done.Exists(d => Near(d, step))) found++;
            foreach (var day in done.Skip(1)) if (!real.Exists(r => Near(r, day))) extra++;
            (steps, told) = (steps + real.Count, told + done.Count - 1);
        }

        output.WriteLine($"noise {noise}: {found} of {steps} steps within a day, {extra} of {told} told are none");
        Assert.True(found >= 0.9 * steps, $"{found} of {steps}");
    }

    private static bool Near(LocalDate one, LocalDate other) => Math.Abs(Period.Between(one, other, PeriodUnits.Days).Days) <= 1;
}
