using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Notes;

/// <summary>Messages that complete or answer the ones before them.</summary>
public sealed class ThreadsTests
{
    private static NotesReading Read(params string[] lines) => NotesReader.Read(new SourceText("thread.txt", lines), new ReadingContext { NotAfter = new LocalDate(2026, 9, 20), DateOrder = DateOrder.DayMonthYear });

    [Fact]
    public void ASessionThatBeganNow_TakesItsAreasItsEndAndItsReadings()
    {
        var reading = Read("[14/09/26, 6:52 am] Ann: physio started now", "[14/09/26, 7:20 am] Bob: How many minutes?", "[14/09/26, 7:24 am] Ann: lower 3 each upper 2 each", "[14/09/26, 7:24 am] Ann: finished 7.15", "[14/09/26, 7:27 am] Ann: 93 before, 96 after");
        var session = Assert.Single(reading.Entries.OfType<Session>());
        Assert.Equal((new LocalTime(6, 52), new LocalTime(7, 15), 10d, 3), (session.Start!.Stated.TimeOfDay, session.End!.Stated.TimeOfDay, session.TotalMinutes!.Value, session.Sources.Count));
        Assert.Equal([(93d, CheckPhase.Before), (96d, CheckPhase.After)], reading.Entries.OfType<Check>().Select(c => (c.SpO2!.Value, c.Phase)));
        Assert.All(reading.Entries.OfType<Check>(), c => Assert.Equal(new LocalTime(6, 52), c.Start!.Stated.TimeOfDay));
        Assert.Empty(reading.Problems);
    }

    [Fact]
    public void Given_AnswersTheDoseThatWasAskedFor()
    {
        var reading = Read("[15/09/26, 9:12 am] Ann: please give paracetamol 5 ml", "[15/09/26, 9:20 am] Bob: Given");
        var dose = Assert.IsType<Dose>(Assert.Single(reading.Entries));
        Assert.Equal(("paracetamol", "5 ml", new LocalTime(9, 20), TimePrecision.MessageStamp), (dose.Medicine, dose.Amount, dose.Start!.Stated.TimeOfDay, dose.Start.Precision));
        Assert.Contains("please give", dose.HowRead, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[15/09/26, 5:12 am] Ann: please give paracetamol 5 ml")]
    [InlineData("[15/09/26, 9:12 am] Ann: is the nurse here yet?")]
    public void Given_LongAfterOrToNothing_IsAsked(string before)
    {
        var reading = Read(before, "[15/09/26, 9:20 am] Bob: Given");
        Assert.Empty(reading.Entries);
        Assert.Equal(2, Assert.Single(reading.Problems).Source.Line);
    }

    [Fact]
    public void ATimeInAMessage_IsTheLastBeforeItWasWritten()
    {
        var reading = Read("[15/09/26, 7:10 am] Ann: physio started now", "[15/09/26, 7:40 am] Ann: finished 7.35");
        Assert.Equal(new LocalTime(7, 35), Assert.Single(reading.Entries.OfType<Session>()).End!.Stated.TimeOfDay);
    }
}
