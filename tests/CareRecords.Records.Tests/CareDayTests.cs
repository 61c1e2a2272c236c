using NodaTime;

namespace CareRecords.Records.Tests;

public sealed class CareDayTests
{
    [Theory]
    [InlineData(0, 30, 8)] // half past midnight belongs to the evening before
    [InlineData(3, 59, 8)]
    [InlineData(4, 0, 9)] // the start opens the new day
    [InlineData(23, 59, 9)]
    public void Of_DayStartingAtFour_GivesTheCareDay(int hour, int minute, int day) =>
        Assert.Equal(new LocalDate(2026, 3, day), CareDay.Of(new LocalDateTime(2026, 3, 9, hour, minute), new LocalTime(4, 0)));
}
