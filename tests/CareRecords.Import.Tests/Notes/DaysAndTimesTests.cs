using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;
using static CareRecords.Import.Tests.Notes.Telling;

namespace CareRecords.Import.Tests.Notes;

/// <summary>Which day and which time an event is of, and how many times a line holds. The lines are invented.</summary>
public sealed class DaysAndTimesTests
{
    [Theory]
    [InlineData("4-Mar 0700 salbutamol 2 puffs")]
    [InlineData("4-Mar: 0700 salbutamol 2 puffs")]
    [InlineData("4/Mar 0700 salbutamol 2 puffs")]
    [InlineData("Mar-4 0700 salbutamol 2 puffs")]
    [InlineData("4-Mar-25 0700 salbutamol 2 puffs")]
    [InlineData("4-Mar-2025 0700 salbutamol 2 puffs")]
    public void DayAndMonthsName_JoinedByASign_AreADay(string line) =>
        Assert.Equal("2025-03-04 07:00", Assert.Single(Whole(line).Entries).When.Stated.ToString("uuuu-MM-dd HH:mm", null));

    [Fact]
    public void NightBelowTheEvening_IsOfTheNextDay() =>
        Assert.Equal(["04 07:00", "04 18:00", "05 02:30"], Whole("Tue 4 March 2025", "Morning", "7.00 physio LL3 RL3", "Evening", "6.00 physio LL3 RL3", "Night", "half past 2 woke, sats 94").Entries.OrderBy(e => e.When.Stated).Select(e => e.When.Stated.ToString("dd HH:mm", null)));

    [Fact]
    public void WeekdayOfAFeedsEnd_IsTheNextOne() =>
        Assert.Equal("2025-03-05 06:00", Assert.Single(Whole("Tue 4 March 2025", "physio 7.30am LL3 RL3", "Night feed on at 9pm, off at 6am Wednesday, 500ml.").Entries.OfType<CareRecords.Records.Feed>()).End!.Stated.ToString("uuuu-MM-dd HH:mm", null));

    [Theory]
    [InlineData("Pat is on the back, 3 minutes each bottom side. Morning is 6.30 and evening is 6 unless I write different.", "06:30 18:00", true)]
    [InlineData("Pat is on the back, 3 minutes each bottom side.", "09:00 19:00", false)]
    public void TimeOfThePartOfADay_SaidOnceForAll_IsKept(string above, string times, bool exact)
    {
        var sessions = Whole(above, "", "Tue 4 March 2025", "pat morning and evening").Entries.OfType<CareRecords.Records.Session>().ToList();
        Assert.Equal(times, string.Join(' ', sessions.Select(s => s.When.Stated.ToString("HH:mm", null))));
        Assert.All(sessions, s => Assert.Equal(exact, s.When.IsExact));
    }

    [Fact]
    public void SubjectsOfLetters_HeadTheirDays()
    {
        var reading = Whole("To: self", "Subject: chest record, Tuesday 4 March 2025", "", "Physio at 7.15am.", "Subject: Wednesday 5 March 2025", "Sent: 5/3/2025 21:04", "Physio at 6.45pm.");
        Assert.Equal(["2025-03-04", "2025-03-05"], reading.Entries.Select(e => e.When.Stated.Date.ToString("uuuu-MM-dd", null)));
        Assert.Empty(reading.Problems);
    }

    [Theory]
    [InlineData("Subject: 4 March 2025 chest LL3 RL3 at 7am", "07:00 session LL3 RL3; 18:45 session")]
    [InlineData("Subject: 4 March 2025 chest record", "18:45 session")]
    public void SubjectThatTellsCare_IsReadAsALine(string subject, string told)
    {
        var reading = Whole("To: self", subject, "", "Physio at 6.45pm.");
        Assert.Equal(told, Told(reading));
        Assert.All(reading.Entries, e => Assert.Equal("2025-03-04", e.When.Stated.Date.ToString("uuuu-MM-dd", null)));
        Assert.Empty(reading.Problems);
    }

    [Fact]
    public void ATimeWithNotDone_TellsOfNothing_AndAsksNothing()
    {
        var reading = Whole("X = not done", "Tue 4 March 2025", "07:00 chest LL3 RL3", "19.30 X", "20:00 not done");
        Assert.Equal("07:00 session LL3 RL3", Told(reading));
        Assert.Empty(reading.Problems);
    }

    [Theory]
    [InlineData("610 pump off 625 salbutamol 4 puffs 645 chest bottoms 3 each side", "-06:10 feed; 06:25 salbutamol 4 puffs; 06:45 session LL3 RL3")]
    [InlineData("pump off 6.15 am puffs at 6.45 am", "-06:15 feed; 06:45 unknown")]
    [InlineData("feed 9am 100, 2pm 100", "09:00 feed 100; 14:00 feed 100")]
    [InlineData("20:15 chest bottoms 3 each. temp 38.4. paracetamol 7.5ml after", "20:15 session LL3 RL3; 20:15 paracetamol 7.5 ml; 20:15 temperature 38.4 C")]
    [InlineData("pump not on tonight, on the ward's orders", "")]
    [InlineData("05:30 pump aff, vomited mucus", "-05:30 feed; 05:30 vomit mucus")]
    [InlineData("19:30 just bottoms no vibs", "19:30 session LL RL")]
    public void SeveralTimes_OrNone_InOneChunk(string line, string expected) => Assert.Equal(expected, Told(Read(line)));

    [Theory]
    [InlineData("clapping seven eleven three and seven, bottoms three minutes each", "07:00 session LL3 RL3; 11:00 session LL3 RL3; 15:00 session LL3 RL3; 19:00 session LL3 RL3")]
    [InlineData("clapping seven thirty eleven thirty three thirty seven thirty, bottoms three minutes each", "07:30 session LL3 RL3; 11:30 session LL3 RL3; 15:30 session LL3 RL3; 19:30 session LL3 RL3")]
    [InlineData("physio at 7 11 3 and 7, lowers 4 mins each", "07:00 session LL4 RL4; 11:00 session LL4 RL4; 15:00 session LL4 RL4; 19:00 session LL4 RL4")]
    public void HoursSaidWithoutStops_AreARow(string line, string expected) => Assert.Equal(expected, Told(Read(line)));

    [Fact]
    public void MinutesInARow_AreNoHours() =>
        Assert.Equal(7, Assert.Single(Read("07:15 physio, all four places 3, 3, 2, 2").Entries.OfType<Session>()).Start!.Stated.Hour);

    [Theory]
    [InlineData("24.11. Monday", "Monday 24.11.")]
    [InlineData("2.12. Tuesday", "2/12 Tuesday")]
    public void DayAndMonthWithStops_BeforeAWeekday_HeadADay(string heading, string same)
    {
        static string Read(string head) => string.Join(' ', NotesReader.Read(new SourceText("n.txt", [head, "07:00 physio"]), new ReadingContext { NotAfter = new LocalDate(2025, 12, 20), DateOrder = DateOrder.DayMonthYear }).Entries.Select(e => e.When.Stated.Date.ToString("uuuu-MM-dd", null)));
        Assert.Equal(Read(same), Read(heading));
        Assert.NotEqual("", Read(heading));
    }

    [Fact]
    public void RemarkOnAnotherDayInBrackets_OpensNoDay()
    {
        var reading = NotesReader.Read(new SourceText("n.txt", ["Sat 19/07", "07:00 physio", "Mon 21/07", "(Sunday not written, his gran had him)", "07:30 physio"]), new ReadingContext { NotAfter = new LocalDate(2025, 7, 30), DateOrder = DateOrder.DayMonthYear });
        Assert.Equal([19, 21], reading.Entries.OfType<Session>().Select(s => s.Start!.Stated.Day));
    }

    [Fact]
    public void SmallDayAndMonth_BeforeCare_AreADay_WhereOtherLinesBeginSo()
    {
        string[] lines = ["15/12 P 0700", "18/12 P 0710", "21/12 P 0700", "28/12 P 0700", "2/1 P 0650"];
        var reading = NotesReader.Read(new SourceText("n.txt", ["P = percussion", .. lines]), new ReadingContext { NotAfter = new LocalDate(2026, 1, 10), DateOrder = DateOrder.DayMonthYear });
        Assert.Equal(new LocalDate(2026, 1, 2), reading.Entries.OfType<Session>().Max(s => s.Start!.Stated).Date);
    }

    [Theory]
    [InlineData("Amoxicillin was started last night at 8, 5 ml", "2025-03-03 20:00")]
    [InlineData("clapped him last night at 9pm", "2025-03-03 21:00")]
    [InlineData("sats 92 last night at 3am", "2025-03-04 03:00")]
    [InlineData("sats 92 at 3.30am last night", "2025-03-04 03:30")]
    public void LastNight_IsTheEveningBefore_AndTheSmallHoursOfTheDay(string line, string expected) =>
        Assert.Equal(expected, Assert.Single(Read(line).Entries).When.Stated.ToString("uuuu-MM-dd HH:mm", null));

    [Fact]
    public void ListOfTimes_ThenNotDone_IsAsked()
    {
        var reading = Read("physio 11.15am, 3pm - not done");
        Assert.Empty(reading.Entries);
        Assert.Contains("which of these was left out", Assert.Single(reading.Problems).Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("feed 100 at 7.00pm (correction: 7.30pm)", "19:30 feed 100")]
    [InlineData("O2 made 0.25 L at 2 pm / 2.30 pm SpO2 95", "14:00 check  on 0.25; 14:30 check 95 on 0.25")]
    [InlineData("physio 7.00am, 11.00am and 7.00pm. Secretions were thick at the 11.00am session", "07:00 session; 11:00 session; 11:00 secretions thick; 19:00 session")]
    [InlineData("She was 94% by 7.20am. Chest done at 11.00am and 7.00pm, each time followed by vibration for 1 minute each side", "07:20 check 94; 11:00 session LU1 RU1; 19:00 session LU1 RU1")]
    [InlineData("CPT 2: 11:30 am both lowers 3", "11:30 session LL3 RL3")]
    [InlineData("**Session 3:** 3:45 pm both lowers 3", "15:45 session LL3 RL3")]
    [InlineData("18.50 sats 93 on 0.5. 19.30 same", "18:50 check 93 on 0.5; 19:30 check 93 on 0.5")]
    [InlineData("18.50 chest both lowers 3. 19.30 same", "18:50 session LL3 RL3; 19:30 session LL3 RL3")]
    [InlineData("O2 0,5 from 03h00, sats 93 + clap 06h30 lowers 4 each side", "03:00 check 93 on 0.5; 06:30 session LL4 RL4")]
    [InlineData("2p neb + CPT both lowers 3", "14:00 session LL3 RL3; 14:00 unknown")]
    public void Times_SaidAgainOrOfOthers(string line, string expected) => Assert.Equal(expected, Told(Read(line)));

    [Fact]
    public void ADayAfterItsClock_OpensThatDay()
    {
        var reading = Read("7am neb", "Three am Thursday the sixth. Sats 88.", "Feed off at four am", "9am Friday 15 ml water");
        Assert.Equal(["04 07:00", "06 03:00", "06 04:00"], reading.Entries.OrderBy(e => e.When.Stated).Select(e => e.When.Stated.ToString("dd HH:mm", null)));
    }

    [Fact]
    public void SinceYesterday_IsOfYesterday_AndTheDayBeginsAfterIt()
    {
        var reading = Read("off o2 since 10am yest", "salb 4 puffs 6.40", "6.55 clapping both lowers 3");
        Assert.Equal(["03 10:00", "04 06:40", "04 06:55"], reading.Entries.OrderBy(e => e.When.Stated).Select(e => e.When.Stated.ToString("dd HH:mm", null)));
    }

    [Fact]
    public void WhatWasOffItsPlace_PutsNoTimeRight()
    {
        var reading = Read("20:30 chest both lowers 3", "21.05 probe alarm, it was off his toe. Put back");
        Assert.Equal("20:30 session LL3 RL3", Told(reading));
    }
}
