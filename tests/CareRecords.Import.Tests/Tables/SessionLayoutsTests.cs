using CareRecords.Records;

namespace CareRecords.Import.Tests.Tables;

/// <summary>Sessions that a table tells in more than one column, or whose places the words around it tell. The tables are invented.</summary>
public sealed class SessionLayoutsTests
{
    private static string Sessions(string table) => string.Join("; ", Inputs.Import("a.csv", table).Entries.OfType<Session>().OrderBy(s => s.When.Stated).Select(s =>
        $"{s.When.Stated.ToString("dd HH:mm", null)} {string.Join(' ', s.Areas.OrderBy(a => (a.Side, a.Area, a.Technique)).Select(a => FormattableString.Invariant($"{a.Side.ToString()[0]}{a.Area.ToString()[0]}{(a.Technique == Technique.Vibration ? "v" : "")}{a.Minutes}")))}"));

    [Theory]
    [InlineData("1st,code,2nd,code")]
    [InlineData("1 time,1 code,2 time,2 code")]
    [InlineData("morning,code,evening,code")]
    public void TimesAndLetters_InPairsOfColumns_AreSessions(string headings)
    {
        var table = $"Date,{headings},done\n2025-11-01,07:30,F,18:00,F,2\n2025-11-02,08:15,f,18:30,L,2\n2025-11-03,07:10,R,,X,1\n\"F = full: clap 3 min each lower, 2 min each upper, both sides\"\n\"L = clapping, lowers only, left and right, 4 min each\"\n\"R = right side only, clap lower 4 min, upper 3 min\"\nX = not done\n";
        Assert.Equal("01 07:30 LL3 LU2 RL3 RU2; 01 18:00 LL3 LU2 RL3 RU2; 02 08:15 LL3 LU2 RL3 RU2; 02 18:30 LL4 RL4; 03 07:10 RL4 RU3", Sessions(table));
        var log = Inputs.Import("a.csv", table);
        Assert.Single(log.Omitted);
        Assert.Empty(log.Problems);
    }

    [Fact]
    public void TimesAndLetters_ThatNoKeyExplains_AreNotSessions() =>
        Assert.DoesNotContain(Inputs.Import("a.csv", "Date,1st,code,2nd,code\n2025-11-01,07:30,F,18:00,F\n2025-11-02,08:15,F,18:30,L\n").Entries, e => e is Session { Areas.Count: > 0 });

    [Fact]
    public void SideAndArea_InTwoColumns_AreOnePlace() =>
        Assert.Equal("09 06:50 LL3 LU2 RL3 RLv1; 09 17:30 LL4 RU3", Sessions("Date,Time,Side,Area,Technique,Mins,Notes\n2025-06-09,06:50,Left,lower,percussion,3,\n,,Left,upper,percussion,2,\n,,Right,lower,percussion,3,\n,,Right,lower,vibration,1,\n2025-06-09,17:30,L,lower,perc,4,tired\n,,R,upper,perc,3,\n"));

    [Theory]
    [InlineData("Minutes are for each side. Lowers only unless it says tops.", "10 07:00 LL5 RL5; 10 13:00 LL5 LU2 RL5 RU2; 10 18:15 LL5 LU2 RL5 RU2")]
    [InlineData("Lowers only unless it says tops.", "10 07:00 ; 10 13:00 UU5 LU2 RU2; 10 18:15 UU5 LU2 RU2")]
    public void PlacesNamedAboveATable_AreOfMinutesWithoutOne(string above, string expected) =>
        Assert.Equal(expected, Sessions($"Chest clapping - January 2025,,,\n{above},,,\nDate,Morning,Midday,Evening\n2025-01-10,7.00 5min,\"1pm 5min, tops 2\",18.15 5 min + tops 2\n"));

    [Fact]
    public void MinutesInAll_BehindATime_AreKept() =>
        Assert.Equal([20, 15], Inputs.Import("a.csv", "Chest physio 2025,,\nDate,Morning,Evening\n2025-01-10,7.00 20 min,18.15 15min\n").Entries.OfType<Session>().OrderBy(s => s.When.Stated).Select(s => s.MinutesWritten ?? 0));

    [Fact]
    public void TimeWithinTheHourOfAnHoursRow_IsExact()
    {
        var log = Inputs.Import("a.csv", "Week of 3 February 2025,,,\n,Mon 3,Tue 4,Wed 5\n6am,feed off,feed off 6.15,\n7am,\"blue, chest\",chest,\"chest, 4 each bottoms, no tops\"\n8am,,,\n5pm,chest 5.20,,\n8pm,feed on,,feed on 8.10\n\"chest = clapping, bottoms 3 min each side and tops 2 min each side\"\nblue = salbutamol 2 puffs\n");
        Assert.Equal(["04 06:15", "05 20:10"], log.Entries.OfType<Feed>().Where(f => f.When.IsExact).OrderBy(f => f.When.Stated).Select(f => f.When.Stated.ToString("dd HH:mm", null)));
        Assert.DoesNotContain(log.Entries.OfType<Feed>(), f => f.Millilitres is not null);
        Assert.Contains(log.Entries.OfType<Session>(), s => s.When.IsExact && s.When.Stated.ToString("dd HH:mm", null) == "03 17:20");
        Assert.Contains(log.Entries.OfType<Session>(), s => s.When.Stated.Day == 5 && s.Areas.Count == 2 && s.Areas.All(a => a is { Area: ChestArea.Lower, Minutes: 4 }));
    }

    [Fact]
    public void DaysWithoutAYear_ThatRunOnInOneOrder_AreSettled()
    {
        var log = Inputs.Import("a.csv", "Date,Time,What,In (oz),Notes\n2/2,6:30 AM,Albuterol neb,,2.5 mg\n2/3,6:35 AM,Formula G-tube,5,\n2/4,6:15 AM,Albuterol neb,,2.5 mg\n2/4,,Total,5,\n2/5,12:00 PM,CPT,,\"percussion LLL 4 RLL 4. sat is after\"\n");
        Assert.Empty(log.Problems);
        Assert.Equal(["02-02", "02-03", "02-04", "02-05"], log.Entries.OrderBy(e => e.When.Stated).Select(e => e.When.Stated.Date.ToString("MM-dd", null)));
        // Five US fluid ounces of 29.5735 ml (NIST Handbook 44, appendix C), rounded to a tenth.
        Assert.Equal(147.9, Assert.Single(log.Entries.OfType<Feed>()).Millilitres);
    }

    [Fact]
    public void AmountBehindSeveralTimes_IsOfEach()
    {
        var doses = Inputs.Import("a.csv", "Date,Chest,Inhaler (salbutamol)\n6/3/2025,7.10am LL3 RL3,\"6.50am and 5.20pm, 2 puffs\"\n7/3/2025,7.20am LL3 RL3,\"6.40am, 5.10pm, 4 puffs each\"\n").Entries.OfType<Dose>().OrderBy(d => d.When.Stated).Select(d => d.Amount);
        Assert.Equal(["2 puffs", "2 puffs", "4 puffs", "4 puffs"], doses);
    }

    [Fact]
    public void TimesAndMinutes_InPairsOfColumns_AreSessionsOfBothSides()
    {
        const string Table = "chest log June 2025;;;;;;\nmins = clapping, minutes each side;;;;;;\ndate;time 1;mins;time 2;mins;cough;notes\n02/06/2025;07h00;5;18h30;5;;\n03/06/2025;06h45;6;;asleep;dry;\n04/06/2025;07h10;6;13h00;6;;\n";
        Assert.Equal("02 07:00 LU5 RU5; 02 18:30 LU5 RU5; 03 06:45 LU6 RU6; 04 07:10 LU6 RU6; 04 13:00 LU6 RU6", Sessions(Table));
        var log = Inputs.Import("a.csv", Table);
        Assert.All(log.Entries.OfType<Session>().SelectMany(s => s.Areas), a => Assert.Equal((ChestArea.Unknown, Technique.Percussion), (a.Area, a.Technique)));
        Assert.Equal("dry", Assert.Single(log.Entries.OfType<Sign>(), s => s.Kind == SignKind.Cough).Value);
    }

    [Fact]
    public void PlanBesideDone_OnlyWhatWasDoneIsASession()
    {
        const string Table = "\"Plan = minutes of clapping on EACH of the four areas. ✓ = done as the plan. ✓ and a number = done, but that many minutes each. ✗ = not done.\",,,,,,,\nDate,MORNING,,,EVENING,,,Sats after evening\n,Plan,Done,Time,Plan,Done,Time,\n2025-03-03,5,✓,7.10,5,✓,6.40,94\n2025-03-04,5,✓,7.15,5,✓ 4,7.05,95\n2025-03-05,4,✓,7.20,4,✗,,\n";
        Assert.Equal("03 07:10 LL5 LU5 RL5 RU5; 03 18:40 LL5 LU5 RL5 RU5; 04 07:15 LL5 LU5 RL5 RU5; 04 19:05 LL4 LU4 RL4 RU4; 05 07:20 LL4 LU4 RL4 RU4", Sessions(Table));
        var log = Inputs.Import("a.csv", Table);
        Assert.Single(log.Omitted);
        Assert.All(log.Entries.OfType<Check>(), c => Assert.True(c.When.Stated.Hour >= 18 && c.Phase == CheckPhase.After));
    }

    [Theory]
    // Without "off" in the column each rate is a feed of its own.
    [InlineData("off", "22:00-; -06:00")]
    [InlineData("60", "22:00-; 00:00-; 06:00-")]
    public void RateWrittenAgainAndAgain_IsOneFeed_WhereItsEndIsTold(string last, string expected)
    {
        var feeds = Inputs.Import("a.csv", $"Night of,Time,SpO2,Feed ml/hr,Comments\n2/10/2025,10:00 PM,95,60,settled\n,12:00 AM,94,60,\n,6:00 AM,96,{last},\n", new ImportOptions { MachineZone = "America/Chicago", DateOrder = DateOrder.MonthDayYear }).Entries.OfType<Feed>().OrderBy(f => f.When.Stated);
        Assert.Equal(expected, string.Join("; ", feeds.Select(f => $"{f.Start?.Stated.ToString("HH:mm", null)}-{f.End?.Stated.ToString("HH:mm", null)}")));
    }

    [Fact]
    public void ValuesWithTheirUnits_InAnExport_AreTheirRows()
    {
        var log = Inputs.Import("a.csv", "datetime,category,value,unit,comment\n2025-01-20 06:40,Medication,2,puffs,salbutamol\n2025-01-21 06:55,Chest PT,12,min,\"percussion, 3 min each: LL, RL, LU, RU\"\n2025-01-21 09:00,Oxygen sat,94,%,\n");
        Assert.Equal(12, Assert.Single(log.Entries.OfType<Session>()).Areas.Sum(a => a.Minutes));
        Assert.Equal("2 puffs", Assert.Single(log.Entries.OfType<Dose>()).Amount);
        Assert.Equal(94, Assert.Single(log.Entries.OfType<Check>()).SpO2);
    }

    [Fact]
    public void LabelThatTellsASession_IsOfEachOfItsTimes() =>
        Assert.Equal("06 07:15 LL3 LU2 RL3 RU2; 06 19:00 LL3 LU2 RL3 RU2; 07 07:25 LL3 LU2 RL3 RU2", Sessions("Medicine round,,\n,2025-02-06,2025-02-07\nSalbutamol inhaler 4 puffs,\"0700, 1845\",0650\n\"Physio (perc, L+R lower 3 min each, L+R upper 2 min each)\",\"0715, 1900\",0725\n"));

    [Fact]
    public void KindThatNamesThePlaces_TakesTheMinutesOfEachSide() =>
        Assert.Equal("15 13:20 LL3 RL4", Sessions("Date,Who,Time,What,Mins,Remark\n15/05/2025,Mrs Lunt,13:20,clapping L and R lower,\"L 3, R 4\",bell went\n16/05/2025,Mum,7:00,milk,,\n"));

    [Fact]
    public void TwoReadingsInOneCell_AreToldOnceEach() =>
        Assert.Equal(2, Inputs.Import("a.csv", "Week of 3 March 2025,,\n,Mon 3,Tue 4\nChest am,7.15 LL3 RL3,7.10 LL3 RL3\nChest pm,17.45 LL3 RL3,17.50 LL3 RL3\nSats,\"91 at 2am on air, 94 at 8am on 0.5L\",\n").Entries.OfType<Check>().Count());
}
