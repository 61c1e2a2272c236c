using CareRecords.Statistics;
using NodaTime;

namespace CareRecords.Findings.Tests.Recovery;

public class RecoveryCurveTests
{
    [Fact]
    public void Six_episodes_have_limits_wider_than_plain_percentiles_and_four_have_none()
    {
        double[] days = [3, 5, 6, 8, 11, 15];
        var curve = RecoveryCurve.Of([.. days.Select(d => Episode(d, d + 1))], new ReviewOptions());
        var plain = TurnbullBootstrap.Limits([.. days.Select(d => new CensoredInterval(d, d + 1))], [.. curve.Curve.Select(p => p.Day)]).Value;
        Assert.Contains(curve.Curve.Zip(plain), p => p.First.High - p.First.Low > p.Second.Limits.High - p.Second.Limits.Low + 0.05);
        Assert.All(curve.Curve.Zip(plain), p => Assert.True(p.First.Low <= p.Second.Limits.Low && p.Second.Limits.High <= p.First.High));

        var few = RecoveryCurve.Of([.. days.Take(4).Select(d => Episode(d, d + 1))], new ReviewOptions());
        Assert.All(few.Curve, p => Assert.Null(p.Low));
        Assert.Contains("at least 5 needed", few.Method, StringComparison.Ordinal);
    }

    private static EpisodeFinding Episode(double low, double high) => new()
    {
        Id = "E1",
        Onset = new LocalDate(2026, 2, 1),
        OnsetLow = new LocalDate(2026, 2, 1),
        OnsetHigh = new LocalDate(2026, 2, 1),
        Evidence = "unwell",
        MostSessions = 3,
        Recovery = new(low, high, (low + high) / 2, null, null, 0.95, false, "bracket"),
        Sources = [],
    };
}
