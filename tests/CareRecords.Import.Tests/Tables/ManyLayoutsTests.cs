using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Tables;

/// <summary>Habits of layout that families mix freely, each on its own: headings, days, hours, ticks, keys, comments, and what is asked.</summary>
public sealed class ManyLayoutsTests
{
    [Fact]
    public void HeadingsInTwoRows_EachGroupWithItsOwnTime_AreSessionsOfTheirOwn()
    {
        var log = Inputs.Import("a.csv", "date,1st go,,,,2nd go,,,\n,time,L,R,b4,time,L,R,b4\n13/3/2025,07:00,3,4,94,17:30,5,6,95\n");
        var sessions = log.Entries.OfType<Session>().ToList();
        Assert.Equal([new LocalDateTime(2025, 3, 13, 7, 0), new LocalDateTime(2025, 3, 13, 17, 30)], sessions.Select(s => s.Start!.Stated));
        Assert.Equal([3.0, 4.0, 5.0, 6.0], sessions.SelectMany(s => s.Areas).Select(a => a.Minutes!.Value));
        Assert.Equal([(94, CheckPhase.Before), (95, CheckPhase.Before)], log.Entries.OfType<Check>().Select(c => ((int)c.SpO2!, c.Phase)));
    }

    [Fact]
    public void ColumnOfAnUnknownHeading_WithNumbers_IsAskedOnceAndItsAnswerIsUsed()
    {
        const string table = "date,time,sats,zorp\n14/3/2025,07:05,95,110\n14/3/2025,12:05,94,120\n";
        var log = Inputs.Import("a.csv", table);
        var question = Assert.Single(log.Questions);
        Assert.Equal(2, question.Sources.Count);
        using var inputs = new Inputs().With("a.csv", table).With("answers.csv", $"question,answer\n{question.Name},pulse\n");
        var answered = inputs.Import();
        Assert.Equal([110.0, 120.0], answered.Entries.OfType<Check>().Select(c => c.Pulse!.Value));
        Assert.Empty(answered.Problems);
    }

    [Fact]
    public void ValueOfAKnownColumnThatGoesIntoNoRecord_IsAsked()
    {
        var log = Inputs.Import("a.csv", "date,physio am,sats after\n14/3/2025,7:10,95\n15/3/2025,-,92\n");
        Assert.DoesNotContain(log.Entries.OfType<Check>(), c => c.SpO2 == 92);
        Assert.Contains(log.Problems, p => p.Source.Line == 3);
    }

    [Theory]
    [InlineData("hour,3/11/2025,4/11/2025,15/11/2025\n6,,physio 3 each side,\n7,physio 3 each side,,\n21,sats 95,,\n")]
    [InlineData("date,6am,7am,9pm\n3/11/2025,,physio 3 each side,sats 95\n4/11/2025,physio 3 each side,,\n15/11/2025,,,\n")]
    public void HoursByDays_EitherWayRound_AreKnownToTheHour(string table)
    {
        var log = Inputs.Import("a.csv", table);
        var session = log.Entries.OfType<Session>().Single(s => s.Start!.Stated.Day == 3);
        Assert.Equal((new LocalDateTime(2025, 11, 3, 7, 0), new LocalDateTime(2025, 11, 3, 7, 59)), (session.Start!.Earliest, session.Start.Latest));
        Assert.Equal(new LocalDateTime(2025, 11, 4, 6, 0), log.Entries.OfType<Session>().Single(s => s.Start!.Stated.Day == 4).Start!.Stated);
        Assert.Equal(new LocalDateTime(2025, 11, 3, 21, 0), Assert.Single(log.Entries.OfType<Check>()).Start!.Stated);
        Assert.Empty(log.Problems);
    }

    [Fact]
    public void HourThatDoesNotExist_IsRefused()
    {
        var log = Inputs.Import("a.csv", "hour,3/11/2025,4/11/2025,15/11/2025\n6,sats 95,sats 94,\n7,sats 94,,\n8,,,\n25,sats 93,,\n");
        Assert.Contains(log.Problems, p => p.Severity == ProblemSeverity.Refused && p.Source.Line == 5);
        Assert.DoesNotContain(log.Entries.OfType<Check>(), c => c.SpO2 == 93);
    }

    [Fact]
    public void CodesThatAKeyExplains_AreReadByTheirExample()
    {
        using var inputs = new Inputs().With("a.csv", "hour,3/11/2025,4/11/2025,15/11/2025\n6,Q5:10,,\n7,,Z91/0.5,\n8,W80,,Woff:30\n")
            .With("key.csv", "code,meaning\nQ4,\"salbutamol, puffs\"\nZ94/1,sats / litres of oxygen\nW120,\"pump feed started, ml\"\nWoff,pump off\n");
        var log = inputs.Import();
        var dose = Assert.Single(log.Entries.OfType<Dose>());
        Assert.Equal(("salbutamol", "5 puffs", new LocalDateTime(2025, 11, 3, 6, 10)), (dose.Medicine, dose.Amount, dose.Start!.Stated));
        var check = Assert.Single(log.Entries.OfType<Check>());
        Assert.Equal((91.0, 0.5), (check.SpO2!.Value, check.OxygenLitresPerMinute!.Value));
        Assert.Equal([80.0], log.Entries.OfType<Feed>().Where(f => f.Millilitres is not null).Select(f => f.Millilitres!.Value));
        Assert.Equal(new LocalDateTime(2025, 11, 15, 8, 30), log.Entries.OfType<Feed>().Single(f => f.Start is null).End!.Stated);
    }

    [Fact]
    public void WeekdaysAlone_TakeTheirDatesFromTheTitle_OrAreAsked()
    {
        const string table = ",Mon,Tue,Wed\nphysio am,7.10 am,7.20 am,7.30 am\n";
        var titled = Inputs.Import("a.csv", "Week beginning 3 March 2025\n" + table);
        Assert.Equal([3, 4, 5], titled.Entries.OfType<Session>().Select(s => s.Start!.Stated.Day));
        var untitled = Inputs.Import("a.csv", table);
        Assert.Empty(untitled.Entries);
        Assert.NotEmpty(untitled.Problems);
    }

    [Fact]
    public void DaysOfAMonthAlone_TakeTheirMonthFromTheTitle()
    {
        var log = Inputs.Import("a.csv", "March 2025\nday,physio am,physio pm\n1,7:00,17:30\n2,7:10,17:40\n");
        Assert.Equal([new LocalDate(2025, 3, 1), new LocalDate(2025, 3, 2)], log.Entries.Select(e => e.When.Stated.Date).Distinct());
    }

    [Fact]
    public void DayOnALineOfItsOwn_HoldsForTheRowsUnderIt()
    {
        var log = Inputs.Import("a.csv", "Date: 3 March 2025,,\ntime,what,detail\n07:00,sats,94\n,,\nDate: 4 March 2025,,\ntime,what,detail\n07:05,sats,93\n");
        Assert.Equal([new LocalDateTime(2025, 3, 3, 7, 0), new LocalDateTime(2025, 3, 4, 7, 5)], log.Entries.Select(e => e.When.Stated));
    }

    [Fact]
    public void PartsOfTheDayUnderEachDate_AreTwoRecordsADay()
    {
        var log = Inputs.Import("a.csv", ",6/1/2025,,7/1/2025,,13/1/2025,\n,am,pm,am,pm,am,pm\nphysio time,7.10,5.30,7.15,5.45,7.05,\nleft,3,4,3,4,3,\n");
        Assert.Equal([(6, 7), (6, 17), (7, 7), (7, 17), (13, 7)], log.Entries.OfType<Session>().Select(s => (s.Start!.Stated.Day, s.Start.Stated.Hour)));
    }

    [Fact]
    public void MorningAndEveningInAColumn_SettleTheTimesOfTheirRows()
    {
        var log = Inputs.Import("a.csv", "day,,physio,L,R\n13/3/2025,AM,7.05,3,3\n,mid,1.15,3,3\n,PM,5.10,3,3\n");
        Assert.Equal([7, 13, 17], log.Entries.OfType<Session>().Select(s => s.Start!.Stated.Hour));
    }

    [Fact]
    public void YesAndNoBesideATime_SayWhetherItWas()
    {
        var log = Inputs.Import("a.csv", "date,AM PT (Y/N),AM time,PM PT (Y/N),PM time\n3/14/2025,Y,7:05,Y,5:30\n3/15/2025,Y,,N,\n3/16/2025,?,,N,\n");
        Assert.Equal([(14, true), (14, true), (15, false)], log.Entries.OfType<Session>().Select(s => (s.Start!.Stated.Day, s.Start.IsExact)));
        Assert.Equal(4, Assert.Single(log.Problems).Source.Line);
    }

    [Fact]
    public void BareNumbersBesideARowsTime_AreAmountsAndNotTimes()
    {
        var log = Inputs.Import("a.csv", "date,time,chest,feed\n14/3/2025,07:00,L3 R3,\n14/3/2025,12:15,,150\n14/3/2025,18:20,,off\n");
        Assert.Equal(2, Assert.Single(log.Entries.OfType<Session>()).Areas.Count);
        var feeds = log.Entries.OfType<Feed>().ToList();
        Assert.Equal((150, new LocalDateTime(2025, 3, 14, 12, 15)), (feeds[0].Millilitres!.Value, feeds[0].Start!.Stated));
        Assert.Equal((null, new LocalDateTime(2025, 3, 14, 18, 20)), (feeds[1].Start, feeds[1].End!.Stated));
    }

    [Theory]
    [InlineData("date,time,what,by,ml\n14/3/2025,12:15,feed,pump,150\n", FeedRoute.PumpedTube)]
    [InlineData("date,start,finish,method,ml\n14/3/2025,12:15,12:40,bottle,150\n", FeedRoute.Oral)]
    public void RouteOfAFeed_IsKnownByTheCells(string table, FeedRoute route) =>
        Assert.Equal(route, Assert.Single(Inputs.Import("a.csv", table).Entries.OfType<Feed>()).Route);

    [Fact]
    public void HighestAndLowestOfADay_AreOneRangeWithoutATime()
    {
        var check = Assert.Single(Inputs.Import("a.csv", "date,physio,best sat,worst sat\n14/3/2025,07:05,97,91\n").Entries.OfType<Check>());
        Assert.Equal((91.0, 97.0, TimePrecision.DayOnly), (check.SpO2!.Value, check.SpO2High!.Value, check.Start!.Precision));
    }

    [Fact]
    public void ContractTablesUnderOneAnother_AreReadAsSuch()
    {
        var log = Inputs.Import("a.csv", "# Medicines\nGiven,Medicine,Amount\n2025-10-06 06:30,puff,2 puffs\n\n# Plan\nFrom,Item,Value\n1 October 2025,sessions per day,2\n\n# Words\nWord,Means\npuff,salbutamol inhaler\n");
        Assert.Equal("salbutamol", Assert.Single(log.Entries.OfType<Dose>()).Medicine);
        Assert.Equal(2, Assert.Single(log.Plan.Rows).Low);
    }

    [Fact]
    public void ImpossibleDate_DoesNotUnsettleTheOrderOfTheOthers()
    {
        var log = Inputs.Import("a.csv", "date,time,sats\n24/02/2025,07:00,95\n31/02/2025,07:00,94\n01/03/2025,07:00,93\n");
        Assert.Equal([new LocalDate(2025, 2, 24), new LocalDate(2025, 3, 1)], log.Entries.Select(e => e.When.Stated.Date));
        Assert.Equal(3, Assert.Single(log.Problems).Source.Line);
    }

    [Fact]
    public void OnePartOfTheChestARow_MakesOneSession()
    {
        var session = Assert.Single(Inputs.Import("a.csv", "date,time,side/area,mins\n14/3/2025,07:05,LLL,3\n,,RLL,4\n,,LUL,2\n").Entries.OfType<Session>());
        Assert.Equal([(Side.Left, ChestArea.Lower, 3.0), (Side.Right, ChestArea.Lower, 4.0), (Side.Left, ChestArea.Upper, 2.0)], session.Areas.Select(a => (a.Side, a.Area, a.Minutes!.Value)));
    }

    [Fact]
    public void CrossesAlone_AreTicks_BesideTicksTheyAreNot()
    {
        Assert.Equal(2, Inputs.Import("a.csv", "date,salbutamol given,sats\n14/3/2025,x,95\n15/3/2025,x,95\n16/3/2025,,94\n").Entries.OfType<Dose>().Count());
        Assert.Equal(2, Inputs.Import("a.csv", "date,salbutamol given,sats\n14/3/2025,✓,95\n15/3/2025,✓,95\n16/3/2025,x,94\n").Entries.OfType<Dose>().Count());
    }

    [Fact]
    public void FeedThatStoppedBeforeWhatStandsAboveIt_IsAskedAndNotMovedToTheEvening()
    {
        var log = Inputs.Import("a.csv", "date,physio,feed stopped\n14/3/2025,7.15 am,6.30\n");
        Assert.DoesNotContain(log.Entries, e => e is Feed);
        Assert.NotEmpty(log.Problems);
    }

    [Fact]
    public void FamilyWordWithAPartOfTheDay_IsAHeadingOfDoses()
    {
        var log = Inputs.Import("a.csv", "blue = salbutamol inhaler,,\ndate,blue AM,blue PM\n14/3/2025,06:40,16:45\n15/3/2025,06:50,\n");
        Assert.Equal([6, 16, 6], log.Entries.OfType<Dose>().Where(d => d.Medicine == "salbutamol").Select(d => d.Start!.Stated.Hour));
    }

    [Fact]
    public void SessionsInTheirOrderOverTheirColumns_AreEachRead()
    {
        // "1st" over time and minutes is the first session, not the first of the month.
        var log = Inputs.Import("a.csv", "Day,1st,,,2nd,,,Temp\n,time,lower,upper,time,lower,upper,C\n3/11/2025,07:10,3,2,17:45,3,,\n14/11/2025,07:05,4,3,missed,,,38.4\n");
        Assert.Equal([("03 07:10", 2), ("03 17:45", 1), ("14 07:05", 2)], log.Entries.OfType<Session>().OrderBy(s => s.Start!.Stated).Select(s => (s.Start!.Stated.ToString("dd HH:mm", null), s.Areas.Count)));
        // A temperature beside several sessions is of the day.
        Assert.Equal(TimePrecision.DayOnly, Assert.Single(log.Entries.OfType<Sign>()).Start!.Precision);
    }

    [Fact]
    public void HoursDown_BesideAKeyInTheSameColumn_AreStillHours()
    {
        var log = Inputs.Import("a.csv", "Day chart 2025,,,\n,Mon 7/7,Tue 8/7,Wed 9/7\n06:00,Sal 2,,Sal 2\n07:00,CP 3/3/2/2,CP 3/3/2/2,7.20 CP 3/3/2/2\n08:00,F 150,F 150,\n10:00,,S 93,S 90 on 0.5\n\nKEY,,,\nF = feed down the button,,,\nSal = salbutamol,,,\nCP = chest physio left lower / right lower / left upper / right upper,,,\nS = sats on air unless I put litres,,,\n");
        Assert.Equal([(6, 2), (6, 2)], log.Entries.OfType<Dose>().Select(d => (d.Start!.Stated.Hour, int.Parse(d.Amount![..1], System.Globalization.CultureInfo.InvariantCulture))));
        Assert.Equal(["07:00", "07:00", "07:20"], log.Entries.OfType<Session>().OrderBy(s => s.Start!.Stated.Date).Select(s => s.Start!.Stated.ToString("HH:mm", null)));
        Assert.Equal([0, 0.5], log.Entries.OfType<Check>().OrderBy(c => c.Start!.Stated.Date).Select(c => c.OxygenLitresPerMinute!.Value));
        Assert.True(log.Lines.Balances);
    }

    [Fact]
    public void TimeAndWhat_UnderEachPartOfTheDay_AreRowsOfTheirOwn()
    {
        var log = Inputs.Import("a.csv", "Date,Morning,,Midday,,Evening,,Notes\n,time,what,time,what,time,what,\n14/3/2025,7.10,physio 3/3/2/2,12.30,feed 150 ml,6.15,salbutamol 2 puffs,tired\n15/3/2025,7.05,salbutamol 2 puffs,,,7.30,feed 180 ml,\n");
        Assert.Equal(["14 07:10", "14 12:30", "14 18:15", "15 07:05", "15 19:30"], log.Entries.Where(e => e is Session or Feed or Dose).Select(e => e.When.Stated.ToString("dd HH:mm", null)).Order(StringComparer.Ordinal));
        Assert.True(log.Lines.Balances);
    }

    [Fact]
    public void MinutesInTheHeading_AreOfTheSession_AndTheCellIsItsTime()
    {
        var log = Inputs.Import("a.csv", ",Mon 3/3/2025,Tue 4/3/2025,Wed 5/3/2025\nPump off (am),6.00,6.10,6.00\nChest am (3 mins each lower),7.00,7.05,x\nSats after am chest,96,94,95\nChest pm (4 mins each lower),5.30,6.15,5.40\n");
        Assert.Equal(["03 07:00 3+3", "03 17:30 4+4", "04 07:05 3+3", "04 18:15 4+4", "05 17:40 4+4"], log.Entries.OfType<Session>().OrderBy(s => s.Start!.Stated).Select(s => s.Start!.Stated.ToString("dd HH:mm ", null) + string.Join('+', s.Areas.Select(a => a.Minutes))));
    }

    [Fact]
    public void MinutesInTheHeading_OverMinutes_AreNotTimes()
    {
        var log = Inputs.Import("a.csv", "date,Chest am (3 mins each lower),Chest pm (3 mins each lower)\n13/3/2025,3,3\n14/3/2025,4,3\n");
        Assert.Equal([3.0, 3, 4, 3], log.Entries.OfType<Session>().OrderBy(s => s.Start!.Stated).Select(s => s.Areas[0].Minutes!.Value));
        Assert.All(log.Entries.OfType<Session>(), s => Assert.NotEqual(TimePrecision.Exact, s.Start!.Precision));
    }

    [Fact]
    public void RowOfASessionStillToCome_IsNoSession()
    {
        var log = Inputs.Import("a.csv", "Chest,,,,\ndate,time,base,top,note\n14/3/2025,07.30,3,2,\n,18.30,,,to do - Gran's turn\n15/3/2025,07.30,3,2,\n");
        Assert.Equal([14, 15], log.Entries.OfType<Session>().Select(s => s.Start!.Stated.Day));
        Assert.True(log.Lines.Balances);
    }

    [Fact]
    public void RowSentTwice_IsCountedOnce_ButOnlyWhereItIsTheSame()
    {
        const string table = "date,time,sats,oxygen,remarks\n14/3/2025,07:05,95,0,\n14/3/2025,07:05,95,0,pressed send twice\n14/3/2025,08:05,{0},0,pressed send twice\n";
        Assert.Equal([95.0, 93.0], Inputs.Import("a.csv", table.Replace("{0}", "93", StringComparison.Ordinal)).Entries.OfType<Check>().Select(c => c.SpO2!.Value));
    }

    [Fact]
    public void HeadingThatSaysInAir_IsOfEveryReading_UnderIt()
    {
        Assert.Equal([0.0, 0.0], Inputs.Import("a.csv", "date,time,SpO2 (RA)\n14/3/2025,07:05,95\n14/3/2025,08:05,94\n").Entries.OfType<Check>().Select(c => c.OxygenLitresPerMinute!.Value));
        Assert.All(Inputs.Import("a.csv", "date,time,SpO2\n14/3/2025,07:05,95\n").Entries.OfType<Check>(), c => Assert.Null(c.OxygenLitresPerMinute));
    }

    [Fact]
    public void ReadingInAirByDefault_WhileTheOxygenMayRun_IsUnknown()
    {
        var log = Inputs.Import("a.csv", "sats on air unless I put litres,,,\ndate,time,SpO2,oxygen\n14/3/2025,07:05,95,\n14/3/2025,12:00,,0.5\n14/3/2025,13:00,93,\n14/3/2025,15:00,,0\n14/3/2025,16:00,94,\n");
        Assert.Equal([(95.0, 0.0), (93.0, null), (94.0, 0.0)], log.Entries.OfType<Check>().Where(c => c.SpO2 is not null).Select(c => (c.SpO2!.Value, c.OxygenLitresPerMinute)));
    }

    [Fact]
    public void WordsBesideTheirKind_AreReadFurther()
    {
        var log = Inputs.Import("a.csv", "Date,Time,What,Notes\n14/3/2025,10.10,milk,\"100 ml bottle, was sick straight after\"\n,11.40,cough,\"chesty, brought up clear phlegm\"\n,12.00,lunch,\"fish fingers, fed himself\"\n,13.00,sats,95\n,15.30,physio,3 mins each side lower\n");
        Assert.Equal(["cough", "secretions", "vomit"], log.Entries.OfType<Sign>().Select(s => s.What).Order(StringComparer.Ordinal));
        Assert.Equal([true, true], log.Entries.OfType<Feed>().Select(f => f.Start is not null));
    }

    [Fact]
    public void RowsWithoutAnyHeading_AreReadAsLinesOfNotes()
    {
        var log = Inputs.Import("a.csv", "Mum's log\n3/3/2025\n0640,salbutamol 4 puffs\n0730,sats,95\n13/3/2025\n0700,chest,L4,R4\n");
        Assert.Equal([1, 1, 1], [log.Entries.OfType<Dose>().Count(), log.Entries.OfType<Check>().Count(), log.Entries.OfType<Session>().Count()]);
        Assert.True(log.Lines.Balances);
    }
}
