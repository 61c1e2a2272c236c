namespace CareRecords.Import.Tests.Tables;

/// <summary>Forms with questions for headings, medicine charts, counted sessions: small tables, each with all that must be read of it.</summary>
public sealed class FormsAndChartsTests
{
    [Fact]
    public void LongQuestionsOfAForm_AreItsHeadings_AndTickedKindsLeaveTheEventsToTheAnswers() => Reads("""
        Timestamp,Who fills this in?,What time was it? (leave blank for now),What are you writing down?,"Chest: how many minutes of tapping on each place? (low left, low right, top left, top right)",Shakes afterwards?,Pulse ox (the BEFORE one if it was chest),Pulse ox after,"Medicines: which one, how much, what time"
        3/14/2026 7:40:00,Dad,7:10:00 AM,"Chest, Pulse ox","low left 3, low right 3",1 min each side,94,96,
        3/14/2026 18:20:00,Aunt,6:00:00 PM,"Chest, Medicines","all 4, 2 min",no,,,salbutamol 2 puffs at 5:45pm
        3/14/2026 21:05:00,Dad,9:00:00 PM,Pulse ox,,,93,,
        3/15/2026 7:00:00,Dad,,Medicines,,,,,amoxicillin 5 ml
        """, "f.csv",
        "check 14 07:10~ 94 before", "check 14 07:10~ 96 after", "session 14 07:10 LL3 RL3 L?v1 R?v1", "dose 14 17:45 salbutamol 2 puffs", "session 14 18:00 LL2 RL2 LU2 RU2", "check 14 21:00 93", "dose 15 07:00~ amoxicillin 5 ml");

    [Fact]
    public void MedicineChart_HasADoseOrSessionInEachTime_AndACrossWithAReasonIsNone() => Reads("""
        Medicine,Dose,How,Due,12/01/2026,13/01/2026,14/01/2026
        Salbutamol inhaler,2 puffs,spacer,07:00,0655 KR,0705 KR,0650 TR
        ,,,17:00,1700 TR,1650 KR,X at swimming
        Chest physio,clap both bases 3 min each,,07:20,0715 KR,0725 KR,X asleep
        Omeprazole,10 ml,PEG,08:00,0800 KR,X vomited,0805 TR
        """, "f.csv",
        "dose 12 06:55 salbutamol 2 puffs", "session 12 07:15 LL3 RL3", "dose 12 08:00 omeprazole 10 ml", "dose 12 17:00 salbutamol 2 puffs",
        "dose 13 07:05 salbutamol 2 puffs", "session 13 07:25 LL3 RL3", "dose 13 16:50 salbutamol 2 puffs", "dose 14 06:50 salbutamol 2 puffs", "dose 14 08:05 omeprazole 10 ml");

    [Fact]
    public void LabelThatTellsTheSession_OverTimes_IsOfEachOfThem() => Reads("""
        ,Mon 5 Jan 2026,Tue 6 Jan 2026,Wed 7 Jan 2026
        CPT AM - clap LL RL LU RU 2 min each,07:20,07:15,07:25
        Sats after,96,95,97
        CPT PM - clap LL RL 3 min each,17:30,18:00,
        """, "f.csv",
        "check 05 07:20~ 96 after", "session 05 07:20 LL2 RL2 LU2 RU2", "session 05 17:30 LL3 RL3", "check 06 07:15~ 95 after", "session 06 07:15 LL2 RL2 LU2 RU2", "session 06 18:00 LL3 RL3", "check 07 07:25~ 97 after", "session 07 07:25 LL2 RL2 LU2 RU2");

    [Fact]
    public void CountedTimesBesideMinutes_AreSessions_WithThePlacesOfTheKey() => Reads("""
        Physio of Ines,,,,,
        Date,1st time,1st mins,2nd time,2nd mins,Remarks
        14/05/2026,07.05,2,17.30,3b,Sat 95 before 1st. Sat 97 after 2nd.
        15/05/2026,07.10,3,13.20,2,

        "Mins = patting, that many on each of the 4 spots. b = bottoms only.",,,,,
        """, "f.csv",
        "check 14 07:05~ 95 before", "session 14 07:05 LL2 RL2 LU2 RU2", "check 14 17:30~ 97 after", "session 14 17:30 LL3 RL3", "session 15 07:10 LL3 RL3 LU3 RU3", "session 15 13:20 LL2 RL2 LU2 RU2");

    [Fact]
    public void TimeAndWhatWasDone_InTwoLines_AreOneSession() => Reads("""
        ,Thu 4 Jun 2026,Fri 5 Jun 2026,Sat 6 Jun 2026
        AM physio at,07:00,07:15,07:10
        AM physio,"perc L+R base 4 each, L+R top 3 each",perc bases only 3 each,same as Friday
        PM physio at,17:10,,17:20
        PM physio,same as am,"not done, too tired","perc L+R base 4 each"
        """, "f.csv",
        "session 04 07:00 LL4 RL4 LU3 RU3", "session 04 17:10 LL4 RL4 LU3 RU3", "session 05 07:15 LL3 RL3", "session 06 07:10 LL3 RL3", "session 06 17:20 LL4 RL4");

    [Fact]
    public void DoneAt_BesideThePlannedTime_IsTheTime_AndNothingDoneIsLeftOut()
    {
        var log = Inputs.Import("f.csv", """
            Plan of Odo. An empty Done at was not done.
            Day,Planned time,What,Done at,Minutes
            14/05/2026,07:00,Chest,07:10,20
            ,18:10,Salbutamol 2 puffs,✓,
            ,18:30,Chest,6.50,15
            15/05/2026,07:00,Chest,,
            """);
        Assert.Equal(["session 14 07:10 20 min", "dose 14 18:10 salbutamol 2 puffs", "session 14 18:50 15 min"], Told.By(log));
        Assert.Single(log.Omitted);
        Assert.True(log.Lines.Balances);
    }

    [Fact]
    public void BottleBesideItsFinish_IsOneFeed() => Reads("""
        Date,Start,LLL,RLL,Bottle before (oz),Bottle finished
        5/14/2026,6:30 PM,3,3,5,5:50 PM
        5/15/2026,6:40 AM,3,3,,
        """, "f.csv", "feed to 14 17:50 147.9 ml Oral", "session 14 18:30 LL3 RL3", "session 15 06:40 LL3 RL3");

    [Fact]
    public void SentencesUnderMedicines_InTheRowOfAShift_HaveTheirOwnTimes() => Reads("""
        Date,Shift,Chest,Medicines
        14/05/2026,Day,"Clapped at 08h10, lowers 3 min each side.",Salbutamol 2 puffs at 07h20 and again at 17h00.
        15/05/2026,Day,"Clapped at 08h20, lowers 4 min each side.",2 puffs salbutamol at 07h50.
        """, "f.csv", "dose 14 07:20 salbutamol 2 puffs", "session 14 08:10 LL3 RL3", "dose 14 17:00 salbutamol 2 puffs", "dose 15 07:50 salbutamol 2 puffs", "session 15 08:20 LL4 RL4");

    [Fact]
    public void HowTheChildLay_IsNoSession_AndAPumpThatRunsBeginsNoFeed() => Reads("""
        Night of,Hour,Sats,Position,Feed pump running?
        14/05/2026,22:00,96,left side,"started, 60/hr"
        ,01:00,95,back,yes
        ,06:30,97,sat up,off 5.45
        """, "f.csv",
        "check 14 22:00 96", "feed 14 22:00 60 ml/h PumpedTube", "check 15 01:00 95", "feed to 15 05:45 PumpedTube", "check 15 06:30 97");

    [Theory]
    [InlineData("Date,Time,Low (min ea side),Top (min ea side)\n04/05/2026,07:05,3,2\n05/05/2026,13:05,4,2\n", "session 04 07:05 LL3 RL3 LU2 RU2")]
    [InlineData("Date,Chest,Mins each base\n04/05/2026,07:05,3\n05/05/2026,13:05,4\n", "session 04 07:05 LL3 RL3")]
    [InlineData(",,Clapping (mins),,Vibs (mins),\nDate,Start,R lower,L lower,R side,L side\n04/05/2026,07:05,3,4,1,1\n05/05/2026,13:05,3,4,1,1\n", "session 04 07:05 RL3 LL4 R?v1 L?v1")]
    [InlineData("Date,Time,What,Details\n04/05/2026,07:05,Chest,\"lowers 3 each, uppers 2 each. brought up a thick plug\"\n05/05/2026,13:05,Feed,120 ml\n", "session 04 07:05 LL3 RL3 LU2 RU2")]
    [InlineData("Date;Time;Kind;Value;Unit;Remark\n04/05/2026;07:05;physio;3;min;tapping, per side, lower\n05/05/2026;13:05;feed;120;ml;\n", "session 04 07:05 LL3 RL3")]
    [InlineData("Date,Time,What,Chest: which areas,Minutes each area\n04/05/2026,07:05,Chest PT,\"L lower, R lower\",3\n05/05/2026,13:05,Chest PT,L lower,2\n", "session 04 07:05 LL3 RL3")]
    public void MinutesOfBothSides_AreOfEach(string table, string session) => Assert.Contains(session, Told.By(Inputs.Import("f.csv", table)));

    [Fact]
    public void ReadingAfterASession_MayLieAnHourAfterItsWrittenEnd()
    {
        var log = Inputs.Import("f.csv", "Date,Start,End,LL,RL,Sats after\n04/05/2026,07:05,07:25,3,3,96\n05/05/2026,13:05,13:25,3,3,97\n");
        var after = log.Entries.OfType<CareRecords.Records.Check>().First().Start!;
        Assert.Equal(("07:05", "08:25"), (Clock(after.Earliest), Clock(after.Latest)));

        static string Clock(NodaTime.LocalDateTime time) => time.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);
    }

    [Theory]
    [InlineData("clapping unless it says vib", "percussion")]
    [InlineData("3 mins a side", "unknown")]
    public void TechniqueOfAllSessions_IsTheKeys(string key, string technique) =>
        Assert.All(Inputs.Import("f.csv", $"Date,Chest\n04/05/2026,7.05am lowers 3 each\n05/05/2026,7.15am lowers 2 each\n\nKey: {key}\n").Entries.OfType<CareRecords.Records.Session>().SelectMany(s => s.Areas),
            a => Assert.Equal(technique, a.Technique.ToString(), ignoreCase: true));

    [Fact]
    public void NumberUnderASideThatNobodyTook_IsAsked()
    {
        var log = Inputs.Import("f.csv", "Date,Time,What,Side,Sats\n04/05/2026,07:05,sats,7,95\n05/05/2026,13:05,sats,,94\n");
        Assert.Contains(log.Problems, p => p.Why.Contains("'7' under 'Side'", StringComparison.Ordinal));
    }

    private static void Reads(string table, string name, params string[] records)
    {
        var log = Inputs.Import(name, table);
        Assert.Equal(records, Told.By(log));
        Assert.True(log.Lines.Balances);
    }
}
