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
    public void TwoReadingsInOneCell_AreToldOnceEach() =>
        Assert.Equal(2, Inputs.Import("a.csv", "Week of 3 March 2025,,\n,Mon 3,Tue 4\nChest am,7.15 LL3 RL3,7.10 LL3 RL3\nChest pm,17.45 LL3 RL3,17.50 LL3 RL3\nSats,\"91 at 2am on air, 94 at 8am on 0.5L\",\n").Entries.OfType<Check>().Count());
}
