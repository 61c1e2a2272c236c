using CareRecords.Statistics;
using CareRecords.Studies;

namespace CareRecords.Pooling.Tests;

public sealed class RecoveryPoolingTests
{
    private static readonly PoolOptions All = new() { SmallestGroup = 1, BootstrapSamples = 30 };

    [Fact]
    public void ExactDaysOfOneChildEach_GiveTheEmpiricalCurve()
    {
        // Recovered on days 2, 4, 4 and one not by day 5: still recovering 1, 1, 3/4, 3/4, 1/4 on days 0 to 4.
        var children = new[] { Child(0, (2, 2)), Child(1, (4, 4)), Child(2, (4, 4)), Child(3, (5, null)) };
        var curve = RecoveryPooling.Of("all", children, null, All);
        Assert.Equal([(0, 1), (1, 1), (2, 0.75), (3, 0.75), (4, 0.25)], curve.Curve.Take(5).Select(p => ((int)p.Day, Math.Round(p.Value, 10))));
        Assert.Equal(4, curve.Median);
        Assert.Equal((4, 4, 1), (curve.Children, curve.Episodes, curve.Censored));
    }

    [Fact]
    public void NobodyRecovered_HasNoMedianAndSaysSo()
    {
        var curve = RecoveryPooling.Of("all", [Child(0, (5, null)), Child(1, (7, null))], null, All);
        Assert.Null(curve.Median);
        Assert.Null(curve.Weibull);
        Assert.Equal(2, curve.Censored);
    }

    [Fact]
    public void NoStepOfTheCurveIsOfFewerChildrenThanTheSmallestGroup()
    {
        var children = SyntheticStudy.Children(new StudyOptions { Seed = 9, Children = 40 }).Select(ChildSummary.Of).ToList();
        var days = RecoveryPooling.DaysShown(children, 5);
        Assert.True(days.Count > 3);
        for (var i = 1; i < days.Count; i++)
        {
            var recovered = children.Count(c => c.Recoveries.Any(r => r.Right > days[i - 1] && r.Right <= days[i]));
            Assert.True(recovered is 0 or >= 5, $"{recovered} between day {days[i - 1]} and {days[i]}");
        }
    }

    [Fact]
    public void LikeChildrenDrawnWhole_GiveWiderLimitsThanEpisodesTakenAsIndependent()
    {
        // Ten children, each with eight episodes of the child's own length: the children are ten observations, not eighty.
        var children = Enumerable.Range(0, 10).Select(i => Child(i, [.. Enumerable.Repeat(((double)(3 + i), (double?)(3.5 + i)), 8)])).ToList();
        var alone = Enumerable.Range(0, 80).Select(i => Child(i, (3 + (i % 10), 3.5 + (i % 10)))).ToList();
        var options = All with { BootstrapSamples = 200 };
        var (together, apart) = (RecoveryPooling.Of("", children, null, options), RecoveryPooling.Of("", alone, null, options));
        Assert.True(together.MedianHigh - together.MedianLow > 1.5 * (apart.MedianHigh - apart.MedianLow));
    }

    [Fact]
    public void Score_WorkedByHand()
    {
        // Curve: mass 1/2 on (0,1], 1/2 on (1,2]. Early: (0 - ½ log ½)/(1 - ½) -> -(−... ) = log ½ ... worked as [S(R)logS(R) - S(L)logS(L)]/[S(L) - S(R)].
        var curve = Turnbull.Fit([new(0, 1), new(1, 2)]).Value;
        var halfLogHalf = 0.5 * Math.Log(0.5);
        Assert.Equal(halfLogHalf / 0.5, RecoveryTest.Score(curve, new(0, 1)), 10);
        Assert.Equal((0 - halfLogHalf) / 0.5, RecoveryTest.Score(curve, new(1, 2)), 10);
        Assert.True(RecoveryTest.Score(curve, new(1, double.PositiveInfinity)) > 0);
    }

    [Fact]
    public void GroupsFarApart_HaveTheSmallestPThatThePermutationsAllow()
    {
        var children = Enumerable.Range(0, 16).Select(i => i < 8 ? Child(i, (2, 3)) : Child(i, (20, 22))).ToList();
        Assert.Equal(0.01, RecoveryTest.PValue(children, [.. Enumerable.Range(0, 16).Select(i => i / 8)], new PoolOptions { Permutations = 99 }), 10);
    }

    private static ChildSummary Child(int number, params (double Low, double? High)[] recoveries) =>
        ChildSummary.Of(SyntheticStudy.Children(new StudyOptions { Seed = 1000 + number, Children = 1, Days = 10 }).Single()) with
        {
            Recoveries = [.. recoveries.Select(r => new CensoredInterval(r.Low, r.High ?? double.PositiveInfinity))],
        };
}
