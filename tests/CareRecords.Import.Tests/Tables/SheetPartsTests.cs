using CareRecords.Import.Tables.Layouts;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Tables;

/// <summary>How a sheet is taken apart: tables beside and under each other, charts of ticks, days across, labels at the side, sheets named after days.</summary>
public sealed class SheetPartsTests
{
    private static IEnumerable<LocalDateTime> Starts<T>(CareLog log)
        where T : CareEntry => log.Entries.OfType<T>().Select(e => e.When.Stated).Order();

    [Fact]
    public void TickChart_WithWhatHappenedDownTheSide_IsKnownToTheHourOrTheMinuteWritten()
    {
        var log = Inputs.Import("a.csv", "Day,What,6am,7am,8am,5pm,count\n3/11/2025,Feed off,✓,,,,1\n,Chest PT,,✓,,5:20,2\n,Sats,,94,,,\n,O2 litres,,0.5,,,\n14/11/2025,Chest PT,,,✓,no - asleep,1\n");
        Assert.Equal([new(2025, 11, 3, 7, 0), new(2025, 11, 3, 17, 20), new(2025, 11, 14, 8, 0)], Starts<Session>(log));
        Assert.Equal([false, true, false], log.Entries.OfType<Session>().OrderBy(s => s.Start!.Stated).Select(s => s.Start!.IsExact));
        var check = Assert.Single(log.Entries.OfType<Check>());
        Assert.Equal((94.0, 0.5), (check.SpO2!.Value, check.OxygenLitresPerMinute!.Value));
        Assert.Equal(new LocalDateTime(2025, 11, 3, 6, 0), Assert.Single(log.Entries.OfType<Feed>()).End!.Stated);
        Assert.Equal(new LocalDate(2025, 11, 14), Assert.Single(log.Omitted).When.Stated.Date);
    }

    [Theory]
    [InlineData("PHYSIO,,,,MEDS,,\nTime,Left,Right,,Time,Med,Dose\n07:00,3,3,,06:40,salbutamol,2 puffs\n17:00,4,4,,16:45,salbutamol,2 puffs\n")]
    [InlineData("Time,What,Amount,,Time,Med,Dose\n07:00,physio,3 each side,,06:40,salbutamol,2 puffs\n17:00,physio,3 each side,,16:45,salbutamol,2 puffs\n")]
    public void TablesOfOneDay_SideBySide_AreBothRead(string tables)
    {
        var log = Inputs.Import("a.csv", "3 November 2025,,,,,,\n" + tables);
        Assert.Equal([7, 17], Starts<Session>(log).Select(s => s.Hour));
        Assert.Equal([6, 16], Starts<Dose>(log).Select(s => s.Hour));
        Assert.Empty(log.Problems);
    }

    [Fact]
    public void EmptyColumnInsideATable_DoesNotPartIt()
    {
        var log = Inputs.Import("a.csv", "date,physio am,L,R,,physio pm,sats\n3 Nov 2025,7:00,3,3,,17:00,95\n4 Nov 2025,7:10,3,3,,17:10,94\n");
        Assert.Equal(4, log.Entries.OfType<Session>().Count());
        Assert.Equal(2, log.Entries.OfType<Check>().Count());
    }

    [Fact]
    public void SameHeadingsAgainToTheRight_EachUnderItsDay_AreADayEach()
    {
        var log = Inputs.Import("a.csv", "Date,3/11/2025,,Date,4/11/2025,\nTime,What,Amount,Time,What,Amount\n06:30,Salbutamol,2 puffs,06:35,Salbutamol,2 puffs\n07:00,Physio,3 each side,07:05,Physio,3 each side\n");
        Assert.Equal([new(2025, 11, 3, 7, 0), new(2025, 11, 4, 7, 5)], Starts<Session>(log));
        Assert.Equal(2, log.Entries.OfType<Dose>().Count());
    }

    [Fact]
    public void DaysOverTheSameFewColumns_TimesDownTheSide_AreRecordsOfTheirDays()
    {
        var log = Inputs.Import("a.csv", "WEEK STARTING 03/11/25,,,,,,\nTIME,MON,,TUE,,WED,\n,PT,SATS,PT,SATS,PT,SATS\n7AM,Y,95,Y,94,N,92\n5PM,Y,94,Y,94,Y,93\n");
        Assert.Equal([(3, 7), (3, 17), (4, 7), (4, 17), (5, 17)], Starts<Session>(log).Select(s => (s.Day, s.Hour)));
        Assert.Equal([95.0, 94.0, 94.0, 94.0, 92.0, 93.0], log.Entries.OfType<Check>().OrderBy(c => c.Start!.Stated).Select(c => c.SpO2!.Value));
    }

    [Fact]
    public void WordInTheCornerOfDays_SaysWhatTheWholeTableIsAbout()
    {
        var log = Inputs.Import("a.csv", "CHEST PT,6 Oct 2025,7 Oct 2025,8 Oct 2025\nwake up,6:45 L5 R5,6:50 L5 R5,7:00 same\nbefore bed,7:15 L5 R5,,7:25\n,,,\nOXYGEN LEVEL,Mon,Tue,Wed\n2:00,,,89\n7:30,96,95,92 on 1/2\n,,,\nPUMP,Mon,Tue,Wed\noff,6:00a,6:05a,\non,9:00p,,9:15p\n");
        Assert.Equal([(6, 6), (6, 19), (7, 6), (8, 7), (8, 19)], Starts<Session>(log).Select(s => (s.Day, s.Hour)));
        Assert.Equal([(6, 96.0, null), (7, 95.0, null), (8, 89.0, null), (8, 92.0, 0.5)], log.Entries.OfType<Check>().OrderBy(c => c.Start!.Stated).Select(c => (c.Start!.Stated.Day, c.SpO2!.Value, c.OxygenLitresPerMinute)));
        Assert.Equal((2, 2), (log.Entries.OfType<Feed>().Count(f => f.Start is null), log.Entries.OfType<Feed>().Count(f => f.End is null)));
    }

    [Fact]
    public void GroupsAndLabelsInTwoColumns_UnderDays_AreSessionsOfTheirOwn()
    {
        var log = Inputs.Import("a.csv", "NAME:,the little one,,WEEK COMMENCING:,3/11/2025,\n,,MON,TUES,WED,THURS\nSESSION 1,TIME,0700,0710,0705,0700\n,LEFT,3,3,4,4\n,SATS PRE,95,94,92,93\nSESSION 2,TIME,1700,1710,1705,1700\n,LEFT,3,3,4,4\n");
        Assert.Equal(8, log.Entries.OfType<Session>().Count(s => s.Areas.Count == 1));
        Assert.Equal(new LocalDateTime(2025, 11, 3, 7, 0), Starts<Session>(log).First());
        Assert.Equal(4, log.Entries.OfType<Check>().Count(c => c.Phase == CheckPhase.Before));
    }

    [Fact]
    public void LinesHeadedAtTheirSide_UnderADay_AreReadAsThatDay()
    {
        var log = Inputs.Import("a.csv", "Monday 3 November 2025\nPhysio,7:05,17:10\nSats,94,95\nFeed off,6:10,\nTuesday 4 November 2025\nPhysio,7:00,17:00\nSats,93,95\n");
        Assert.Equal([(3, 7), (3, 17), (4, 7), (4, 17)], Starts<Session>(log).Select(s => (s.Day, s.Hour)));
        Assert.Equal(new LocalDateTime(2025, 11, 3, 6, 10), Assert.Single(log.Entries.OfType<Feed>()).End!.Stated);
    }

    [Fact]
    public void DaysOfTheMonthAcross_TakeTheirMonthFromTheTitle()
    {
        var log = Inputs.Import("a.csv", "Medicine chart - November 2025,,,,,\nMedicine,Dose,Time,1,2,3\nSalbutamol,2 puffs,7am,✓,✓,✓\nAzithromycin,2.5 ml,8am,✓,,✓\n");
        Assert.Equal([(1, 7), (1, 8), (2, 7), (3, 7), (3, 8)], Starts<Dose>(log).Select(s => (s.Day, s.Hour)));
        Assert.Equal(["2 puffs", "2.5 ml"], log.Entries.OfType<Dose>().Select(d => d.Amount).Distinct().Order());
    }

    [Fact]
    public void HoursThatBeginAgainAfterNoon_AreCountedOn()
    {
        var log = Inputs.Import("a.csv", ",MONDAY 3/11/25,TUESDAY 4/11/25,WEDNESDAY 5/11/25\n6.00,feed off,feed off,feed off\n7.00,physio,physio,physio\n12.00,,,physio\n5.00,physio,physio,physio\n");
        Assert.Equal([7, 17, 7, 17, 7, 12, 17], Starts<Session>(log).Select(s => s.Hour));
    }

    [Theory]
    [InlineData("Mon", "Tue")]
    [InlineData("Day 1", "Day 2")]
    [InlineData("3 Nov 2025", "4 Nov 2025")]
    public void SheetsNamedAfterDays_AreOfThoseDays(string first, string second)
    {
        object?[][] Rows(string? title) => [[title], ["Time", "What", "Amount"], ["07:00", "physio", "3 each side"], ["17:30", "sats", "95"]];
        using var inputs = new Inputs().With("a.xlsx", TinyWorkbook.Of((first, Rows("Week of 3 November 2025")), (second, Rows(null))));
        var log = inputs.Import();
        Assert.Equal([new(2025, 11, 3, 7, 0), new(2025, 11, 4, 7, 0)], Starts<Session>(log));
    }

    [Fact]
    public void NumbersThatLostTheirNoughts_AreMinutesAfterMidnight_OrAskedAbout()
    {
        using var inputs = new Inputs().With("a.xlsx", TinyWorkbook.Of(("Log", [["9 September 2025"], ["Time", "What", "Sats"], [15.0, "Sats", 92.0], [555.0, "Pump off"], [615.0, "Sats", 93.0], [6.0, "Sats", 94.0], [1700.0, "Sats", 95.0]])));
        var log = inputs.Import();
        Assert.Equal([new(2025, 9, 9, 0, 15), new(2025, 9, 9, 6, 15), new(2025, 9, 9, 17, 0)], Starts<Check>(log));
        Assert.NotEmpty(log.Problems);
    }

    [Fact]
    public void WeekdaysBesideDaysWithoutAYear_SettleTheYear()
    {
        var log = Inputs.Import("a.csv", "what,Mon 3/11,Tue 4/11,Wed 5/11,Thu 13/11\n6am physio,✓,✓,✓,✓\n");
        Assert.All(log.Entries, e => Assert.Equal(2025, e.When.Stated.Year));
        Assert.Equal([6, 6, 6, 6], Starts<Session>(log).Select(s => s.Hour));
    }

    [Theory]
    [InlineData("strt", Concept.Start)]
    [InlineData("rght", Concept.Right)]
    [InlineData("aftr", Concept.After)]
    [InlineData("saturashun", Concept.Saturation)]
    [InlineData("tempreture", Concept.Temperature)]
    [InlineData("medisin", Concept.Medicine)]
    [InlineData("secretians", Concept.Secretions)]
    internal void MisspeltHeading_IsKnownByItsSound(string word, Concept concept) => Assert.Equal(concept, Assert.Single(Lexicon.Find(word, out _)).Concept);

    [Theory]
    [InlineData("carpet")]
    [InlineData("garden")]
    [InlineData("swimming")]
    public void OtherWord_IsNoHeading(string word) => Assert.Empty(Lexicon.Find(word, out _));
}
