namespace CareRecords.Import.Tests.Tables;

/// <summary>Small tables as different families lay them out, each with all that must be read of it.</summary>
public sealed class FamilyLayoutsTests
{
    [Fact]
    public void NumberedBoxesOfAForm_AreItsHeadings() => Reads("""
        FORM 7 CHEST CARE
        | 1 Date | 2 Time in | 3 Feed stopped | 4 Inhaler given | 5 SpO2 in | 6 Clapping lower R/L | 7 Shaking R/L | 8 SpO2 out | 9 Time out |
        |---|---|---|---|---|---|---|---|---|
        | 10/02/2025 | 9:10 | 8:30 | salbutamol 2 puffs at 8:50 | 95 | 3/2 | 1/1 | 97 | 9:35 |
        | 10/02/2025 | 1:10 |  |  | 94 | 3/3 |  | 96 | 1:30 |
        | 11/02/2025 | 12:45 |  |  | 93 | 4/4 |  | 95 | 1:05 |
        | 13/02/2025 | 9:05 |  |  |  |  |  |  | 9:25 |
        """, "f.txt",
        "feed to 10 08:30", "dose 10 08:50 salbutamol 2 puffs", "check 10 09:10~ 95 before", "check 10 09:10~ 97 after", "session 10 09:10 to 10 09:35 RL3 LL2 R?v1 L?v1",
        "check 10 13:10~ 94 before", "check 10 13:10~ 96 after", "session 10 13:10 to 10 13:30 RL3 LL3",
        "check 11 12:45~ 93 before", "check 11 12:45~ 95 after", "session 11 12:45 to 11 13:05 RL4 LL4", "session 13 09:05 to 13 09:25");

    [Fact]
    public void SheetOnItsSide_WithDaysMergedOverTheirSessions_IsASessionAColumn() => Reads("""
        Session number,1,2,3,4
        Date,Mon 2 June 2025,,Tue 3 June 2025,Wed 4 June 2025
        Milk pump stopped,6.00,,6.05,
        "Salbutamol, 2 puffs, at",6.25,17.00,6.30,6.40
        Patting began,6.45,17.20,6.50,7.00
        "Left lower, min",3,3,4,3
        "Right lower, min",3,ditto,4,nil
        Saturation at start,94,95,91,93
        "Oxygen, litres per min",0,0,1,ditto
        """, "f.csv",
        "feed to 02 06:00 PumpedTube", "dose 02 06:25 salbutamol 2 puffs", "check 02 06:45~ 94 o0 before", "session 02 06:45 LL3 RL3", "dose 02 17:00 salbutamol 2 puffs", "check 02 17:20~ 95 o0 before", "session 02 17:20 LL3 RL3",
        "feed to 03 06:05 PumpedTube", "dose 03 06:30 salbutamol 2 puffs", "check 03 06:50~ 91 o1 before", "session 03 06:50 LL4 RL4", "dose 04 06:40 salbutamol 2 puffs", "check 04 07:00~ 93 o1 before", "session 04 07:00 LL3");

    [Fact]
    public void RowForEachHour_IsKnownToTheHour() => Reads("""
        Hour,Feed mL (PEG),Physio min,SpO2,HR,Meds,What else
        Tuesday 8 July 2025
        0600,off,,,,Salbutamol 4 puffs,
        0700,,15,95,108,,
        0800,150,,,,,small vomit
        0900,,,,,,
        1200,off 1210,,94,,,
        """, "f.csv",
        "dose 08 06:00~ salbutamol 4 puffs", "feed to 08 06:00~ Tube", "check 08 07:00~ 95 p108", "session 08 07:00~ 15 min", "feed 08 08:00~ 150 ml Tube", "sign 08 08:00~ vomit small", "check 08 12:00~ 94", "feed to 08 12:10 Tube");

    [Fact]
    public void NightShiftUnderTheDateOfItsEvening_RunsOnIntoTheNextDay() => Reads("""
        Date (shift start),Shift D/N,Time,Care given,Details,Result
        16/03/2025,D,17h15,Chest percussion,both bases 3 min,before 94 after 96
        16/03/2025,N,21h00,Feed pump started,60 ml/hr,
        16/03/2025,N,00h40,Sats check,asleep,93% on 0.5 l
        16/03/2025,N,05h30,Feed pump stopped,,
        17/03/2025,D,06h45,Nebuliser,Salbutamol 2.5 mg,
        17/03/2025,N,21h10,Oxygen changed,from 1 l to 1.5 l,
        """, "f.csv",
        "check 16 17:15~ 94 before", "check 16 17:15~ 96 after", "session 16 17:15 LL3 RL3", "feed 16 21:00 60 ml/h PumpedTube", "check 17 00:40 93 o0.5", "feed to 17 05:30 PumpedTube", "dose 17 06:45 salbutamol 2.5 mg", "check 17 21:10 o1.5");

    [Fact]
    public void OneMeasureALine_AtTheSameMinute_IsOneCheck() => Reads("""
        Date,Time,Measure,Result
        16/05/2025,07:05,SpO2,94
        16/05/2025,07:05,HR,118
        16/05/2025,07:05,O2,0.5
        16/05/2025,07:10,Physio,"LL 3, RL 3"
        16/05/2025,12:30,Feed,150 ml
        16/05/2025,13:00,Physio refused,
        17/05/2025,13:10,Temp,38.1
        """, "f.csv", "check 16 07:05 94 p118 o0.5", "session 16 07:10 LL3 RL3", "feed 16 12:30 150 ml", "sign 17 13:10 temperature 38.1");

    [Fact]
    public void TimedLabelsDownTheSide_OverMinutesAndTicks() => Reads("""
        ,Mon 5 May 2025,Tue 6 May 2025,Wed 7 May 2025
        6.30 am neb (salbutamol 2.5mg),✓,✓,
        7.00 am chest L base,3,3,4
        7.00 am chest R base,3,3,4
        Sats before,94,95,91
        5.30 pm chest L base,3,,4
        Notes,,asleep so no evening chest,temp 38.4 at 2pm
        """, "f.csv",
        "dose 05 06:30~ salbutamol 2.5mg", "check 05 07:00~ 94 before", "session 05 07:00~ LL3 RL3", "session 05 17:30~ LL3", "dose 06 06:30~ salbutamol 2.5mg", "check 06 07:00~ 95 before", "session 06 07:00~ LL3 RL3",
        "check 07 07:00~ 91 before", "session 07 07:00~ LL4 RL4", "sign 07 14:00 temperature 38.4", "session 07 17:30~ LL4");

    [Fact]
    public void ColumnsLinedUpWithSpaces_AreATable() => Reads("""
        HOME LOG - March 2025

        Date        Time    L low  R low  Sats pre  Sats post  O2    Who
        03/03/2025  07:05   3      3      94        96         air   Mum
        03/03/2025  17:20   3             95                   0.5   Dad
        13/03/2025  17:45   4      4                                 Dad
        """, "f.txt",
        "check 03 07:05~ 94 o0 before", "check 03 07:05~ 96 o0 after", "session 03 07:05 LL3 RL3", "check 03 17:20~ 95 o0.5 before", "session 03 17:20 LL3", "session 13 17:45 LL4 RL4");

    [Fact]
    public void MedicinesByDaysOfTheMonth_SignedWithInitials() => Reads("""
        Medication chart - April 2025
        Medicine,Dose,Time,1,2,3
        Salbutamol,4 puffs,0630,AB,-,CD
        Amoxicillin,5 ml,2000,,CD,AB
        """, "f.csv", "dose 01 06:30~ salbutamol 4 puffs", "dose 02 20:00~ amoxicillin 5 ml", "dose 03 06:30~ salbutamol 4 puffs", "dose 03 20:00~ amoxicillin 5 ml");

    [Fact]
    public void TimesInHeadings_OverSaturationsAndTheirOxygen() => Reads("""
        date,8am sats,8am O2,2pm sats,2pm O2
        2/6/2025,95,0,94,0
        14/6/2025,92,0.5,91,
        """, "f.csv", "check 02 08:00~ 95 o0", "check 02 14:00~ 94 o0", "check 14 08:00~ 92 o0.5", "check 14 14:00~ 91");

    [Fact]
    public void HeadingsOfAnotherLanguage_AreRead() => Reads("""
        Datum;Uhrzeit;Was;Menge;Sättigung vorher;Sättigung nachher;Bemerkung
        23.11.2025;06:40;Salbutamol;2 Hübe;;;
        23.11.2025;07:00;Klopfen;links 3 rechts 3;94;96;
        23.11.2025;12:15;Sondenkost;150 ml;;;
        """, "f.csv", "dose 23 06:40 salbutamol 2 Hübe", "check 23 07:00~ 94 before", "check 23 07:00~ 96 after", "session 23 07:00 L?3 R?3", "feed 23 12:15 150 ml");

    [Fact]
    public void DaysInsideTheHeadings_StandOverTheirColumns() => Reads("""
        ,Mon 3 Nov 2025 physio,Mon 3 Nov 2025 sats,Tue 4 Nov 2025 physio,Tue 4 Nov 2025 sats
        7am,L3 R3,95,L3 R3,94
        5pm,L4 R4,96,,93
        """, "f.csv", "check 03 07:00~ 95", "session 03 07:00 L?3 R?3", "check 03 17:00~ 96", "session 03 17:00 L?4 R?4", "check 04 07:00~ 94", "session 04 07:00 L?3 R?3", "check 04 17:00 93");

    [Fact]
    public void BareTimesOfTwelveHours_AreProvedByTheOrderOfTheDays() => Reads("""
        date,1st chest,2nd chest,puffer (salbutamol),pump feed off
        3/3/2025,7.05,5.30,6.45,6.15
        4/3/2025,7.10,5.45,6.50,6.20
        15/3/2025,7.00,,6.40,6.10
        """, "f.csv",
        "feed to 03 06:15 PumpedTube", "dose 03 06:45 salbutamol", "session 03 07:05", "session 03 17:30", "feed to 04 06:20 PumpedTube", "dose 04 06:50 salbutamol", "session 04 07:10", "session 04 17:45", "feed to 15 06:10 PumpedTube", "dose 15 06:40 salbutamol", "session 15 07:00");

    [Fact]
    public void CrossAndNoAmongTimes_AreSessionsLeftOut_AndTicksAreSessions()
    {
        var log = Inputs.Import("f.csv", "date,physio am,physio pm\n3/11/2025,7:10,17:20\n4/11/2025,x,17:30\n5/11/2025,N,no\n16/11/2025,✓,17:25\n");
        Assert.Equal(["session 03 07:10", "session 03 17:20", "session 04 17:30", "session 16 09:00~", "session 16 17:25"], Told.By(log));
        Assert.Equal([(4, "x"), (5, "N"), (5, "no")], log.Omitted.Select(o => (o.When.Stated.Day, o.Reason!)));
        Assert.Equal(["session 03 day", "session 05 day", "session 16 day"], Told.By(Inputs.Import("f.csv", "date,physio\n3/11/2025,x\n4/11/2025,\n5/11/2025,x\n16/11/2025,x\n")));
    }

    [Fact]
    public void OneEarlyMorningBelowAnEvening_InATableThatDoesNotSay_IsAsked()
    {
        var log = Inputs.Import("f.csv", "date,time,sats\n13/11/2025,09:00,95\n13/11/2025,21:00,94\n13/11/2025,02:30,91\n14/11/2025,09:00,95\n");
        Assert.Equal(3, log.Entries.Count);
        Assert.Equal(4, Assert.Single(log.Problems).Source.Line);
    }

    [Fact]
    public void MinutesOfTwoSides_AreNoDays() => Reads("""
        ,Monday 8/9/25,Tuesday 9/9/25,Wednesday 17/9/25
        MORNING,,,
        Time started,7:00,7:05,6:55
        Time finished,7:20,7:25,7:20
        Lower L/R,3/3,3/2,4/4
        AFTERNOON,,,
        Time started,5:10,,12:15
        Lower L/R,3/3,,4/4
        SpO2 before/after,95/97,,90/93
        """, "f.csv",
        "session 08 07:00 to 08 07:20 LL3 RL3", "check 08 17:10~ 95 before", "check 08 17:10~ 97 after", "session 08 17:10 LL3 RL3", "session 09 07:05 to 09 07:25 LL3 RL2",
        "session 17 06:55 to 17 07:20 LL4 RL4", "check 17 12:15~ 90 before", "check 17 12:15~ 93 after", "session 17 12:15 LL4 RL4");

    [Fact]
    public void FormOfOneEvent_IsOneSession() => Reads("""
        CHEST PHYSIO SHEET,
        Date,14/3/2025
        Time started,7:05 am
        Time finished,7:25 am
        Left lower,3
        Sats before,94
        Oxygen,air
        ,
        CHEST PHYSIO SHEET,
        Date,15/3/2025
        Time started,5:10 pm
        Time finished,5:30 pm
        Left lower,4
        Sats before,92
        Oxygen,0.5
        """, "f.csv", "check 14 07:05~ 94 o0 before", "session 14 07:05 to 14 07:25 LL3", "check 15 17:10~ 92 o0.5 before", "session 15 17:10 to 15 17:30 LL4");

    [Fact]
    public void TicksLettersAndWordsUnderTheParts_AreTheirMinutes()
    {
        Reads("Date,Start time,LLL,RLL,LUL,Mins each area\n13/3/2025,07:05,✓,✓,,3\n", "f.csv", "session 13 07:05 LL3 RL3");
        Reads("Key: P = percussion V = vibration,,,\nDate,Time,Left,Right\n13/11/2025,07:05,P3 V1,P3\n", "f.csv", "session 13 07:05 L?3 L?v1 R?3");
        Reads("Date,Chest start,Left,Right\n13/3/2025,07:05,L 3 + U 2,L 3\n", "f.csv", "session 13 07:05 LL3 LU2 RL3");
        Reads("Date/Time,Treatment,Lobes,Minutes\n3/14/2025 7:10 AM,CPT,\"LLL, RLL\",10\n3/14/2025 12:05 PM,Tube feed 5 oz,,\n3/15/2025 6:50 AM,Albuterol 2 puffs,,\n", "f.csv", "session 14 07:10 LL RL", "feed 14 12:05 147.9 ml Tube", "dose 15 06:50 salbutamol 2 puffs");
        Reads("Date,Chest AM\n14 Aug 2025,7:30am (5 min each side)\n15 Aug 2025,7:10am - 3 each side\n", "f.csv", "session 14 07:30 L?5 R?5", "session 15 07:10 L?3 R?3");
    }

    [Fact]
    public void FeedsWithTheirRateAndTheirMeal_AreNotOneAnothers() => Reads("""
        ,Mon 3/3/25,Thu 13/3/25
        Lunch feed ml,160,150
        Night feed on,9.00pm,9.10pm
        Night feed ml/hr,65,60
        """, "f.csv", "feed 03 12:30~ 160 ml", "feed 03 21:00 65 ml/h PumpedTube", "feed 13 12:30~ 150 ml", "feed 13 21:10 60 ml/h PumpedTube");

    [Fact]
    public void SeveralSessionsInACell_EachHaveTheirMinutesAndSaturations() => Reads(
        "Date,Physio times,Minutes,SpO2 before,SpO2 after,O2\n13.03.2025,\"7:05, 17:10\",20/15,94/95,96/97,0\n", "f.csv",
        "check 13 07:05~ 94 o0 before", "check 13 07:05~ 96 o0 after", "session 13 07:05 20 min", "check 13 17:10~ 95 o0 before", "check 13 17:10~ 97 o0 after", "session 13 17:10 15 min");

    [Fact]
    public void MealsEachWithItsTime_AndAFeedOverNight_AreFourFeeds() => Reads("""
        Date,Breakfast,,Lunch,,Overnight,,
        ,Time,oz,Time,oz,On,Off,ml
        6/14/2025,7:45 AM,5,12:15 PM,6,9:00 PM,5:00 AM,480
        """, "f.csv", "feed 14 07:45 147.9 ml", "feed 14 12:15 177.4 ml", "feed 14 21:00 to 15 05:00 480 ml");

    [Fact]
    public void PartsNamedWithTheTechnique_AndMinutesBesideIt() => Reads("""
        Monday 03 Nov 2025,,,
        Time,Intervention,Duration,Response
        0640,Salbutamol MDI 4 puffs via spacer,,
        0700,Percussion LLL + RLL,3 min each,
        0725,Obs,,SpO2 96% HR 108 on 0.5L
        1215,PEG bolus 150 mL,20 min,Tolerated
        """, "f.csv", "dose 03 06:40 salbutamol 4 puffs", "session 03 07:00 LL3 RL3", "check 03 07:25 96 p108 o0.5", "feed 03 12:15 to 03 12:35 150 ml BolusTube");

    [Fact]
    public void WordForTheWhole_UnderWhatWeDid_TakesTheEndOfItsRow() => Reads("""
        Day,Start,Finish,What we did,Sats pre,Sats post
        Mon 4/8/2025,6.45am,7.05am,Full,95,97
        ,5.30pm,5.50pm,"Full, 4 min on the lowers",,94
        Fri 8/8/2025,12.20pm,,Lowers (bus was early),,

        "Full = cupping 3 min each lower side and 2 min each upper side, then vibes 1 min each lower side"
        "Lowers = just the cupping on the two lower sides, 3 min each, no vibes"
        """, "f.csv",
        "check 04 06:45~ 95 before", "check 04 06:45~ 97 after", "session 04 06:45 to 04 07:05 LL3 RL3 LU2 RU2 LLv1 RLv1",
        "check 04 17:30~ 94 after", "session 04 17:30 to 04 17:50 LL4 RL4 LU2 RU2 LLv1 RLv1", "session 08 12:20 LL3 RL3");

    [Fact]
    public void PlaceInARowOfItsOwn_WithTheMinutesOfEachSideBesideIt_IsOneSession() => Reads("""
        no,kind,from,to,place,left_min,right_min,text
        7,PERCUSSION,2026-04-18 08:30,2026-04-18 08:45,upper,2,2,
        6,PERCUSSION,2026-04-18 08:30,2026-04-18 08:45,lower,3,4,
        5,FEED,,2026-04-18 06:10,,,,night pump off
        """, "f.csv",
        "feed to 18 06:10 PumpedTube", "session 18 08:30 to 18 08:45 LU2 RU2 LL3 RL4");

    [Fact]
    public void TwoNumbersUnderOnePlace_AreLeftAndRightAsTheKeySays() => Reads("""
        "Day";"When";"clapping low";"clapping high";"shakes low";"Sat";"O2 L";"Salbu";"Tube feed"
        "lun. 3 nov. 2025";"7 h 10";"3/4";"2/2";"1";"94→97";"0";"2 (6:50)";"fini 6 h 15"
        "mar. 4 nov.";"17 h 50";"2,5/2,5";"2/2";"";"95→";"0,5";"";""

        "clapping = with a hollow hand, minutes left/right. shakes = vibrations after, minutes on each low side"
        """, "f.csv",
        "feed to 03 06:15 Tube", "dose 03 06:50 salbutamol 2", "check 03 07:10~ 94 o0 before", "check 03 07:10~ 97 o0 after", "session 03 07:10 LL3 RL4 LU2 RU2 LLv1 RLv1",
        "check 04 17:50~ 95 o0.5 before", "session 04 17:50 LL2.5 RL2.5 LU2 RU2");

    [Fact]
    public void DayWithAStopBehindTheMonth_IsADay_AndNoTime() => Reads("""
        "time";"LLL";"RLL";"SpO2"
        "Mo 3.11.2025";"";"";""
        "07:05";"3";"3";""
        "Samstag 8.11. (Friday is missing)";"";"";""
        "18:30";"3";"3";""
        "Sonntag 9.11.";"";"";""
        "18:40";"4";"4";""
        """, "f.csv",
        "session 03 07:05 LL3 RL3", "session 08 18:30 LL3 RL3", "session 09 18:40 LL4 RL4");

    [Fact]
    public void DateThatIsNotRead_IsAsked_AndLendsItsRowsNoOtherDay()
    {
        var log = Inputs.Import("f.csv", "date;time;LLL;RLL\n3 Nov 2025;07:05;3;3\n4 xyzember;18:30;3;3\n;19:30;3;3\n");
        Assert.Equal(["session 03 07:05 LL3 RL3"], Told.By(log));
        Assert.Contains(log.Problems, p => p.Why.Contains("4 xyzember", StringComparison.Ordinal));
        Assert.True(log.Lines.Balances);
    }

    [Fact]
    public void LineWithADateThatIsNotRead_LendsTheRowsBelowNoOtherDay()
    {
        var log = Inputs.Import("f.csv", "time;LLL;RLL;SpO2\n3 November 2025;;;\n07:05;3;3;94\nSoirbu 4 xyzember;;;\n18:30;3;3;95\n");
        Assert.Equal(["check 03 07:05~ 94", "session 03 07:05 LL3 RL3"], Told.By(log));
        Assert.Contains(log.Problems, p => p.Why.Contains("4 xyzember", StringComparison.Ordinal));
        Assert.True(log.Lines.Balances);
    }

    [Fact]
    public void YearsOfDays_AreInTheOrderThatTheirTwentiethsTell()
    {
        var rows = Enumerable.Range(0, 2500).Select(i => new DateOnly(2018, 1, 1).AddDays(i)).Select(d => d.ToString("dd/MM/yyyy", System.Globalization.CultureInfo.InvariantCulture) + ",07:05,3,3");
        var log = Inputs.Import("f.csv", "date,time,LLL,RLL\n" + string.Join('\n', rows) + "\n");
        Assert.Equal(2500, log.Entries.Count);
        Assert.Empty(log.Problems);
    }

    [Fact]
    public void FeedUnderMedicines_IsNoDose() => Reads("""
        Time,SpO2,CPT,Med / feed
        4 March 2026,,,
        05:45,,,"G-tube feed off, 420 mL in"
        06:10,,,albuterol neb 2.5 mg
        06:25,,LL3 RL3,
        """, "f.csv", "feed to 04 05:45 420 ml Tube", "dose 04 06:10 salbutamol 2.5 mg", "session 04 06:25 LL3 RL3");

    [Theory]
    [InlineData("5 oz", 147.9)]
    [InlineData("1 oz", 29.6)]
    [InlineData("4 oz", 118.3)]
    [InlineData("6 oz", 177.4)]
    public void Ounces_AreUsFluidOuncesToATenth(string written, double millilitres) =>
        Assert.Equal(millilitres, Assert.Single(Inputs.Import("f.csv", $"date,time,feed ml\n13/11/2025,12:00,{written}\n").Entries.OfType<CareRecords.Records.Feed>()).Millilitres);

    private static void Reads(string table, string file, params string[] told)
    {
        var log = Inputs.Import(file, table);
        Assert.Equal(told, Told.By(log));
        Assert.Empty(log.Problems);
        Assert.True(log.Lines.Balances);
    }
}
