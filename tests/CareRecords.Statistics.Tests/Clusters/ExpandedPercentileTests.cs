namespace CareRecords.Statistics.Tests.Clusters;

public class ExpandedPercentileTests
{
    [Theory]
    // R: pnorm(-qt(.975, n - 1) * sqrt(n / (n - 1))).
    [InlineData(5, 0.0009541006)]
    [InlineData(12, 0.01075661)]
    [InlineData(1000, 0.02480431)]
    public void Tail_is_the_normal_share_beyond_students_limit(int units, double tail) => Assert.Equal(tail, ExpandedPercentile.Tail(0.95, units), 5);

    [Fact]
    public void One_unit_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => ExpandedPercentile.Tail(0.95, 1));
}
