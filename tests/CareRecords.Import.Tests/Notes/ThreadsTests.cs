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
    [InlineData("and the antibiotic?")]
    [InlineData("I'm stuck at work, chest done?")]
    public void AQuestionWithoutATime_IsNoRecord(string question) => Assert.Empty(Read("[15/09/26, 6:45 pm] Ann: " + question).Entries);

    [Fact]
    public void YesToAQuestionWithoutATime_IsAsked()
    {
        var reading = Read("[15/09/26, 6:46 pm] Ann: I'm stuck at work, chest done?", "[15/09/26, 6:50 pm] Bob: yes");
        Assert.Empty(reading.Entries);
        Assert.Equal(2, Assert.Single(reading.Problems).Source.Line);
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

    [Theory]
    [InlineData("did you do him tonight?", "aye 7 oclock, bases and tops", "19:00 Session")]
    [InlineData("did you manage his 6 o clock?", "Yes love but only the lowers", "18:00 Session")]
    [InlineData("and did he get his inhaler before?", "yes 15:50", "15:50 Dose")]
    [InlineData("when was the peg feed?", "finish 15:20", "15:20 Feed")]
    [InlineData("did you do him tonight?", "no, he was asleep", "")]
    [InlineData("did you do him tonight?", "I will at 9", "")]
    public void AnAnswer_IsOfWhatWasAsked(string question, string answer, string expected)
    {
        var reading = Read($"[14/09/26, 8:10 pm] Ann: {question}", $"[14/09/26, 8:20 pm] Bob: {answer}");
        Assert.Equal(expected, string.Join("; ", reading.Entries.Select(e => $"{e.When.Stated.TimeOfDay.ToString("HH:mm", null)} {e.GetType().Name}")));
        Assert.All(reading.Entries, e => Assert.Contains("read as the answer", e.HowRead, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("14/09/2026, 06:58 - You created group “Lena chest”")]
    [InlineData("[14/09/2026, 06:58] Ann: image omitted")]
    [InlineData("- [ ] 3:30 pm physio lowers 3 each")]
    public void WhatAProgramWrites_AndWhatIsNotTicked_IsNoEvent(string line)
    {
        var reading = Read("[14/09/2026, 06:50] Ann: salbutamol 2 puffs 6.30", line);
        Assert.IsType<Dose>(Assert.Single(reading.Entries));
        Assert.Empty(reading.Problems);
    }

    [Fact]
    public void WhatSomebodyIsQuotedAsSaying_IsAdvice()
    {
        var reading = Read("[14/09/2026, 15:40] Ann: the physio says:", "4 times every day until no fever", "low parts 4 min, top 3 min", "[14/09/2026, 18:20] Ann: chest 6pm low parts 4 each");
        Assert.Equal(new LocalTime(18, 0), Assert.IsType<Session>(Assert.Single(reading.Entries)).Start!.Stated.TimeOfDay);
        Assert.Empty(reading.Problems);
    }

    [Fact]
    public void ALaterMessage_DoesNotChangeTheSessionOfTheMorning()
    {
        var reading = Read("[14/09/2026, 07:10] Ann: chest 6.40 lowers 3 each uppers 2 each", "[14/09/2026, 18:24] Bob: only the lowers, he'd had enough by then");
        Assert.Equal(4, Assert.IsType<Session>(Assert.Single(reading.Entries)).Areas.Count);
        Assert.Equal(2, Assert.Single(reading.Problems).Source.Line);
    }

    [Fact]
    public void TheHourThatIsWrong_NamesTheSessionThatIsMoved()
    {
        var reading = Read("14/09/2026", "chest 7am, 11am and 3pm bottoms 3 each", "amoxicillin 5 ml 4pm", "Gwyn has 11 wrong, it was 11.30am");
        Assert.Equal(["07:00", "11:30", "15:00"], reading.Entries.OfType<Session>().Select(s => s.Start!.Stated.TimeOfDay.ToString("HH:mm", null)).Order(StringComparer.Ordinal));
        Assert.Equal(new LocalTime(16, 0), Assert.Single(reading.Entries.OfType<Dose>()).Start!.Stated.TimeOfDay);
    }
}
