using CareRecords.Records;

namespace CareRecords.Import.Tests.Tables;

/// <summary>What headings and remarks of a table say of the events beside them: which reading it was, on what oxygen, at what time within the hour. The tables are invented.</summary>
public sealed class TableRemarksTests
{
    private static string Checks(string table) => string.Join("; ", Inputs.Import("a.csv", table).Entries.OfType<Check>().OrderBy(c => c.When.Stated.Date).ThenBy(c => c.Phase).ThenBy(c => c.SpO2 is null).Select(c =>
        FormattableString.Invariant($"{c.SpO2}{(c.Phase == CheckPhase.None ? "" : " " + c.Phase)}{(c.OxygenLitresPerMinute is { } flow ? FormattableString.Invariant($" on {flow}") : "")}")));

    [Theory]
    [InlineData("sats is after", "96 After; 96")]
    [InlineData("\"sats before, after it was 98\"", "96 Before; 98 After; 96")]
    [InlineData("on air now thank goodness", "96 on 0; 96")]
    [InlineData("on half litre", "96 on 0.5; 96")]
    [InlineData("so put her on oxygen 1 litre", "96; 96")]
    public void Remark_SaysOfTheReadingBesideIt(string remark, string expected)
    {
        var told = Checks($"date,time,who,did,minutes,sats,note\n13/3/2025,07:00,Mum,percussion lower left and right,3 each,96,{remark}\n14/3/2025,07:00,Mum,percussion lower left and right,3 each,96,\n");
        Assert.Equal(expected, remark.Contains("put her", StringComparison.Ordinal) ? told.Replace("96;  on 1;", "96;", StringComparison.Ordinal) : told);
    }

    [Theory]
    // The change of oxygen is a check of its own; half a litre is no whole one.
    [InlineData("so put her on oxygen 1 litre", 1)]
    [InlineData("put her on 1/2 L", 0.5)]
    public void OxygenTurnedOn_InARemark_IsACheckOfItsOwn(string remark, double flow) =>
        Assert.Contains(Inputs.Import("a.csv", $"date,time,chest,sats,note\n13/3/2025,07:00,bottoms 3 each,90,{remark}\n14/3/2025,07:00,bottoms 3 each,96,\n").Entries.OfType<Check>(), c => c.SpO2 is null && c.OxygenLitresPerMinute == flow);

    [Fact]
    public void SaturationInARemark_IsOfTheCheckWithoutOne() =>
        Assert.Equal("89 on 1; 96 on 0", Checks("date,time,sats,O2 l/min,comment\n13/3/2025,02:30,,1,\"woke up, sats 89\"\n14/3/2025,07:00,96,0,\n"));

    [Fact]
    public void ReadingsInBracketsBehindATime_AreBeforeAndAfter() =>
        Assert.Equal("95 Before; 97 After; 94 Before; 96 After", Checks("date,chest 1,chest 2\n13/3/2025,0710 (95>97),\n14/3/2025,0720 (94>96),x\n"));

    [Fact]
    public void MinutesOnEachArea_AreOfEverySessionOfTheRow_AndNoneBesides()
    {
        var sessions = Inputs.Import("a.csv", "date,chest 1,chest 2,chest 3,mins each area,notes\n13/3/2025,0710,1740,,3,\n14/3/2025,0720,1750,,3,\nkey: chest is clapping on all four areas,,,,,\n").Entries.OfType<Session>().ToList();
        Assert.Equal(4, sessions.Count);
        Assert.All(sessions, s => Assert.Equal(12, s.Areas.Sum(a => a.Minutes)));
    }

    [Fact]
    public void MinutesOnEachArea_OfPlacesThatNobodyNames_AreAsked()
    {
        var log = Inputs.Import("a.csv", "date,chest 1,mins each area\n13/3/2025,0710,3\n14/3/2025,0720,3\n");
        Assert.Equal(2, log.Entries.OfType<Session>().Count(s => s.Areas.Count == 0 && s.MinutesWritten is null));
        Assert.Contains(log.Problems, p => p.Why.Contains("on which places", StringComparison.Ordinal));
    }

    [Fact]
    public void TimesWithinAnHoursRow_AreExact()
    {
        var log = Inputs.Import("a.csv", "Chart of Mon 2/6/2025,,,\nHour,Feed,Meds,Chest\n0600,pump off 0610,salbutamol 4 puffs 0630,\n0700,,,0710 LL3 RL3\n0800,,,\n0900,,,\n1000,,,\n1100,,,\n1200,140 bolus,,\n1900,\"pump on 1930, 60/hr\",,\n");
        Assert.Equal(["06:10", "06:30", "07:10", "12:00", "19:30"], log.Entries.OrderBy(e => e.When.Stated).Select(e => e.When.Stated.ToString("HH:mm", null)));
        Assert.Equal([140d], log.Entries.OfType<Feed>().Where(f => f.Millilitres is not null).Select(f => f.Millilitres!.Value));
    }

    [Fact]
    public void AmountUnderAFeedsHour_IsNoTime()
    {
        var feeds = Inputs.Import("a.csv", "date,breakfast by mouth,4pm tube feed (ml)\n13/3/2025,7.45 porridge,150\n14/3/2025,,150\n").Entries.OfType<Feed>().Where(f => f.Millilitres is not null).ToList();
        Assert.Equal(2, feeds.Count);
        Assert.All(feeds, f => Assert.Equal((150, 16), (f.Millilitres!.Value, f.Start!.Stated.Hour)));
    }

    [Fact]
    public void PartRefused_LeavesTheRestDone()
    {
        var log = Inputs.Import("a.csv", "date,time,did,minutes,note\n13/3/2025,15:00,percussion left lower only,5,she refused right side\n14/3/2025,15:00,percussion left lower only,5,\n");
        Assert.Equal(2, log.Entries.OfType<Session>().Count());
    }

    [Fact]
    public void DetailsThatSayWhen_BesideAStamp_AreTheTime()
    {
        var log = Inputs.Import("a.csv", "Timestamp,Who,What happened?,Details,Readings\n3/13/2025 7:24:02 AM,Mum,Chest PT,\"Percussion LLL 3, RLL 3. Started 7:05, done 7:22\",\"before 95, after 97\"\n3/13/2025 12:30:09 PM,Gran,Feed,\"by mouth, 90 mL, at 12:15\",\n3/14/2025 7:30:00 AM,Mum,Medicine,albuterol 2 puffs,\n");
        var session = Assert.Single(log.Entries.OfType<Session>());
        Assert.Equal(("07:05", "07:22", 6d), (session.Start!.Stated.ToString("HH:mm", null), session.End!.Stated.ToString("HH:mm", null), session.Areas.Sum(a => a.Minutes)!.Value));
        Assert.Equal("12:15", Assert.Single(log.Entries.OfType<Feed>()).Start!.Stated.ToString("HH:mm", null));
    }

    [Fact]
    public void PostPhysio_BesideReadings_IsTheirPhase_AndNoSession()
    {
        var log = Inputs.Import("a.csv", "Time,SpO2 %,Temp C,Colour,Actions\nTuesday 10 February 2026,,,,\n0710,,,,\"CPT: perc R lower 4, L lower 4\"\n0735,96,,pink,post CPT\n1400,92,38.3,flushed,paracetamol 240 mg\n1200,95,,pale,\"CPT not done, asleep\"\n");
        Assert.Single(log.Entries.OfType<Session>());
        Assert.Equal([CheckPhase.After, CheckPhase.None, CheckPhase.None], log.Entries.OfType<Check>().OrderByDescending(c => c.Phase).Select(c => c.Phase));
        Assert.Equal(3, log.Entries.OfType<Sign>().Count(s => s.What == "colour"));
        Assert.Single(log.Entries.OfType<Sign>(), s => s.Kind == SignKind.Temperature);
    }

    [Fact]
    public void PlannerOfHours_WithDaysAcross_SaysWhenWhatIsTickedWasDue()
    {
        var log = Inputs.Import("a.csv", "Plan - week of 3 March 2025,,,,\nHour,What,Mon 3/3,Tue 4/3,Wed 5/3\n6am,pump off,✓,✓,✓\n8am,\"chest clap: lower L 3, lower R 3\",✓,8:20,✓\nnoon,feed 150 ml by tube,✓,✓,x threw up\n8pm,\"chest, same as 8am\",✓,✓,7:45\n");
        Assert.Equal(["06:00", "08:00", "12:00", "20:00"], log.Entries.Where(e => e.When.Stated.Day == 3).Select(e => e.When.Stated.ToString("HH:mm", null)).Order());
        Assert.Equal(["06:00", "08:20", "12:00", "20:00"], log.Entries.Where(e => e.When.Stated.Day == 4).Select(e => e.When.Stated.ToString("HH:mm", null)).Order());
        Assert.Equal([150d, 150d], log.Entries.OfType<Feed>().Where(f => f.Start is not null).Select(f => f.Millilitres!.Value));
        Assert.All(log.Entries.OfType<Session>().Where(s => s.Start!.Stated.Hour < 12), s => Assert.Equal(6, s.Areas.Sum(a => a.Minutes)));
    }
}
