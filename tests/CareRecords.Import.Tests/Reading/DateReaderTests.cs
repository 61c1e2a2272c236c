using CareRecords.Import.Reading;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Import.Tests.Reading;

/// <summary>Dates of every common form, and the order of day and month.</summary>
public sealed class DateReaderTests
{
    [Theory]
    [InlineData("Mon 17 Feb", "2025-02-17")]
    [InlineData("Sunday the 24th of August 2025", "2025-08-24")]
    [InlineData("2025-02-14", "2025-02-14")]
    [InlineData("01-08-2025", "2025-08-01")]
    [InlineData("14.07.25", "2025-07-14")]
    [InlineData("May 2", "2025-05-02")]
    [InlineData("Saturday 19-7", "2025-07-19")]
    [InlineData("W 11/6", "2025-06-11")]
    [InlineData("Vrydag 20 Junie 2025", "2025-06-20")]
    public void Date_IsReadInDayMonthOrder(string text, string expected)
    {
        Assert.True(DateReader.Read(text).TryGet(out var written));
        var settled = DateReader.Settle(written, DateOrder.DayMonthYear, new LocalDate(2025, 6, 1));
        Assert.Equal(LocalDatePattern.Iso.Parse(expected).Value, settled.Value);
    }

    [Theory]
    [InlineData("31/2")]
    [InlineData("30 Feb 2025")]
    [InlineData("45/13/2025")]
    public void DayThatIsNotInTheCalendar_IsImpossible(string text)
    {
        if (!DateReader.Read(text).TryGet(out var written)) return;
        Assert.Equal(Outcome.Impossible, DateReader.Settle(written, DateOrder.DayMonthYear, new LocalDate(2025, 6, 1)).Outcome);
    }

    [Fact]
    public void DayAndMonthThatCouldChangePlaces_AreAsked()
    {
        Assert.True(DateReader.Read("4/5/2025").TryGet(out var written));
        Assert.Equal(Outcome.Doubtful, DateReader.Settle(written, null, null).Outcome);
    }

    [Theory]
    [InlineData("13/2/2025;4/3/2025", DateOrder.DayMonthYear)]
    [InlineData("2/13/2025;3/4/2025", DateOrder.MonthDayYear)]
    [InlineData("Mon 3/2/2025;Tues 4/2/2025", DateOrder.DayMonthYear)]
    public void WholeSource_SettlesTheOrder(string texts, DateOrder expected)
    {
        var dates = texts.Split(';').Select(t => DateReader.Read(t).Value!).ToList();
        Assert.Equal(expected, DateReader.OrderOf(dates, null));
    }
}
