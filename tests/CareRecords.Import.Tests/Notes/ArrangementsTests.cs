using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Notes;

/// <summary>What families arrange once for all above their first day, or in a key, and mean below it. The notes are invented.</summary>
public sealed class ArrangementsTests
{
    private static NotesReading Read(params string[] lines) => NotesReader.Read(new SourceText("n.txt", lines), new ReadingContext { NotAfter = new LocalDate(2025, 3, 20), DateOrder = DateOrder.DayMonthYear });

    private static string Areas(Session session) => string.Join(' ', session.Areas.Select(a => $"{a.Side.ToString()[0]}{a.Area.ToString()[0]}{a.Technique.ToString()[0]}{a.Minutes}").Order(StringComparer.Ordinal));

    private const string FourPlaces = "LLP3 LUP2 RLP3 RUP2";

    [Theory]
    [InlineData("usual = clapping bottoms 3 mins each side, tops 2 mins each side", "chest usual")]
    [InlineData("usual: clap lower 3min each side, upper 2min each side", "the usual")]
    [InlineData("Usual CPT = cupping LL RL 3 min ea, LU RU 2 min ea. albuterol neb before", "cpt as usual")]
    [InlineData("Full physio = tapping lower both sides 3-3 min, tapping upper both sides 2-2 min", "full")]
    [InlineData("Per Dr: perc lowers 3 min ea, uppers 2 min ea (= full set). 2x/day", "full set")]
    [InlineData("Nurse told: percussion lower 3 min each side, upper 2 min each side. This is daily physio.", "daily physio")]
    [InlineData("Care plan: percussion lower lobes 3 min each side, upper 2 min each side at 06:45.", "physio as care plan")]
    [InlineData("clap the bottoms 3 minutes each side, then the tops 2 minutes each side. When I do the lot I'll just put the works.", "the works")]
    [InlineData("How I do his chest, so I don't say it every time: cupped hand, three minutes on each lower side and two minutes on each upper side.", "did his chest")]
    [InlineData("The drill (physio, January): percussion bottom L 3 bottom R 3 top L 2 top R 2. Morning and night.", "drill")]
    [InlineData("When I say I did her claps I mean percussion on the left lower and right lower 3 minutes each, and the left upper and right upper 2 minutes each", "did her claps")]
    [InlineData("The usual for anyone new (Ann!!) = clapping 3 mins left bottom, 3 right bottom, 2 left top, 2 right top", "usual done")]
    [InlineData("numbers = mins, always left bottom / right bottom / left top / right top. clapping unless i say", "3/3/2/2")]
    public void AWordForTheWholeSession_StandsForItsAreas(string above, string words)
    {
        var reading = Read(above, "", "Tue 4 March 2025", $"07:15 {words}, sats 94 before 96 after");
        Assert.Equal(FourPlaces, Areas(Assert.Single(reading.Entries.OfType<Session>())));
        Assert.Equal(2, reading.Entries.OfType<Check>().Count());
        Assert.Empty(reading.Problems);
    }

    [Theory]
    [InlineData("Inside the cover: cupped hand, bottoms 3 minutes each side, tops 2 minutes each side.", "chest, the full routine")]
    [InlineData("CPT = percussion. Order: LLL/RLL 3 min ea, LUL/RUL 2 min ea.", "CPT per order")]
    [InlineData("Our plan from PT: back tapping, lower 3 min per side, upper 2 min per side, 2x a day", "tapping per plan")]
    [InlineData("\"Sick plan\" from PT by phone: 4x/day, cupping lowers 3 min each, uppers 2 min each", "sick plan done")]
    [InlineData("so the normal clapping is three minutes each on the bottoms left and right and two minutes each on the tops", "clapping the normal one")]
    public void WhatIsToldOnce_IsMeantByTheWordsForIt(string above, string words) =>
        Assert.Equal(FourPlaces, Areas(Assert.Single(Read(above, "", "Tue 4 March 2025", $"07:15 {words}").Entries.OfType<Session>())));

    [Theory]
    [InlineData("puffer = his salbutamol 4 puffs", "07:00 puffer", "4 puffs")]
    [InlineData("blue = salbutamol. always 2 puffs", "07:00 blue", "2 puffs")]
    [InlineData("Albuterol = 2 puffs w/ spacer unless noted", "07:00 albuterol", "2 puffs")]
    [InlineData("N is the nebuliser, salbutamol 2.5 mg", "07:00 N", "2.5 mg")]
    [InlineData("her puffs are always salbutamol", "07:00 4 puffs", "4 puffs")]
    [InlineData("S4 = salbutamol 4 puffs", "07:00 S6", "6 puffs")]
    [InlineData("usual = bottoms 3 mins each side, inhaler salbutamol 4 puffs 15 mins before", "07:00 inhaler", null)]
    public void AKey_SaysHowMuchAndOfWhat(string above, string words, string? amount)
    {
        var dose = Assert.Single(Read(above, "", "Tue 4 March 2025", words).Entries.OfType<Dose>());
        Assert.Equal(("salbutamol", amount), (dose.Medicine, dose.Amount));
    }

    [Theory]
    [InlineData("usual, no tops", "LLP3 RLP3")]
    [InlineData("usual but tops 1 min each side", "LLP3 LUP1 RLP3 RUP1")]
    [InlineData("usual but only the bottoms", "LLP3 RLP3")]
    [InlineData("just the bottoms", "LLP3 RLP3")]
    [InlineData("usual then vibs 1 min each side", "LLP3 LUP2 LUV1 RLP3 RUP2 RUV1")]
    public void OtherWords_ChangeTheUsual(string words, string areas) =>
        Assert.Equal(areas, Areas(Assert.Single(Read("usual = clapping bottoms 3 mins each side, tops 2 mins each side", "", "Tue 4 March 2025", "07:15 " + words).Entries.OfType<Session>())));

    [Fact]
    public void AWordForWhatWasJustDone_IsLearntFromTheLineThatTellsIt()
    {
        var reading = Read("Tue 4 March 2025", "chest 6.45am patting 3 mins each, left bottom right bottom left top right top. thats what i mean by ordinary from now on", "chest 6pm ordinary", "Wed 5", "6.40am ordinary but 5 on right bottom");
        Assert.Equal(["LLP3 LUP3 RLP3 RUP3", "LLP3 LUP3 RLP3 RUP3", "LLP3 LUP3 RLP5 RUP3"], reading.Entries.OfType<Session>().OrderBy(s => s.Start!.Stated).Select(Areas));
    }

    [Fact]
    public void ASickSet_IsNotTheUsual()
    {
        var reading = Read("standard CPT = percussion lowers 3 min each side, uppers 2 min each side", "Tue 4 March 2025", "07:15 sick CPT", "18:00 standard CPT");
        Assert.Equal(["", FourPlaces], reading.Entries.OfType<Session>().OrderBy(s => s.Start!.Stated).Select(Areas));
    }

    [Fact]
    public void ASetToldOnTheSpot_IsRemembered()
    {
        var reading = Read("Tue 4 March 2025", "07:15 full set - percussion LL RL 3 mins, LU RU 2 mins", "18:00 full set", "Wed 5 March", "07:00 full set, 95 after");
        Assert.All(reading.Entries.OfType<Session>(), s => Assert.Equal(FourPlaces, Areas(s)));
        Assert.Contains("as the notes told it before", reading.Entries.OfType<Session>().Last().HowRead, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("M 13.1|06.50 sats 95|Tu 14.1|06.50 sats 96|W 15.1|07.00 sats 94", "13.1. 14.1. 15.1.")]
    [InlineData("M 13.1|06.50 sats 95|Tu 14.1 no school|06.50 sats 96|Sa 18.1|07.00 sats 94", "13.1. 14.1. 18.1.")]
    [InlineData("03.02|06.50 sats 95|04.02 Tuesday|06.50 sats 96|05.02|07.00 sats 94", "3.2. 4.2. 5.2.")]
    public void DaysWrittenShort_AreHeadings(string lines, string days) =>
        Assert.Equal(days, string.Join(' ', Read(lines.Split('|')).Entries.OfType<Check>().Select(c => $"{c.Start!.Stated.Day}.{c.Start!.Stated.Month}.")));

    [Fact]
    public void LettersBeforeNumbers_ThatAreNotInStepAsDays_AreNoHeadings()
    {
        // "F 2.5" would be the second of May; the letters do not fall on those days.
        var reading = Read("Tue 4 March 2025", "07:00 sats 95", "F 2.5", "T 3.5", "M 4.6");
        Assert.Equal([new LocalDate(2025, 3, 4)], reading.Entries.Select(e => e.When.Stated.Date).Distinct());
    }

    [Fact]
    public void ReadingsInAirByDefault_EndWhereOxygenIsTurnedOn()
    {
        var reading = Read("sats all in room air", "Tue 4 March 2025", "07:00 sats 95", "12:00 sats 88, oxygen on 0.5 L", "12:20 sats 94");
        Assert.Equal([95.0, 88.0], reading.Entries.OfType<Check>().Where(c => c.OxygenLitresPerMinute == 0).Select(c => c.SpO2!.Value));
        Assert.DoesNotContain(reading.Entries.OfType<Check>(), c => c is { SpO2: 94, OxygenLitresPerMinute: 0 });
    }

    [Theory]
    [InlineData("inhaler salb 4 puffs 15 mins before", "inhaler", "salbutamol")]
    [InlineData("the puffer is salbutamol 2 puffs w spacer", "inhaler", "salbutamol")]
    [InlineData("Saline neb (3%, 4 ml) before the morning one", "neb", "hypertonic saline 3%")]
    [InlineData("Before that neb levosalbutamol 0.63 mg", "neb", "levosalbutamol")]
    [InlineData("inhaler salbutamol before, inhaler beclometasone at night", "inhaler", "unknown")]
    public void ADevice_HoldsWhatIsSaidAbove(string above, string device, string medicine) =>
        Assert.Equal(medicine, Assert.Single(Read(above, "", "Tue 4 March 2025", $"06:50 {device}").Entries.OfType<Dose>()).Medicine);

    [Fact]
    public void SpotsAndSame_MeanTheFamilysPlaces()
    {
        var reading = Read("Usual = tapping 3 mins on each of the 4 spots (bottom left bottom right top left top right)", "Tue 4 March 2025", "07:15 tapping 4 mins each spot", "12:00 4 spots 2 mins each", "18:00 tapping only the bottoms 3 each", "Wed 5 March", "07:15 same");
        Assert.Equal(["LLP4 LUP4 RLP4 RUP4", "LLP2 LUP2 RLP2 RUP2", "LLP3 RLP3", "LLP2 LUP2 RLP2 RUP2"], reading.Entries.OfType<Session>().OrderBy(s => s.Start!.Stated).Select(Areas));
    }

    [Fact]
    public void ATerseKey_IsLearnt_WithItsDays()
    {
        var reading = Read("key: n/s neb 3% saline, PT clap min each side (L lowers U uppers) V vibs min each side", "bs sats before/after, F syringe feed ml, P pump ml/h, T temp, x not done", "FEB 2025",
            "M3   0600 P off 0630 n/s 2ml 0650 PT L3 U2 bs 93/96 1210 F150", "Tu4  0640 n/s 2ml 1800 PT L3 U2 T37.6", "W5   0700 PT L4");
        Assert.Equal(new LocalDateTime(2025, 2, 3, 6, 50), reading.Entries.OfType<Session>().First().Start!.Stated);
        Assert.Equal(["LLP3 LUP2 RLP3 RUP2", "LLP3 LUP2 RLP3 RUP2", "LLP4 RLP4"], reading.Entries.OfType<Session>().Select(Areas));
        Assert.Equal(["hypertonic saline 3%", "hypertonic saline 3%"], reading.Entries.OfType<Dose>().Select(d => d.Medicine));
        Assert.Equal([(93d, CheckPhase.Before), (96d, CheckPhase.After)], reading.Entries.OfType<Check>().Select(c => (c.SpO2!.Value, c.Phase)));
        Assert.Equal(new LocalDate(2025, 2, 5), reading.Entries.OfType<Session>().Last().Start!.Stated.Date);
    }

    [Fact]
    public void WhatTheFamilyDoesAtAnHour_IsLearntBeforeTheFirstDayIsTold()
    {
        // Nothing in the first day tells the half of its times; the second and third do.
        var reading = Read("Tue 4 March 2025", "chest 6.40 bottoms 3 each", "Wed 5", "chest 6.40am bottoms 3 each", "chest 5.15pm bottoms 3 each", "Thu 6", "chest 6.40am bottoms 3 each", "chest 5.15pm same");
        Assert.Equal(new LocalTime(6, 40), reading.Entries.OfType<Session>().First().Start!.Stated.TimeOfDay);
        Assert.Empty(reading.Problems);
    }

    [Fact]
    public void ANightOverTwoDates_BeginsOnTheFirst()
    {
        var reading = Read("DAY Mon 24 March 2025", "chest 6.50am bottoms 3 each", "NIGHT 24/25", "pump on 9.30, 50 an hr", "2.20 coughing. 91", "DAY Tues 25", "pump off 6am");
        Assert.Equal([new LocalDateTime(2025, 3, 24, 21, 30), new LocalDateTime(2025, 3, 25, 2, 20)], [reading.Entries.OfType<Feed>().First().Start!.Stated, Assert.Single(reading.Entries.OfType<Check>()).Start!.Stated]);
    }

    private const string LettersKey = "P = percussion, V = vibration after. B = both bottoms, T = both tops, min is per side.";
    private const string RoutineKey = "\"R\" = our well routine: percussion 3 min each LLL, RLL, LUL, RUL, then vibration 1 min on each of the four.";

    [Theory]
    [InlineData("P 0700 B4 T2", "LLP4 LUP2 RLP4 RUP2")]
    [InlineData("P 0700 B4 T2, V nil", "LLP4 LUP2 RLP4 RUP2")]
    [InlineData("P 0700 B4 T3 V B1", "LLP4 LLV1 LUP3 RLP4 RLV1 RUP3")]
    public void ALetterForAPlace_TakesItsMinutes_FourToo(string line, string areas) =>
        Assert.Equal(areas, Areas(Assert.Single(Read(LettersKey, "", "Tue 4 March 2025", line).Entries.OfType<Session>())));

    [Fact]
    public void BeforeWrittenAsALetterAndFour_StaysBefore_AfterAReading() =>
        Assert.Equal([CheckPhase.Before, CheckPhase.After], Read(LettersKey, "", "Tue 4 March 2025", "P 0700 T2, 94 b4 96 after").Entries.OfType<Check>().OrderBy(c => c.SpO2).Select(c => c.Phase));

    [Theory]
    [InlineData("R", "LLP3 LLV1 LUP3 LUV1 RLP3 RLV1 RUP3 RUV1")]
    [InlineData("R but lower lobes only", "LLP3 LLV1 RLP3 RLV1")]
    [InlineData("R except only 2 min percussion on each upper lobe", "LLP3 LLV1 LUP2 LUV1 RLP3 RLV1 RUP2 RUV1")]
    [InlineData("R but right upper only 2 min because of his rash", "LLP3 LLV1 LUP3 LUV1 RLP3 RLV1 RUP2 RUV1")]
    public void ALetterForARoutine_IsNoSide_AndIsChangedOnlyWhereItIsSaid(string words, string areas) =>
        Assert.Equal(areas, Areas(Assert.Single(Read(RoutineKey, "", "Tue 4 March 2025", "- 07:00 " + words).Entries.OfType<Session>())));

    [Theory]
    [InlineData("She did CPT 1000 and 1400, both 4/4/3/3", 2)]
    [InlineData("CPT by mom 0800, 1200, 1600, all 4/4/3/3", 3)]
    public void BareMinutesOfSeveralSessions_AreInTheOrderOfTheKey_InEachOfThem(string line, int count)
    {
        var sessions = Read("CPT numbers go LLL/RLL/LUL/RUL, minutes, cupping.", "", "Tue 4 March 2025", line).Entries.OfType<Session>().ToList();
        Assert.Equal(count, sessions.Count);
        Assert.All(sessions, s => Assert.Equal("LLP4 LUP3 RLP4 RUP3", Areas(s)));
    }
}
