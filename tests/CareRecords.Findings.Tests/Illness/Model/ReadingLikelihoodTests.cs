using CareRecords.Findings.Modelling;

namespace CareRecords.Findings.Tests.Illness.Model;

public sealed class ReadingLikelihoodTests
{
    [Theory]
    [InlineData(95.3, 1.2)]
    [InlineData(99.2, 1.0)]
    public void Over_all_whole_per_cents_it_sums_to_one(double truth, double sd) =>
        // The loose share is spread over 40 whole per cents of 60 to 100: 61 to 100.
        Assert.Equal(1, Enumerable.Range(61, 40).Sum(y => ReadingLikelihood.Of(y, truth, sd, 0.5)), 6);

    [Fact]
    public void On_raised_oxygen_a_usual_saturation_says_next_to_nothing_of_the_deficit()
    {
        var none = ReadingLikelihood.OfHidden(96, 96, 0, 1, 0.5);
        Assert.InRange(ReadingLikelihood.OfHidden(96, 96, 6, 1, 0.5) / none, 1, 1.03);
    }

    [Fact]
    public void On_raised_oxygen_a_low_saturation_says_that_the_deficit_is_at_least_so_large() =>
        Assert.True(ReadingLikelihood.OfHidden(91, 96, 5, 1, 0.5) > 100 * ReadingLikelihood.OfHidden(91, 96, 0, 1, 0.5));

    [Fact]
    public void Rounding_is_seen_in_the_readings()
    {
        Assert.Equal(0.5, ReadingLikelihood.HalfStep([95, 96, 94]));
        Assert.Equal(0.05, ReadingLikelihood.HalfStep([95.5, 96.2, 94]));
    }
}
