using CsCheck;

namespace CareRecords.Statistics.Tests.Clusters;

public class ClusterTests
{
    private static double? Share(IReadOnlyList<(int X, int N)> days) => days.Sum(d => d.N) is var n and > 0 ? (double)days.Sum(d => d.X) / n : null;

    private static (int X, int N)[] Days(SeededRandom random, int days) =>
    [
        // Each day has its own chance: half of them 0.9, half 0.5.
        .. Enumerable.Range(0, days).Select(_ => (random.Successes(5, random.Uniform() < 0.5 ? 0.9 : 0.5), 5)),
    ];

    [Fact]
    public void Independent_single_trials_have_no_design_effect()
    {
        // 100 clusters of one trial: V = p(1−p)/99, so the effect is 100/99.
        var r = ClusteredProportion.Interval([.. Enumerable.Range(0, 100).Select(i => (i < 30 ? 1 : 0, 1))]).Value;
        Near.Equal(0.3, r.Estimate.Value);
        Near.Equal(100 / 99.0, r.DesignEffect);
    }

    [Fact]
    public void Days_that_are_all_or_nothing_count_as_days()
    {
        // Ten days of four, five kept throughout: V = (10/9)·10·4/1600 = 1/36; plain 1/160; effect 40/9.
        var r = ClusteredProportion.Interval([.. Enumerable.Range(0, 10).Select(i => (i < 5 ? 4 : 0, 4))]).Value;
        Near.Equal(40 / 9.0, r.DesignEffect);
        Assert.True(r.Estimate.Width > Wilson.Interval(20, 40).Value.Width * 1.9);
    }

    [Fact]
    public void Clustered_interval_is_never_narrower_than_the_plain_one() =>
        Gen.Int[0, 6].SelectMany(n => Gen.Int[0, n].Select(x => (x, n))).Array[2, 20].Where(a => a.Count(c => c.n > 0) > 1).Holds(days =>
        {
            var r = ClusteredProportion.Interval(days).Value;
            var plain = Wilson.Interval(days.Sum(d => d.x), days.Sum(d => d.n)).Value;
            return r.Estimate.Width >= plain.Width - 1e-12 && r.Estimate.Covers(r.Estimate.Value) && r.Estimate is { Low: >= 0, High: <= 1 };
        });

    [Fact]
    public void One_cluster_or_too_few_are_named_outcomes()
    {
        Assert.False(ClusteredProportion.Interval([(3, 4), (0, 0)]).IsKnown);
        Assert.Equal(8, ClusterBootstrap.Interval([(1, 2), (2, 2)], Share).Missing!.Smallest);
        Assert.False(ClusterBootstrap.Interval(new (int X, int N)[9], Share).IsKnown);
    }

    [Fact]
    public void The_same_seed_gives_the_same_interval_and_a_constant_gives_a_point()
    {
        var days = Days(new SeededRandom(2), 30);
        Assert.Equal(ClusterBootstrap.Interval(days, Share, draws: 300).Value, ClusterBootstrap.Interval(days, Share, draws: 300).Value);
        var level = ClusterBootstrap.Interval([.. Enumerable.Repeat((2, 4), 10)], Share, draws: 100).Value;
        Assert.Equal((0.5, 0.5, 0.0), (level.Estimate.Low, level.Estimate.High, level.StandardError));
    }

    [Fact]
    public void Both_intervals_cover_where_the_plain_one_does_not()
    {
        Coverage.Between(0.92, 0.975, 2000, random => ClusteredProportion.Interval(Days(random, 30)).Value.Estimate.Covers(0.7));
        Coverage.Between(0.90, 0.975, 150, random => ClusterBootstrap.Interval(Days(random, 30), Share, draws: 200).Value.Estimate.Covers(0.7));
        Assert.ThrowsAny<Exception>(() => Coverage.Between(0.92, 0.975, 2000, random =>
        {
            // Ten visits a day that all go one way or nearly so: the plain interval believes in 300 trials.
            var days = Enumerable.Range(0, 30).Select(_ => random.Successes(10, random.Uniform() < 0.7 ? 0.97 : 0.07)).ToArray();
            return Wilson.Interval(days.Sum(), 300).Value.Covers(0.7);
        }));
    }
}
