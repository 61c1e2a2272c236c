using CsCheck;

namespace CareRecords.Statistics.Tests.ChangePoints;

public class SegmentationTests
{
    private static readonly Gen<double[]> Counts = Gen.Int[0, 6].Select(v => (double)v).Array[1, 9];

    [Fact]
    public void Two_levels_are_found_with_their_means()
    {
        var best = Segmentation.Penalized(SegmentCost.Gaussian([5, 5, 5, 2, 2]), 1).Value;
        Assert.Equal([3], best.Changes);
        Assert.Equal([5.0, 2.0], best.Segments.Select(s => s.Level!.Value));
        Near.Equal(1, best.Objective);
        Near.Equal(0, best.Cost);
    }

    [Fact]
    public void Dynamic_programme_equals_a_search_of_all_segmentations() => Gen.Select(Counts, Gen.Double[0, 4], Gen.Int[1, 3]).Holds(t =>
    {
        var (x, penalty, smallest) = t;
        foreach (var cost in new[] { SegmentCost.Poisson(x), SegmentCost.Gaussian(x, 0.7) })
        {
            var all = All(x.Length).Where(b => b.Zip(b.Skip(1)).All(p => p.Second - p.First >= smallest)).ToArray();
            double Cost(int[] b) => b.Zip(b.Skip(1), cost.Of).Sum();
            var found = Segmentation.Penalized(cost, penalty, smallest);
            if (all.Length == 0)
            {
                return !found.IsKnown;
            }

            if (Math.Abs(found.Value.Objective - all.Min(b => Cost(b) + (penalty * (b.Length - 2)))) > 1e-9)
            {
                return false;
            }

            foreach (var group in all.GroupBy(b => b.Length - 2))
            {
                if (Math.Abs(Segmentation.WithChanges(cost, group.Key, smallest).Value.Cost - group.Min(Cost)) > 1e-9)
                {
                    return false;
                }
            }
        }

        return true;
    });

    [Fact]
    public void All_equal_all_zero_and_single_points_have_no_change()
    {
        Assert.Empty(Segmentation.Penalized(SegmentCost.Poisson([0, 0, 0, 0]), 3).Value.Changes);
        Assert.Empty(Segmentation.Penalized(SegmentCost.Gaussian([2, 2, 2, 2]), 0.1).Value.Changes);
        Assert.Single(Segmentation.Penalized(SegmentCost.Poisson([7]), 3).Value.Segments);
        Assert.Empty(Segmentation.Penalized(SegmentCost.Binomial([1, 0, 2], [2, 0, 4]), 3).Value.Changes);
    }

    [Fact]
    public void Too_short_a_series_is_a_named_outcome()
    {
        Assert.False(Segmentation.Penalized(SegmentCost.Poisson([]), 1).IsKnown);
        Assert.False(Segmentation.Penalized(SegmentCost.Poisson([1, 2]), 1, 3).IsKnown);
        Assert.Equal(6, Segmentation.WithChanges(SegmentCost.Poisson([1, 2, 3]), 2, 2).Missing!.Smallest);
        Assert.False(SingleChange.Of(SegmentCost.Poisson([1])).IsKnown);
        Assert.False(NoiseVariance.FromDifferences([1, 2]).IsKnown);
        Assert.Throws<ArgumentException>(() => SegmentCost.Poisson([-1]));
        Assert.Throws<ArgumentException>(() => SegmentCost.Gaussian([double.NaN]));
    }

    [Fact]
    public void An_exposure_of_two_is_a_count_over_two_days() =>
        Assert.Equal(2.5, SegmentCost.Poisson([3, 7], [2, 2]).Level(0, 2));

    [Fact]
    public void Nine_years_of_days_with_three_changes_are_found()
    {
        var random = new SeededRandom(9);
        double[] sessions = [.. Enumerable.Range(0, 3300).Select(d => (double)random.Successes(10, d / 1000 % 2 == 0 ? 0.2 : 0.5))];
        var best = Segmentation.Penalized(SegmentCost.Poisson(sessions), 3 * Math.Log(sessions.Length)).Value;
        Assert.Equal(3, best.Changes.Count);
        Assert.All(best.Changes, c => Assert.InRange(c % 1000 > 500 ? 1000 - (c % 1000) : c % 1000, 0, 10));
    }

    /// <summary>Every way to cut n points, as bounds from 0 to n.</summary>
    private static IEnumerable<int[]> All(int n) =>
        Enumerable.Range(0, 1 << (n - 1)).Select(mask => (int[])[0, .. Enumerable.Range(1, n - 1).Where(i => (mask & (1 << (i - 1))) != 0), n]);
}
