using NodaTime;

namespace CareRecords.Records.Tests;

public sealed class UncertainTimeTests
{
    private static readonly LocalDateTime Nine = new(2026, 3, 9, 9, 0);

    [Fact]
    public void Exactly_IsAPointAndNotApproximate()
    {
        var time = UncertainTime.Exactly(Nine);

        Assert.True(time.IsExact);
        Assert.False(time.IsApproximate);
    }

    [Fact]
    public void At_BorrowedTime_IsAPointAndApproximate() =>
        Assert.True(UncertainTime.At(Nine, TimePrecision.Borrowed) is { IsExact: true, IsApproximate: true });

    [Fact]
    public void Between_StatedOutside_IsRefused() =>
        Assert.Throws<ArgumentException>(() => UncertainTime.Between(Nine, Nine.PlusMinutes(-1), Nine.PlusMinutes(5), TimePrecision.About));

    [Fact]
    public void OnDay_SpansTheDay()
    {
        var time = UncertainTime.OnDay(Nine.Date);

        Assert.Equal(new LocalDateTime(2026, 3, 9, 0, 0), time.Earliest);
        Assert.Equal(new LocalDateTime(2026, 3, 9, 23, 59), time.Latest);
    }
}
