using CareRecords.Records;

namespace CareRecords.Import.Tests.Tables;

/// <summary>What columns mean by their headings and their cells together, and what single cells say.</summary>
public sealed class ColumnsAndCellsTests
{
    [Fact]
    public void RangeWithColons_KeepsItsEnd()
    {
        var session = Assert.Single(Inputs.Import("a.csv", "Date,PM CPT\n14 Nov 2025,5:05-5:25\n").Entries.OfType<Session>());
        Assert.Equal((17, 17, 25), (session.Start!.Stated.Hour, session.End!.Stated.Hour, session.End.Stated.Minute));
    }

    [Theory]
    [InlineData("Oxygen before,Oxygen after", "95,97")]
    [InlineData("SpO2 start,SpO2 end", "95,97")]
    public void OxygenOverSaturations_IsTheSaturation(string headings, string cells)
    {
        var log = Inputs.Import("a.csv", $"Date,Start,Finish,L,R,{headings}\n3 Nov 2025,07:00,07:20,3,3,{cells}\n4 Nov 2025,07:00,07:20,3,3,{cells}\n");
        Assert.Equal([(95.0, CheckPhase.Before), (97.0, CheckPhase.After), (95.0, CheckPhase.Before), (97.0, CheckPhase.After)], log.Entries.OfType<Check>().Select(c => (c.SpO2!.Value, c.Phase)));
    }

    [Fact]
    public void HeadingOfAUnitAlone_UnderATitleOfDays_IsItsMeasure()
    {
        var log = Inputs.Import("a.csv", "Week of 6 October 2025,,\nTEMPS,time,F\nWed,2:30p,101.5\nThu,9:00a,100.2\n");
        Assert.Equal([8, 9], log.Entries.OfType<Sign>().Where(s => s.Kind == SignKind.Temperature).Select(s => s.Start!.Stated.Day));
    }

    [Fact]
    public void AmountOfPuffsUnderAMedicine_IsNoTime()
    {
        var log = Inputs.Import("a.csv", ",Mon 3 Nov 2025,Tue 4 Nov 2025,Wed 5 Nov 2025\nMORNING,,,\nSalbutamol,2 puffs,2 puffs,4 puffs\nPhysio,✓ 10 mins,✗ too tired,✓ 15 mins\n");
        Assert.Equal(["2 puffs", "2 puffs", "4 puffs"], log.Entries.OfType<Dose>().Select(d => d.Amount));
        Assert.All(log.Entries.OfType<Dose>(), d => Assert.False(d.Start!.IsExact));
        Assert.Equal([10.0, 15.0], log.Entries.OfType<Session>().Select(s => s.MinutesWritten!.Value));
        Assert.Single(log.Omitted);
    }

    [Fact]
    public void NumberUnderMillilitresOfAMedicine_IsItsAmountAtTheTimeOfTheRow()
    {
        var dose = Assert.Single(Inputs.Import("a.csv", "Date,Time,Chest physio,Paracetamol ml,Sats %\n3 Nov 2025,07:00,20 min,,94\n,14:00,,5,\n").Entries.OfType<Dose>());
        Assert.Equal(("5 ml", 14, true), (dose.Amount, dose.Start!.Stated.Hour, dose.Start.IsExact));
    }

    [Fact]
    public void SessionColumnOfParts_BesideATime_IsWhenInTheDay()
    {
        var log = Inputs.Import("a.csv", "Session,Date,Time,Mins,Sats B/A,Notes\nAM,3 Nov 2025,07:00,20,94/96,\nPM,3 Nov 2025,5:00,20,93/95,\nPM,4 Nov 2025,,,,not done - visitors\n");
        Assert.Equal([7, 17], log.Entries.OfType<Session>().Select(s => s.Start!.Stated.Hour));
        Assert.Equal(4, log.Entries.OfType<Check>().Count());
        Assert.Single(log.Omitted);
    }

    [Fact]
    public void AreasInWords_BesideStartAndFinish_AreASession()
    {
        var log = Inputs.Import("a.csv", "Session log,,,,\nDate,Start,Finish,Areas,Sats\n3 Nov 25,7:00am,7:20am,bases 3 each tops 2 each,94 > 96\n4 Nov 25,7:00am,7:15am,same,92 > 94\n");
        Assert.Equal([4, 4], log.Entries.OfType<Session>().Select(s => s.Areas.Count));
        Assert.Equal([20, 15], log.Entries.OfType<Session>().Select(s => s.End!.Stated.Minute));
    }

    [Fact]
    public void SeveralTimesInACell_BesideACountOfSessions_AreTheSessions()
    {
        var log = Inputs.Import("a.csv", "date,chest x,times,sats low,sats high\n3 Nov 2025,2,7:05 & 17:10,92,97\n4 Nov 2025,3,\"7:00, 12:00, 17:00\",90,96\n");
        Assert.Equal(5, log.Entries.OfType<Session>().Count());
        Assert.Equal([(92.0, 97.0), (90.0, 96.0)], log.Entries.OfType<Check>().Select(c => (c.SpO2!.Value, c.SpO2High!.Value)));
    }

    [Fact]
    public void TimeInTheWordsOfWhatHappened_IsTheTimeOfTheRow()
    {
        var log = Inputs.Import("a.csv", "date,what we did,how long,where,sats\n3rd Nov 2025,clapping 7.05am,10 mins,both bases,95\n,feed 8am,30 mins,pump 150mls,\n");
        Assert.Equal(7, Assert.Single(log.Entries.OfType<Session>()).Start!.Stated.Hour);
        var feed = Assert.Single(log.Entries.OfType<Feed>());
        Assert.Equal((150.0, 8, 30), (feed.Millilitres!.Value, feed.Start!.Stated.Hour, feed.End!.Stated.Minute));
    }

    [Fact]
    public void TwelveNoon_IsNoonInWordsBesideATable()
    {
        var log = Inputs.Import("a.csv", "date,time,what\n18 Aug 2025,12:00,Milk thru NGT 120 ml\n,17:00,physio\n");
        Assert.Equal(12, Assert.Single(log.Entries.OfType<Feed>()).Start!.Stated.Hour);
    }

    [Fact]
    public void RemarkInBracketsBehindMinutes_IsReadToo()
    {
        var log = Inputs.Import("a.csv", "date,am physio\n3 Nov 2025,7:20 L6 R6 (threw up after)\n4 Nov 2025,7:30 L6 R6\n");
        Assert.Equal(2, log.Entries.OfType<Session>().Count());
        Assert.Equal(SignKind.Vomit, Assert.Single(log.Entries.OfType<Sign>()).Kind);
    }

    [Fact]
    public void RowWithWordsOfSomethingDoneAndNoRecord_IsAsked() =>
        Assert.Contains(Inputs.Import("a.csv", "date,,physio,L,R,remarks\n8 Feb 2025,am,7.05,3,3,\n9 Feb 2025,am,,,,at grandmas - she did one about 9\n").Problems, p => p.Source.Line == 3);

    [Fact]
    public void SideAndAreaWithAStroke_AreOnePart()
    {
        var session = Assert.Single(Inputs.Import("a.csv", "date,time,L/upper,L/lower,R/upper,R/lower\n3 Nov 2025,07:05,2,3,2,3\n").Entries.OfType<Session>());
        Assert.Equal([(Side.Left, ChestArea.Upper), (Side.Left, ChestArea.Lower), (Side.Right, ChestArea.Upper), (Side.Right, ChestArea.Lower)], session.Areas.Select(a => (a.Side, a.Area)));
    }

    [Fact]
    public void MonthOfTheTitle_SettlesTheOrderOfTheDays()
    {
        var log = Inputs.Import("a.csv", "Chest book Feb 2025,,\nDate,physio,sats\n3/2,07:05,95\n6/2,07:05,95\n");
        Assert.All(log.Entries, e => Assert.Equal(2, e.When.Stated.Month));
        Assert.NotEmpty(log.Entries);
    }

    [Fact]
    public void MinutesOfTwoSidesBesideATime_AreNoDate()
    {
        var log = Inputs.Import("a.csv", "Date,Chest am,Chest pm\n7 Jul 2025,7.15 3/3,6.30 3/3\n8 Jul 2025,7.00 2/2,6.45 4/4\n");
        Assert.Equal([7, 7, 8, 8], log.Entries.OfType<Session>().Select(s => s.Start!.Stated.Day));
        Assert.All(log.Entries, e => Assert.Equal(7, e.When.Stated.Month));
    }

    [Fact]
    public void StampsOfAForm_GiveTheDay_AndTheHalfOfIt()
    {
        var log = Inputs.Import("a.csv", "Timestamp,Who,When (blank if now),What,Details,SpO2\n1/20/2025 6:52:10,Ann,6:30 AM,Feed,pump off,\n1/21/2025 18:40:00,Ann,6.15,Chest PT,lowers 3 each side,\n1/22/2025 14:12:20,Ann,,Check,,92\n1/23/2025 0:25:51,Ann,11:50 PM,Check,,88\n");
        Assert.Equal(["feed to 20 06:30 TubePump", "session 21 18:15 LL3 RL3", "check 22 14:12~ 92", "check 22 23:50 88"], Told.By(log).Select(t => t.Replace("PumpedTube", "TubePump", StringComparison.Ordinal)));
    }

    [Fact]
    public void NightRowsUnderTheirDay_HaveTheirSmallHoursOnTheNext()
    {
        var log = Inputs.Import("a.csv", "Date,Shift,Chest,Sats\n13/5/25,Day,0715 lowers 3 each,\n,Night,2200 lowers 3 each,94 air 0300\n14/5/25,Day,0730 lowers 3 each,\n,Night,0530 lowers 4 each,\n");
        Assert.Equal(["session 13 07:15 LL3 RL3", "session 13 22:00 LL3 RL3", "check 14 03:00 94 o0", "session 14 07:30 LL3 RL3", "session 15 05:30 LL4 RL4"], Told.By(log));
    }

    [Fact]
    public void SatBehindOtherHeadings_IsTheSaturation()
    {
        var log = Inputs.Import("a.csv", "Date,Time,Left low,Right low,Sat,Remarks\n16 June 2025,7:00,3,3,96,sat after\n,18:30,3,3,94,sat before\n");
        Assert.Equal([(96.0, CheckPhase.After), (94.0, CheckPhase.Before)], log.Entries.OfType<Check>().Select(c => (c.SpO2!.Value, c.Phase)));
    }

    [Fact]
    public void MinutesInTheOrderOfATitle_AreThoseOfItsPlaces()
    {
        var log = Inputs.Import("a.csv", "\"mins go: L bottom, R bottom, L top, R top\"\nDate,Chest,Mins\n10 Mar 2025,7.00am,\"3,3,2,2\"\n11 Mar 2025,7.10am,\"3,3\"\n");
        Assert.Equal(["session 10 07:00 LL3 RL3 LU2 RU2", "session 11 07:10 LL3 RL3"], Told.By(log));
    }

    [Fact]
    public void DateOnlyWhereItWasNotToday_IsTheStampsDayElsewhere()
    {
        var log = Inputs.Import("a.csv", "Timestamp,Date (if not today),Time,What,Areas clapped,Minutes on each area,Vibration (min each side)\n2025-01-13 07:21:30,,07:00,Chest PT,\"Left lower, Right lower\",3,1\n2025-01-14 07:21:30,2025-01-13,18:00,Chest PT,\"Left lower, Right lower\",3,\n");
        var sessions = log.Entries.OfType<Session>().ToList();
        Assert.Equal([(13, 7), (13, 18)], sessions.Select(s => (s.Start!.Stated.Day, s.Start.Stated.Hour)));
        // The minutes are of each part that is named; vibration has its own.
        Assert.Equal([8.0, 6.0], sessions.Select(s => s.Areas.Sum(a => a.Minutes!.Value)));
    }

    [Fact]
    public void KeyInOneColumnBesideTheTable_HoldsNoReadings()
    {
        var log = Inputs.Import("a.csv", "Date,Time,SpO2,Chest,,KEY\n3 Nov 2025,07:00,95,base 3 each,,base = lower\n,18:00,94,base 3 each,,goal sats over 92 and 1000 ml a day\n");
        Assert.Equal(["check 03 07:00 95", "session 03 07:00 LL3 RL3", "check 03 18:00 94", "session 03 18:00 LL3 RL3"], Told.By(log));
    }

    [Fact]
    public void RemarksInAColumnApart_AreNoKey()
    {
        var log = Inputs.Import("a.csv", "Date,Time,SpO2,,\n3 Nov 2025,07:00,95,,\n,08:00,94,,threw up at 08:20 after the morning feed and I changed him\n,09:00,93,,paracetamol 5 ml 09:10\n");
        Assert.Equal(["check 03 07:00 95", "check 03 08:00 94", "sign 03 08:20 vomit", "check 03 09:00 93", "dose 03 09:10 paracetamol 5 ml"], Told.By(log));
    }

    [Fact]
    public void DayAboveTheTable_IsNotTheWeightBesideIt() =>
        Assert.Equal(["check 09 06:00 96"], Told.By(Inputs.Import("a.csv", "Date:,2025-06-09,Name: J,Wt 14.2 kg\nTime,SpO2,HR,RR\n06:00,96,,\n")));

    [Theory]
    [InlineData("Meds / comments")]
    [InlineData("Chest, feeds, meds")]
    public void ColumnOfWordsOfAnyKind_IsReadAsWords(string heading)
    {
        var log = Inputs.Import("a.csv", $"Date,Time,SpO2,\"{heading}\"\n9 June 2025,07:00,95,salbutamol 4 puffs 06:45\n,12:00,96,good day at school\n,21:00,97,PEG feed on 50 ml/h\n");
        Assert.Equal(["dose 09 06:45 salbutamol 4 puffs", "check 09 07:00 95", "check 09 12:00 96", "check 09 21:00 97", "feed 09 21:00 50 ml/h PumpedTube"], Told.By(log).Select(t => t.TrimEnd().Replace("~", "", StringComparison.Ordinal)));
    }

    [Fact]
    public void WordsWithAClockNearTheirBeginning_NeedNoneOfTheirRow()
    {
        var log = Inputs.Import("a.csv", "Date;Time;Sats %;What we did\n14/07/2025;06h30;96;clapped 06h50: L low 3, R low 3, tops 2 each\n;18h00;97;clapped 18h10 low 3 tops 2 each side, slimy stuff\n;20h00;95;paracetamol 5 ml 20h10 because he was hot and cross\n");
        Assert.Equal(["session 14 06:50 LL3 RL3 LU2 RU2", "session 14 18:10 LL3 RL3 LU2 RU2"], Told.By(log).Where(t => t.StartsWith("session", StringComparison.Ordinal)));
    }

    [Fact]
    public void MedicineNamedBesideItsAmount_AndABreathingTreatment_AreDoses()
    {
        var log = Inputs.Import("a.csv", "Date,Time,What happened,Amount / minutes\n10/26/2025,6:20 AM,Breathing treatment,albuterol 2.5 mg\n10/26/2025,6:40 AM,CPT,lower 3 + 3\n10/26/2025,4:30 PM,Medication,acetaminophen 6 mL\n");
        Assert.Equal(["salbutamol 2.5 mg", "paracetamol 6 mL"], log.Entries.OfType<Dose>().Select(d => $"{d.Medicine} {d.Amount?.Replace("albuterol ", "", StringComparison.Ordinal).Replace("acetaminophen ", "", StringComparison.Ordinal)}"));
        Assert.Single(log.Entries.OfType<Session>());
    }

    [Fact]
    public void HowOverCupping_IsOfTheSession() =>
        Assert.Empty(Inputs.Import("a.csv", "Date,Start,End,LL,RL,How\n2025-11-03,07:10,07:25,3,3,cupping\n2025-11-04,07:10,07:25,3,3,cupping\n").Entries.OfType<Feed>());

    [Fact]
    public void HeadingThatSaysHowToFillItIn_IsReadWithoutThat()
    {
        var log = Inputs.Import("a.csv", "Timestamp,What?,Time it happened (blank = right now),Sats\n1/20/2025 7:24:10,Sats,7:05:00 AM,95\n1/25/2025 17:41:55,Sats,5:20:00 PM,96\n");
        Assert.Equal([new(2025, 1, 20, 7, 5), new(2025, 1, 25, 17, 20)], log.Entries.OfType<Check>().Select(c => c.Start!.Stated));
    }

    [Fact]
    public void WeekInTheCorner_GivesItsDaysTheirMonth()
    {
        var log = Inputs.Import("a.csv", "Chest chart;;\nB = bases, T = tops, mins each side;;\nWeek of 3 Nov 2025;Mon 3;Tue 4\nChest am;7.05 B3 T2;7.10 B3 T2\nSats after;97;96\n");
        Assert.Equal([3, 4], log.Entries.OfType<Session>().Select(s => s.Start!.Stated.Day));
        Assert.All(log.Entries, e => Assert.Equal((2025, 11), (e.When.Stated.Year, e.When.Stated.Month)));
    }
}
