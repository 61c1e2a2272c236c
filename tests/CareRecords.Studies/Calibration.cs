using System.Globalization;
using CareRecords.Pooling;
using CareRecords.Statistics;

namespace CareRecords.Studies;

/// <summary>
/// Pools simulated studies with random child effects and counts how often the 95 % limits hold the truth, which the studies were made from, and how often
/// the tests between like groups give p under 0.05.
/// </summary>
public static class Calibration
{
    /// <summary>How often an interval held the truth.</summary>
    /// <param name="Scenario">The scenario.</param>
    /// <param name="Figure">The figure.</param>
    /// <param name="Studies">Studies in which it was given.</param>
    /// <param name="Held">Of them, those in which the limits held the truth.</param>
    public sealed record Coverage(string Scenario, string Figure, int Studies, int Held)
    {
        /// <summary>The share, 0 to 1.</summary>
        public double Share => (double)Held / Studies;
    }

    private static readonly (string Name, StudyOptions Options)[] Scenarios =
    [
        ("24 children, about 90 days", new StudyOptions { Seed = 0 }),
        ("12 children, about 60 days", new StudyOptions { Seed = 0, Children = 12, Days = 60 }),
        ("60 children, about 30 days", new StudyOptions { Seed = 0, Children = 60, Days = 30 }),
        ("24 children, much alike (SD 0.2)", new StudyOptions { Seed = 0, BetweenChildren = 0.2 }),
        ("24 children, very unlike (SD 1.2), share 0.9", new StudyOptions { Seed = 0, BetweenChildren = 1.2, FeedGapKept = 0.9 }),
    ];

    /// <summary>Coverage of the pooled shares.</summary>
    public static IEnumerable<Coverage> Shares(int studies)
    {
        foreach (var (name, options) in Scenarios)
        {
            var (model, twoStep, further) = (0, 0, 0);
            Parallel.For(0, studies, n =>
            {
                var children = SyntheticStudy.WithTruth(options with { Seed = 100_000 + n, Children = options.Children + 1 }).ToList();
                GapTally[] tallies = [.. children.Take(options.Children).Select(c => ChildSummary.Of(c.Child).FeedGap)];
                var (one, two) = (ShareModels.Model(tallies, further: true), ShareModels.TwoStep(tallies));
                if (Holds(one.Low, one.High, options.FeedGapKept)) Interlocked.Increment(ref model);
                if (Holds(two.Low, two.High, options.FeedGapKept)) Interlocked.Increment(ref twoStep);
                if (Holds(one.PredictionLow, one.PredictionHigh, children[^1].FeedGapKept)) Interlocked.Increment(ref further);
            });
            yield return new(name, "pooled share, random intercept", studies, model);
            yield return new(name, "pooled share, two-step REML with Hartung-Knapp", studies, twoStep);
            yield return new(name, "range of a further child, against its true share", studies, further);
        }
    }

    /// <summary>Coverage of the pooled median days to recovery.</summary>
    public static IEnumerable<Coverage> Recovery(int studies)
    {
        foreach (var (name, options) in Scenarios.Take(3))
        {
            var truth = SyntheticStudy.MedianRecovery(options);
            var (turnbull, weibull, curve) = (0, 0, 0);
            var (turnbullStudies, weibullStudies) = (0, 0);
            Parallel.For(0, studies, n =>
            {
                var children = SyntheticStudy.Children(options with { Seed = 200_000 + n }).Select(ChildSummary.Of).ToList();
                var pooled = RecoveryPooling.Of("all", children, null, new PoolOptions { BootstrapSamples = 300, SmallestGroup = 1 });
                if (pooled.Median is not null)
                {
                    Interlocked.Increment(ref turnbullStudies);
                    if (Holds(pooled.MedianLow, pooled.MedianHigh ?? double.MaxValue, truth)) Interlocked.Increment(ref turnbull);
                }

                if (pooled.Weibull is { MedianLow: not null } fit)
                {
                    Interlocked.Increment(ref weibullStudies);
                    if (Holds(fit.MedianLow, fit.MedianHigh, truth)) Interlocked.Increment(ref weibull);
                }

                // At the day of the true median half are still recovering.
                if (pooled.Curve.MinBy(p => Math.Abs(p.Day - truth)) is { } point && Holds(point.Low, point.High, SyntheticStudy.StillRecovering(options, point.Day))) Interlocked.Increment(ref curve);
            });
            yield return new(name, "median days to recovery, Turnbull", turnbullStudies, turnbull);
            yield return new(name, "median days to recovery, Weibull", weibullStudies, weibull);
            yield return new(name, "share still recovering on the day nearest the true median", studies, curve);
        }
    }

    /// <summary>How often tests between groups that are alike give p of 0.05 or less; "held" counts those that do not.</summary>
    public static IEnumerable<Coverage> Tests(int studies)
    {
        var options = new PoolOptions { Permutations = 199, SmallestGroup = 1 };
        var (gap, recovery, trend) = (0, 0, 0);
        Parallel.For(0, studies, n =>
        {
            var children = SyntheticStudy.Children(new StudyOptions { Seed = 300_000 + n }).Select(ChildSummary.Of).ToList();
            var groups = children.Select((_, i) => i % 2).ToArray();
            var tau2 = ShareModels.TwoStep([.. children.Select(c => c.FeedGap)]).Tau2 ?? 0;
            if (GapTest.PValue([.. children.Select(c => c.FeedGap)], groups, tau2, options) > 0.05) Interlocked.Increment(ref gap);
            if (RecoveryTest.PValue(children, groups, options) > 0.05) Interlocked.Increment(ref recovery);
            if (SetbackPooling.Of(children, options, []).Trend.PValue > 0.05) Interlocked.Increment(ref trend);
        });
        const string name = "24 children in two like groups";
        yield return new(name, "no false alarm, share between groups", studies, gap);
        yield return new(name, "no false alarm, recovery between groups", studies, recovery);
        yield return new(name, "no false alarm, setbacks by stable hours", studies, trend);
    }

    internal static int Run(string studiesOfShares, string studiesOfRecovery)
    {
        var (shares, recovery) = (int.Parse(studiesOfShares, CultureInfo.InvariantCulture), int.Parse(studiesOfRecovery, CultureInfo.InvariantCulture));
        Console.WriteLine("| scenario | figure | studies | held | share (limits of chance) |");
        Console.WriteLine("|---|---|---|---|---|");
        foreach (var row in Shares(shares).Concat(Recovery(recovery)).Concat(Tests(recovery)))
        {
            var wilson = Wilson.Interval(row.Held, row.Studies).Value;
            Console.WriteLine(FormattableString.Invariant($"| {row.Scenario} | {row.Figure} | {row.Studies} | {row.Held} | {row.Share:0.0 %} ({wilson.Low:0.0 %} to {wilson.High:0.0 %}) |"));
        }

        return 0;
    }

    private static bool Holds(double? low, double? high, double truth) => low <= truth && truth <= high;
}
