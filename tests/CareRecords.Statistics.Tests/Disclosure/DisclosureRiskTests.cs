namespace CareRecords.Statistics.Tests.Disclosure;

public class DisclosureRiskTests
{
    [Fact]
    public void Two_classes_by_hand()
    {
        // Class a: x x y, shares 2/3 and 1/3; class b: one row alone.
        var r = DisclosureRisk.Of([["a"], ["a"], ["b"], ["a"]], ["x", "y", "x", "x"]).Value;
        Assert.Equal((1, 1, 1.0, 2, 1, 4), (r.SmallestClass, r.DistinctDiversity, r.WorstShare, r.Classes, r.UniqueRows, r.Count));
        Near.Equal(1, r.EntropyDiversity);
    }

    [Fact]
    public void No_rows_are_a_named_outcome_and_ragged_rows_are_refused()
    {
        Assert.False(DisclosureRisk.Of([], []).IsKnown);
        Assert.Throws<ArgumentException>(() => DisclosureRisk.Of([["a"], ["a", "b"]], ["x", "y"]));
        Assert.Throws<ArgumentException>(() => DisclosureRisk.Of([["a"]], []));
    }

    [Fact]
    public void Codes_that_run_together_are_kept_apart() =>
        Assert.Equal(2, DisclosureRisk.Of([["ab", "c"], ["a", "bc"]], ["x", "y"]).Value.Classes);
}
