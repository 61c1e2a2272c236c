namespace CareRecords.Statistics.Tests.MetaAnalysis;

public class FurtherClusterTests
{
    private static readonly (int X, int N)[] Vasospasm =
        [(16, 17), (10, 12), (4, 8), (43, 58), (10, 10), (25, 42), (13, 14), (12, 12), (22, 41), (4, 5), (5, 6), (18, 23), (58, 68), (6, 10)];

    [Fact]
    public void Limits_agree_with_a_simulation_of_the_definition_in_R()
    {
        // R 4.2.2: the marginal likelihood by integrate(), profiled over the intercept by optimize() at σ = 0, 0.025, ..., 4; two million draws of
        // intercept(σ) + rt(13)·error(σ)·√(14/13) + rnorm·σ·√(14/13) with σ at the drawn normal deviate of the signed root.
        var rows = Rows(Vasospasm);
        var range = FurtherCluster.Of(rows, RandomInterceptLogistic.Fit(rows).Value);
        Assert.InRange(range.Low, -0.48924565819 - 0.03, -0.48924565819 + 0.03);
        Assert.InRange(range.High, 3.43320878623 - 0.03, 3.43320878623 + 0.03);
    }

    [Fact]
    public void Clusters_as_alike_as_chance_allows_still_leave_room_between_them()
    {
        // Twenty clusters of 30 of 40, exactly alike: σ is estimated as 0, and the range is wider than the interval of the middle.
        var rows = Rows([.. Enumerable.Repeat((30, 40), 20)]);
        var fit = RandomInterceptLogistic.Fit(rows).Value;
        Assert.Equal(0, fit.Deviation);
        var (range, middle) = (FurtherCluster.Of(rows, fit), fit.Coefficient(0));
        Assert.True(range.Low < middle.Low - 0.02 && middle.High + 0.02 < range.High);
    }

    [Fact]
    public void Covariates_are_refused()
    {
        ClusterRow[] rows = [new(0, 3, 9, [1]), new(1, 4, 9, [0]), new(2, 5, 9, [1]), new(3, 7, 9, [0])];
        Assert.Throws<ArgumentException>(() => FurtherCluster.Of(rows, RandomInterceptLogistic.Fit(rows).Value));
    }

    private static ClusterRow[] Rows((int X, int N)[] counts) => [.. counts.Select((c, i) => new ClusterRow(i, c.X, c.N, []))];
}
