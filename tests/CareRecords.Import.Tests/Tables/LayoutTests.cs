using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Tables;

/// <summary>Single habits of families' tables, each on its own.</summary>
public sealed class LayoutTests
{
    [Fact]
    public void DayOrder_SettledByOneDate_HoldsForTheWholeSource()
    {
        var log = Inputs.Import("a.csv", "date,time,sats,oxygen\n3/4/2025,07:05,95,0\n14/4/2025,07:05,94,0\n");
        Assert.Equal([new LocalDate(2025, 4, 3), new LocalDate(2025, 4, 14)], log.Entries.Select(e => e.When.Stated.Date));
    }

    [Fact]
    public void DayOrder_NotSettledInOneSource_IsTakenFromItsNeighbours()
    {
        using var inputs = new Inputs().With("a.csv", "date,time,sats\n3/4/2025,07:05,95\n").With("b.csv", "date,time,sats\n4/14/2025,07:05,94\n");
        Assert.Equal([new LocalDate(2025, 3, 4), new LocalDate(2025, 4, 14)], inputs.Import().Entries.Select(e => e.When.Stated.Date));
    }

    [Fact]
    public void DayOrder_SettledByNothing_IsAskedOnceForTheSource()
    {
        var log = Inputs.Import("a.csv", "date,time,sats\n3/4/2025,07:05,95\n5/6/2025,07:05,95\n");
        Assert.Empty(log.Entries);
        Assert.Equal(2, Assert.Single(log.Questions).Sources.Count);
    }

    [Fact]
    public void DateOnTheFirstRowOfADay_IsFilledDown_AndPastMidnightIsTheNextDay()
    {
        var log = Inputs.Import("a.csv", "date,time,sats\n14/3/2025,18:30,95\n,23:40,94\n,00:20,93\n");
        Assert.Equal(new LocalDateTime(2025, 3, 15, 0, 20), log.Entries[^1].When.Stated);
    }

    [Theory]
    [InlineData(710.0)]
    [InlineData(7.1)]
    [InlineData(0.29861111)]
    public void NumbersMeantAsTimes_AreReadAsTimes(double number)
    {
        using var inputs = new Inputs().With("a.xlsx", TinyWorkbook.Of(("Log", [["Date", "Time", "Sats"], [new DateTime(2025, 3, 14), number, 95.0], [new DateTime(2025, 3, 14), number < 1 ? 0.75 : number > 100 ? 1800.0 : 18.0, 94.0]])));
        Assert.Equal(new LocalDateTime(2025, 3, 14, 7, 10), inputs.Import().Entries[0].When.Stated);
    }

    [Fact]
    public void TablesOneUnderAnother_EachHaveTheirOwnColumns()
    {
        var log = Inputs.Import("a.csv", "Sats\ndate,time,sats,oxygen\n14/3/2025,07:05,95,0\n\nFeeds\ndate,start,stop,ml\n14/3/2025,12:00,12:30,150\n");
        Assert.Equal(95, Assert.Single(log.Entries.OfType<Check>()).SpO2);
        var feed = Assert.Single(log.Entries.OfType<Feed>());
        Assert.Equal((150, new LocalDateTime(2025, 3, 14, 12, 30)), (feed.Millilitres!.Value, feed.End!.Stated));
    }

    [Fact]
    public void SheetThatIsNotOfCare_IsSetAside()
    {
        using var inputs = new Inputs().With("a.xlsx", TinyWorkbook.Of(("Shopping", [["item", "how many", "got?"], ["syringes", 2.0, "y"]])));
        var log = inputs.Import();
        Assert.Empty(log.Entries);
        Assert.Empty(log.Problems);
        Assert.Equal(new LineCount(2, 0, 0, 2, 0), log.Lines);
    }

    [Fact]
    public void OuncesInTheHeading_GiveTheirUnitToBareNumbers()
    {
        var feed = Assert.IsType<Feed>(Assert.Single(Inputs.Import("a.csv", "date,fed at,oz\n3/14/2025,12:30,4\n").Entries));
        Assert.Equal(118.3, feed.Millilitres!.Value, 1);
    }

    [Fact]
    public void NightFeed_FromTheEveningToTheMorning_EndsTheNextDay()
    {
        var feed = Assert.IsType<Feed>(Assert.Single(Inputs.Import("a.csv", "date,feed start,feed stop,ml\n14/3/2025,22:00,06:00,480\n").Entries));
        Assert.Equal(new LocalDateTime(2025, 3, 15, 6, 0), feed.End!.Stated);
    }
}
