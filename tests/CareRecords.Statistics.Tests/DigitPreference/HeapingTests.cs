namespace CareRecords.Statistics.Tests.DigitPreference;

public class HeapingTests
{
    [Fact]
    public void Every_minute_once_shows_no_preference()
    {
        var h = MinuteHeaping.Of([.. Enumerable.Range(0, 60)]).Value;
        Near.Equal(100, h.Fives.Value);
        Near.Equal(100, h.Tens.Value);
        Near.Equal(100, h.Quarters.Value);
        Near.Equal(0, h.ChiSquare);
        Near.Equal(1, h.PValue);
    }

    [Fact]
    public void Only_round_minutes_show_the_largest_index()
    {
        var h = MinuteHeaping.Of([0, 30, 0, 30]).Value;
        Assert.Equal((500.0, 1000.0, 1500.0), (h.Fives.Value, h.Tens.Value, h.Quarters.Value));
        Near.Equal(36, h.ChiSquare);
        Assert.False(MinuteHeaping.Of([]).IsKnown);
        Assert.Throws<ArgumentOutOfRangeException>(() => MinuteHeaping.Of([-5]));
    }

    [Fact]
    public void Even_counts_give_neutral_age_indexes_and_only_fives_the_extreme()
    {
        double[] even = [.. Enumerable.Repeat(7.0, 100)];
        Near.Equal(1, AgeHeaping.Whipple(even).Value);
        Near.Equal(1, AgeHeaping.DigitIndex(even, 3).Value);
        Near.Equal(0, AgeHeaping.Myers(even).Value.Index);
        double[] fives = [.. Enumerable.Range(0, 100).Select(a => a % 5 == 0 ? 3.0 : 0)];
        Near.Equal(5, AgeHeaping.Whipple(fives).Value);
        double[] tens = [.. Enumerable.Range(0, 100).Select(a => a % 10 == 0 ? 3.0 : 0)];
        Near.Equal(90, AgeHeaping.Myers(tens).Value.Index);
    }

    [Fact]
    public void Nobody_in_range_is_a_named_outcome()
    {
        Assert.False(AgeHeaping.Whipple([1, 2, 3]).IsKnown);
        Assert.False(AgeHeaping.DigitIndex([], 0).IsKnown);
        Assert.False(AgeHeaping.Myers(new double[5]).IsKnown);
        Assert.Throws<ArgumentException>(() => AgeHeaping.Whipple([.. Enumerable.Repeat(-1.0, 70)]));
    }
}
