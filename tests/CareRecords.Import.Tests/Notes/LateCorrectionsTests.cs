using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Notes;

/// <summary>A later day puts an earlier one right: the one record that can be meant is changed, or the line is asked about; never a new event.</summary>
public sealed class LateCorrectionsTests
{
    private static NotesReading Read(params string[] lines) => NotesReader.Read(new SourceText("n.txt", lines), new ReadingContext { Date = new LocalDate(2025, 3, 3), NotAfter = new LocalDate(2025, 3, 20), DateOrder = DateOrder.DayMonthYear });

    [Theory]
    [InlineData("On Monday I wrote the inhaler as 6.40, it was 6.50", "06:50")]
    [InlineData("correction: Monday's 06:40 inhaler was 06:30", "06:30")]
    [InlineData("monday the inhaler was at 7, not 6.40", "07:00")]
    [InlineData("I correct the entry for Monday. The inhaler was at 0650 hrs and not 0640 hrs.", "06:50")]
    public void Time_OfTheOneRecordIsPutRight(string line, string expected)
    {
        var reading = Read("Mon 3 March", "06:40 salbutamol 2 puffs", "07:00 physio both bases 3 min each", "Thu 6 March", line);
        var dose = Assert.Single(reading.Entries.OfType<Dose>());
        Assert.Equal((expected, new LocalDate(2025, 3, 3)), (dose.Start!.Stated.TimeOfDay.ToString("HH:mm", null), dose.Start.Stated.Date));
        Assert.Equal([2, 5], dose.Sources.Select(s => s.Line!.Value));
        Assert.Contains("put right", dose.HowRead, StringComparison.Ordinal);
        Assert.Empty(reading.Problems);
        Balance.Holds(new SourceText("n.txt", ["Mon 3 March", "06:40 salbutamol 2 puffs", "07:00 physio both bases 3 min each", "Thu 6 March", line]), reading);
    }

    [Fact]
    public void Temperature_AndOxygenFlow_ArePutRight()
    {
        var reading = Read("Mon 3 March", "17:00 temp 39.8", "23:00 sats 91 on 0.5 l", "Wed 5 March", "yesterday was quiet. on Monday I put 39.8, it was 38.9", "on Monday at 23:00 I wrote 0.5 l, it was 1 l");
        Assert.Equal(38.9, Assert.Single(reading.Entries.OfType<Sign>()).Number);
        Assert.Equal(1, Assert.Single(reading.Entries.OfType<Check>()).OxygenLitresPerMinute);
        Assert.Empty(reading.Problems);
    }

    [Fact]
    public void Readings_ThatBorrowedTheTime_FollowIt()
    {
        var reading = Read("Mon 3 March", "07:00 physio both bases 3 min each, 92 before 95 after", "Tue 4 March", "yesterday I wrote physio 07:00, it was 07:40");
        Assert.All(reading.Entries, e => Assert.Equal(new LocalTime(7, 40), e.Start!.Stated.TimeOfDay));
    }

    [Theory]
    [InlineData("06:40 salbutamol 2 puffs", "06:40 paracetamol 5 ml")]
    [InlineData("08:40 salbutamol 2 puffs", "09:00 paracetamol 5 ml")]
    public void NoneOrSeveralThatCouldBeMeant_IsAsked(string first, string second)
    {
        var reading = Read("Mon 3 March", first, second, "Tue 4 March", "yesterday I wrote 6.40 and it was 6.50");
        Assert.Equal(5, Assert.Single(reading.Problems).Source.Line);
        Assert.Equal(2, reading.Entries.Count);
        Assert.DoesNotContain(reading.Entries, e => e.Start!.Stated.TimeOfDay == new LocalTime(6, 50));
    }
}
