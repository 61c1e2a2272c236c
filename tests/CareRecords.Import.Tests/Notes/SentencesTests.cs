using CareRecords.Records;
using static CareRecords.Import.Tests.Notes.Telling;

namespace CareRecords.Import.Tests.Notes;

/// <summary>Sentences whose second half leans on the first. The lines are invented; each result is written as one text.</summary>
public sealed class SentencesTests
{
    [Theory]
    [InlineData("ibuprofen 4 ml 09:30, then 5.30pm", "09:30 ibuprofen 4 ml; 17:30 ibuprofen 4 ml")]
    [InlineData("first amoxicillin 5 ml 08:00, second 16:00", "08:00 amoxicillin 5 ml; 16:00 amoxicillin 5 ml")]
    [InlineData("doctor gave us azithromycin, 4 ml once a day. He had it at noon", "12:00 azithromycin")]
    [InlineData("14:30 feed 170 done 15:00", "14:30-15:00 feed 170")]
    [InlineData("tea 16:10-16:40 150 ml", "16:10-16:40 feed 150")]
    [InlineData("05:50 pump off (on since 21:30, 60 ml/h)", "21:30-05:50 feed @60")]
    [InlineData("school gave her 120 down the tube at 12:15", "12:15 feed 120")]
    [InlineData("pump off at 5.45 am salbutamol 2 puffs at 6.15 am then physio at 6.30 am", "-05:45 feed; 06:15 salbutamol 2 puffs; 06:30 session")]
    [InlineData("11:40 LL4 RL4 LU2 RU2, green now", "11:40 session LL4 RL4 LU2 RU2; 11:40 secretions green")]
    [InlineData("07:10 LL4 RL4. bit chesty", "07:10 session LL4 RL4; 07:10 secretions bit chesty")]
    [InlineData("07:10 LL4 RL4. chesty, thick", "07:10 session LL4 RL4; 07:10 secretions chesty, thick")]
    [InlineData("11:40 LL4 RL4, green nappy", "11:40 session LL4 RL4")]
    [InlineData("physio 07:10, all four places 4 min each", "07:10 session LL4 RL4 LU4 RU4")]
    [InlineData("07:10 physio, patting both sides, lower 3 mins each and upper 2 mins each", "07:10 session LL3 RL3 LU2 RU2")]
    [InlineData("he was sick at half past two in the afternoon", "14:30 vomit")]
    [InlineData("02:10 SpO2 87. O2 on at 0.5 l. 93 at 02:20", "02:10 check 87; 02:10 check  on 0.5; 02:20 check 93 on 0.5")]
    [InlineData("15:00 sats between 92 and 95 on 1 litre", "15:00 check 92-95 on 1")]
    [InlineData("Percussion at 0730 hrs and 1800 hrs, both lower lobes 3 minutes each", "07:30 session LL3 RL3; 18:00 session LL3 RL3")]
    [InlineData("07:15 physio LL 4 RL 4 LU 2 RU 2, then vibs 1 min each area", "07:15 session LL4 RL4 LU2 RU2 LL1 RL1 LU1 RU1")]
    [InlineData("The pump was stopped at 0600 hrs, having run from 2100 hrs at 50 ml per hour", "21:00-06:00 feed @50")]
    [InlineData("amoxicillin started!! 6 ml at 09:00 and 21:00", "09:00 amoxicillin 6 ml; 21:00 amoxicillin 6 ml")]
    [InlineData("co-amoxiclav 5 ml 19:00, two days left of it", "19:00 amoxicillin/clavulanate 5 ml")]
    [InlineData("08:00 turned him down to 0.5, 95 after ten mins", "08:00 check  on 0.5; 08:10 check 95 on 0.5")]
    [InlineData("10:00 stop oxygen. 10:30 sats 95", "10:00 check  on 0; 10:30 check 95 on 0")]
    [InlineData("07:10 physio both bases 3 each, brought up a load of green", "07:10 session LL3 RL3; 07:10 secretions green")]
    [InlineData("Percussion at 06:40, left lower 3, right lower 3. Finished at 06:55.", "06:40-06:55 session LL3 RL3")]
    [InlineData("17:30 nana did do tapping, 5 min each side", "17:30 session LU5 RU5")]
    [InlineData("09:00 handed over, 12 nappies left, please buy", "")]
    [InlineData("07:00 sats ninety-five before physio and ninety-seven after", "07:00 check 95; 07:00 check 97")]
    [InlineData("10:00 temp thirty-eight point six", "10:00 temperature 38.6 C")]
    [InlineData("10:00 temp thirty eight point six", "10:00 temperature 38.6 C")]
    [InlineData("10:00 temp 38 point six", "10:00 temperature 38.6 C")]
    [InlineData("10:00 temp thirty eight comma six", "10:00 temperature 38.6 C")]
    [InlineData("04:00 sats 90 so I opened the oxygen to half a litre, 93 at 04:20", "04:00 check 90; 04:00 check  on 0.5; 04:20 check 93 on 0.5")]
    [InlineData("12:30 lunch, 180 ml by gastrostomy, finished 12:55", "12:30-12:55 feed 180")]
    [InlineData("forgot amoxicillin at 8am gave it 10am 6 ml", "10:00 amoxicillin 6 ml")]
    [InlineData("physio 9am (lie in), 5.30pm, bottoms 3 each", "09:00 session LL3 RL3; 17:30 session LL3 RL3")]
    [InlineData("08:15 has amoxicillin in her bag, 5 ml due at 1", "")]
    [InlineData("08:00 nothing from her yet, I'll do physio later", "")]
    [InlineData("18:00 180 feed down the button", "18:00 feed 180")]
    [InlineData("07:30 tapping the lower part three minutes on the left and three on the right", "07:30 session LL3 RL3")]
    [InlineData("07:00 CPT low 3 each, up 2 each", "07:00 session LL3 RL3 LU2 RU2")]
    [InlineData("07:00 clapped 3 min each spot, left and right, lower and upper", "07:00 session LL3 RL3 LU3 RU3")]
    [InlineData("right I did her chest at half past seven in the morning clapping three minutes on the left bottom and three minutes on the right bottom", "07:30 session LL3 RL3")]
    [InlineData("CPT 0900 and 1300 to be done by mom", "")]
    public void Sentence(string line, string expected) => Assert.Equal(expected, Told(Read(line)));

    [Theory]
    [InlineData("07:00 chest bottoms 4 each side, tops 3 each side|chest 12:00, 16:00 and 20:00, 4 and 3", "07:00 session LL4 RL4 LU3 RU3; 12:00 session LL4 RL4 LU3 RU3; 16:00 session LL4 RL4 LU3 RU3; 20:00 session LL4 RL4 LU3 RU3")]
    [InlineData("07:00 chest bottoms 4 each side, tops 3 each side|physio 11:00, 15:30, 19:30 - 4 and 3 each time", "07:00 session LL4 RL4 LU3 RU3; 11:00 session LL4 RL4 LU3 RU3; 15:30 session LL4 RL4 LU3 RU3; 19:30 session LL4 RL4 LU3 RU3")]
    [InlineData("07:00 chest bottoms 3 each side, tops 2 each side|17:30 chest 3s and 2s", "07:00 session LL3 RL3 LU2 RU2; 17:30 session LL3 RL3 LU2 RU2")]
    [InlineData("07:00 chest bottoms 3 each side, tops 2 each side|12:30 and 17:30 chest both done, 3 and 2", "07:00 session LL3 RL3 LU2 RU2; 12:30 session LL3 RL3 LU2 RU2; 17:30 session LL3 RL3 LU2 RU2")]
    [InlineData("physio 7am and 6.30pm, 3 bottoms 2 tops", "07:00 session LL3 RL3 LU2 RU2; 18:30 session LL3 RL3 LU2 RU2")]
    [InlineData("06:50 clapped low left 3 minutes, low right 3 minutes, then the same up top|17:00 clapped, four places, 4 minutes each", "06:50 session LL3 RL3 LU3 RU3; 17:00 session LL4 RL4 LU4 RU4")]
    [InlineData("06:40 clap 4 minutes each side down, and on top 2 minutes each side", "06:40 session LL4 RL4 LU2 RU2")]
    [InlineData("18:00 clap, sats 93 down from 96", "18:00 session UU; 18:00 check 93; 18:00 check 96")]
    [InlineData("inhaler 16:50, 2. chest 17:10, left bottom 3, right bottom 3", "16:50 unknown 2 puffs; 17:10 session LL3 RL3")]
    [InlineData("95 at 12:00 on half a litre. Turned it off at 15:00", "12:00 check 95 on 0.5; 15:00 check  on 0")]
    [InlineData("temp 38.3 at 15:00 (I had 39.3 down first, my mistake)", "15:00 temperature 38.3 C")]
    [InlineData("13:00 stuff is white now", "13:00 secretions white")]
    [InlineData("13:00 secretions thick, pale green", "13:00 secretions thick, pale green")]
    [InlineData("12:10 peg feed 150", "12:10 feed 150")]
    [InlineData("15:00 rang the hospital physio, says drop the tops", "")]
    [InlineData("09:00 washed the nebuliser cups", "")]
    [InlineData("13:05 ibuprofen 6 ml. big brother got 10 ml too", "13:05 ibuprofen 6 ml")]
    [InlineData("09:00 with his brother had 2 puffs of salbutamol", "09:00 salbutamol 2 puffs")]
    [InlineData("First physio 07:10 LL3 RL3. Next physio 11:30, LL4 RL4", "07:10 session LL3 RL3; 11:30 session LL4 RL4")]
    [InlineData("10:00 cough not yet gone", "10:00 cough")]
    [InlineData("11:00 spit out the amoxicillin 5 ml", "11:00 amoxicillin 5 ml")]
    [InlineData("12:00 feed 30 (not 40, he was sick)", "12:00 feed 30; 12:00 vomit")]
    [InlineData("13:00 chest LL3 RL3|Scratch above his left eye from the cat", "13:00 session LL3 RL3")]
    [InlineData("rang the clinic, physio 15:00 LL3 RL3", "15:00 session LL3 RL3")]
    [InlineData("inhaler 8am, 4", "08:00 unknown; 16:00 unknown")]
    [InlineData("16:00 chest not yet, he is asleep", "")]
    [InlineData("07:30 chest LL3 RL3|four claps again at the same times", "07:30 session LL3 RL3")]
    [InlineData("physio was for 17:00 but put back to 18:30. 3 each side low", "18:30 session LL3 RL3")]
    [InlineData("06:35 chest LL3 RL3|ignore the line above, wrote Monday out twice. 07:05 chest LL2 RL2", "07:05 session LL2 RL2")]
    public void LinesThatLeanOnOthers(string lines, string expected) => Assert.Equal(expected, Told(Read(lines.Split('|'))));

    [Theory]
    [InlineData("12:00 chest: he says he did it, she says he didn't. idk")]
    [InlineData("08:00 Tom had his inhaler 2 puffs himself")]
    [InlineData("00:15 Mum took paracetamol 500 herself")]
    [InlineData("next chest at 17:00, not earlier")]
    [InlineData("06:30 neb? one less in the box but can't remember giving it")]
    public void WhatNobodyKnows_IsAsked(string line)
    {
        var reading = Read(line);
        Assert.Empty(reading.Entries);
        Assert.NotEmpty(reading.Problems);
    }

    [Fact]
    public void LineTakenBack_IsSetAsideWithThatReason() =>
        Assert.Contains(Read("17:00 chest LL3 RL3", "ignore the line above").SetAside, s => s.Source.Line == 2 && s.Why == "taken back by the line after it");

    [Theory]
    [InlineData("14:00 sats 86. Oxygen 2 l. 92 at 14:20, 94 at 14:50", "14:00 check 86; 14:00 check  on 2; 14:20 check 92 on 2; 14:50 check 94 on 2")]
    [InlineData("14:00 91 on 0.5, turned up to 1, 94 after 15 min", "14:00 check 91 on 0.5; 14:00 check  on 1; 14:15 check 94 on 1")]
    [InlineData("14:00 sats 92 RA, started 0.5 L, rose to 96 in 5 mins", "14:00 check 92 on 0; 14:00 check  on 0.5; 14:05 check 96 on 0.5")]
    [InlineData("14:00 87, put the oxygen up to a litre, 93 half an hour later", "14:00 check 87; 14:00 check  on 1; 14:30 check 93 on 1")]
    [InlineData("14:00 O2 up to 0.5, 93 within a few minutes", "14:00 check  on 0.5; 14:00 check 93 on 0.5")]
    [InlineData("14:00 put her on three quarters of a litre, 94", "14:00 check 94 on 0.75")]
    [InlineData("14:00 obs: T 37.1, P 96, S 94", "14:00 check 94; 14:00 temperature 37.1 C")]
    [InlineData("14:00 chest lowers 3 each. 93 / 95 pre/post on 1L", "14:00 session LL3 RL3; 14:00 check 93 on 1; 14:00 check 95 on 1")]
    public void Oxygen_GivenForALowReading_IsAChangeOfItsOwn(string line, string expected) => Assert.Equal(expected, Told(Read(line)));

    [Theory]
    [InlineData("chest 06:15, 10:30 and 14:30. all bottoms 3 mins each side", "06:15 session LL3 RL3; 10:30 session LL3 RL3; 14:30 session LL3 RL3")]
    [InlineData("tapping 07:10, 11:00 and 15:15. 4 mins each side bottoms every time. No shaking", "07:10 session LL4 RL4; 11:00 session LL4 RL4; 15:15 session LL4 RL4")]
    [InlineData("07:30 D, 12:30 N, 18:00 M. All tapping lowers 3 mins each side", "07:30 session LL3 RL3; 12:30 session LL3 RL3; 18:00 session LL3 RL3")]
    [InlineData("clapping 18:00, bottoms four minutes each. 91 before and 94 after, all on the half litre", "18:00 session LL4 RL4; 18:00 check 91 on 0.5; 18:00 check 94 on 0.5")]
    [InlineData("Clapping was at eight this morning, and at one and six, lower four minutes a side", "08:00 session LL4 RL4; 13:00 session LL4 RL4; 18:00 session LL4 RL4")]
    public void Details_SaidOfAll_AreOfEach(string line, string expected) => Assert.Equal(expected, Told(Read(line)));

    [Fact]
    public void ASessionNamedByItsTimeOrPlace_IsNotToldTwice()
    {
        var reading = Read("chest 06:15, 10:30 and 14:30 bottoms 3 each", "my mum did the 10:30", "92 before the first one 94 after", "sats before the 14:30 90 after 93");
        Assert.Equal("06:15 session LL3 RL3; 06:15 check 92; 06:15 check 94; 10:30 session LL3 RL3; 14:30 session LL3 RL3; 14:30 check 90; 14:30 check 93", Told(reading));
        Assert.Empty(reading.Problems);
    }

    [Fact]
    public void SatsOneOrTheOther_AreAsked()
    {
        var reading = Read("07:00 sats 96 or 69, probe wouldnt sit");
        Assert.Empty(reading.Entries.OfType<Check>());
        Assert.Single(reading.Problems);
    }

    [Fact]
    public void Reason_OfWhatWasNotDone_IsNotDenied()
    {
        var reading = Read("Evening physio not done because of the vomiting");
        Assert.DoesNotContain(reading.Entries, e => e is Session);
        Assert.Single(reading.Omitted);
    }

    [Theory]
    [InlineData("07:10 and 18:00 percussion lowers 3 min each, vibs 1 min each. No vibs on the 18:00", "07:10 session LL3 RL3 LU1 RU1; 18:00 session LL3 RL3")]
    [InlineData("07:10 and 18:00 percussion lowers 3 min each, uppers 2 min each, except that the last had no uppers", "07:10 session LL3 RL3 LU2 RU2; 18:00 session LL3 RL3")]
    public void OneOfSeveral_LeavesAPartOut(string line, string expected)
    {
        var told = Read(line).Entries.OfType<Session>().OrderBy(s => s.Start!.Stated).ToList();
        Assert.Equal(expected.Split("; ").Length, told.Count);
        Assert.True(told[0].Areas.Count > told[1].Areas.Count);
        Assert.Equal(2, told[1].Areas.Count);
    }

    [Theory]
    [InlineData("chest at half past 5 tonight, lowers 3 mins each", "17:30 session LL3 RL3")]
    [InlineData("2 puffs of salbutamol at 6.40am, chest at 7am lowers 3 mins each, 4 puffs of salbutamol a quarter of an hour before that", "06:40 salbutamol 2 puffs; 06:45 salbutamol 4 puffs; 07:00 session LL3 RL3")]
    [InlineData("Physio 07:00, 11:00 and 15:00, lowers 4 min each, with salbutamol 2 puffs ten minutes before every one", "06:50 salbutamol 2 puffs; 07:00 session LL4 RL4; 10:50 salbutamol 2 puffs; 11:00 session LL4 RL4; 14:50 salbutamol 2 puffs; 15:00 session LL4 RL4")]
    [InlineData("02:15 the saturation was 89 without oxygen, and after ten minutes it was 93", "02:15 check 89 on 0; 02:25 check 93")]
    [InlineData("07:15 chest lowers 3 mins each. 95 before, 97 after. No sorry, 94 before", "07:15 session LL3 RL3; 07:15 check 97; 07:15 check 94")]
    [InlineData("I put it up to 1 at 7.30am", "07:30 check  on 1")]
    [InlineData("01:15 SpO2 92 in air, asleep on R side", "01:15 check 92 on 0")]
    [InlineData("off pump 6am, physio 6.45am lowers 3 each side", "-06:00 feed; 06:45 session LL3 RL3")]
    public void OffsetsAndCorrections_InWords(string line, string expected) => Assert.Equal(expected.Split("; ").Order(), Told(Read(line)).Split("; ").Order());

    [Fact]
    public void WhatSomebodySays_TakesNothingFromWhatWasDone()
    {
        Assert.Equal("07:30 session LL3 RL3; 17:30 session LL3 RL3", Told(Read("bottoms 3 mins each side at 7.30am and 5.30pm she says but no inhaler either time")));
        Assert.NotEmpty(Read("three again, 7, 1 and 6, mum says four minutes on the bottoms now").Problems);
    }

    [Theory]
    [InlineData("She did the right side herself for 5 minutes")]
    [InlineData("05:10 and again")]
    public void WhatGivesNoRecord_IsAsked(string line)
    {
        var reading = Read(line);
        Assert.Empty(reading.Entries);
        Assert.NotEmpty(reading.Problems);
    }

    [Theory]
    [InlineData("75 ng at 5pm", "17:00 feed 75")]
    [InlineData("03:30 SpO2 81%, probe half off. Re-taped, 95%", "03:30 check 81; 03:30 check 95")]
    [InlineData("chest 7pm no 7.20, lowers 3 mins each", "19:20 session LL3 RL3")]
    [InlineData("clapping 7:15 and 18:30, all four places 3, 3, 2, 2", "07:15 session LL3 RL3 LU2 RU2; 18:30 session LL3 RL3 LU2 RU2")]
    [InlineData("My husband did both, at 7:10 and at 18:45", "07:10 session; 18:45 session")]
    [InlineData("08:45 called clinic: chest four times daily, salbutamol 4 puffs each time", "")]
    [InlineData("surgery rang back. Chest four times a day until it clears", "")]
    public void WordsThatWereMisread(string line, string expected) => Assert.Equal(expected.Split("; ").Order(), Told(Read(line)).Split("; ").Order());

    [Theory]
    [InlineData("could not do the evening percussion, neb machine not working")]
    [InlineData("Did not do the 7 pm chest. He was sleeping at last.")]
    [InlineData("the 3 pm physio was not done")]
    [InlineData("not doing physio tonight, hes gone off")]
    [InlineData("cant do the 7pm chest")]
    [InlineData("we did not manage the 7pm physio")]
    [InlineData("unable to do chest at 7pm")]
    [InlineData("never got round to the 7pm chest")]
    [InlineData("she wouldnt let me do the 7pm chest")]
    [InlineData("had to cancel the 7pm physio")]
    [InlineData("too poorly for physio at 7pm")]
    [InlineData("7pm chest not possible he was sick")]
    [InlineData("7pm cpt declined")]
    [InlineData("7pm physio: refused")]
    [InlineData("7pm physio, skipped")]
    [InlineData("7pm physio - not done, he was asleep")]
    [InlineData("7pm physio. Not done")]
    [InlineData("7pm physio (not done)")]
    [InlineData("7pm physio ❌")]
    public void WhatWasNotDone_InAnyWords_IsNoSessionThatWasDone(string line)
    {
        var reading = Read(line);
        Assert.Empty(reading.Entries.OfType<Session>());
        Assert.Empty(reading.Entries.OfType<Dose>());
        Assert.NotEmpty(reading.Omitted);
    }

    [Theory]
    [InlineData("7pm physio, missed the bus so late", 1, 0)]
    [InlineData("7pm physio lowers 3 mins each, skipped the uppers", 1, 0)]
    [InlineData("7.15 physio, salbutamol 2 puffs 7am, skipped the feed", 1, 0)]
    [InlineData("6pm feed 200ml, 7pm physio - skipped as he was asleep", 0, 1)]
    [InlineData("physio 11.15am, physio 3pm - not done, physio 7pm", 2, 0)]
    public void WhatElseWasMissed_TakesNoSessionAway(string line, int sessions, int feeds) =>
        Assert.Equal((sessions, feeds), (Read(line).Entries.OfType<Session>().Count(), Read(line).Entries.OfType<Feed>().Count()));

    [Theory]
    [InlineData("0545 albuterol", "0620 mom up, report given. 2 wet diapers")]
    [InlineData("0545 albuterol", "0215 texted mom, OK for acetaminophen 160 mg")]
    public void ReportsAndLeave_GiveNoDose(string dose, string line) => Assert.Single(Read(dose, line).Entries.OfType<Dose>());

    [Theory]
    [InlineData("12.00 noon salbutamol 2 puffs", "12:00 salbutamol 2 puffs")]
    [InlineData("physio quarter to 6 at night", "17:45 session")]
    [InlineData("woke at 2 at night, paracetamol 5 ml", "02:00 paracetamol 5 ml")]
    [InlineData("evening physio was meant for 6pm but done at 8pm", "20:00 session")]
    [InlineData("physio moved from 4pm to 6.15pm", "18:15 session")]
    [InlineData("amoxicillin due 8am but given 8.30am", "08:30 amoxicillin")]
    [InlineData("moved her to the chair, physio 4pm-4.20pm", "16:00-16:20 session")]
    [InlineData("salbutamol treatment at 6.30 am", "06:30 salbutamol")]
    [InlineData("milk 200 ml in the cup at 15:00", "15:00 feed 200")]
    [InlineData("physio came at 2pm, stayed an hour", "")]
    [InlineData("physio was at school 1pm showing the new helper how to clap, 2 mins each side", "")]
    [InlineData("gran telephoned to hear if the 12:00 physio was behind us", "")]
    [InlineData("wanted to give ibuprofen at 5.20pm but her tummy was empty", "")]
    [InlineData("6.30 pm nebuliser was not possible, power cut", "")]
    [InlineData("I did not put the night feed on until half past nine pm", "21:30 feed")]
    [InlineData("4.30pm feed 150 by tube, finished 5", "16:30-17:00 feed 150")]
    [InlineData("2100 pump on. 0200 feed held", "21:00 feed; -02:00 feed")]
    [InlineData("pump on at 10pm at 50 to start", "22:00 feed @50")]
    [InlineData("2000 handover: off oxygen since 1500", "15:00 check  on 0")]
    [InlineData("I clapped him at 6.30 am, then his mother did it at 4 pm", "06:30 session UU; 16:00 session UU")]
    [InlineData("10 am oxygen ¼ → off, 95 on air", "10:00 check 95 on 0")]
    [InlineData("I turned the oxygen off at 10 am, and at 11 am he was 95", "10:00 check  on 0; 11:00 check 95 on 0")]
    [InlineData("back to morning and night for chest", "")]
    [InlineData("07:00 oxygen discontinued. 07:30 SpO2 95% RA", "07:00 check  on 0; 07:30 check 95 on 0")]
    [InlineData("10:00 o2: off", "10:00 check  on 0")]
    [InlineData("20:00 co-amoxiclav 5 ml, last of the bottle", "20:00 amoxicillin/clavulanate 5 ml")]
    public void TimesAndWords_ThatLookLikeOthers(string line, string expected) => Assert.Equal(expected, Told(Read(line)));

    [Theory]
    [InlineData("puffer beforehand is anyone's guess, physio 5pm", "17:00 session")]
    [InlineData("physio 7.10 am. the night one I could not tell you", "07:10 session")]
    [InlineData("did he get the 6pm physio? no memory", "")]
    [InlineData("amoxicillin due 8am but sick so gave ibuprofen 8.30am", "")]
    [InlineData("salbutamol at 6.30am, 11.30am and 4.30pm, except the 4.30", "06:30 salbutamol; 11:30 salbutamol; 16:30 salbutamol")]
    public void WhatNobodyIsSureOf_IsAsked(string line, string certain)
    {
        var reading = Read(line);
        Assert.Equal(certain, Told(reading));
        Assert.NotEmpty(reading.Problems);
    }

    [Theory]
    [InlineData("temp 39.1 (38.1? no, 39.1) at 3pm", "15:00 temperature 39.1 C")]
    [InlineData("3.30pm temp 38.4, I first wrote 37.8", "15:30 temperature 38.4 C")]
    [InlineData("4pm sats 95, first put 85 by mistake", "16:00 check 95")]
    [InlineData("12.30pm had 100 mls of milk no scratch that 120 mls of milk", "12:30 feed 120")]
    [InlineData("4pm sats 95, put on oxygen 1 l", "16:00 check 95; 16:00 check  on 1")]
    public void ValueWrittenWronglyAtFirst_IsNone(string line, string expected) => Assert.Equal(expected, Told(Read(line)));

    [Theory]
    [InlineData("The doctor called and prescribed amoxicillin, 5 ml three times daily. The first was given at 12.30 pm and the second at 6 pm.", "12:30 amoxicillin 5 ml; 18:00 amoxicillin 5 ml")]
    [InlineData("The doctor has prescribed amoxicillin and he had his first spoonful, 5 ml, at 5 pm.", "17:00 amoxicillin 5 ml")]
    [InlineData("Doctor started her on amoxicillin, 7 ml twice a day, and we gave the first one at 5:30 pm in applesauce.", "17:30 amoxicillin 7 ml")]
    [InlineData("Dr visit. azithromycin 5 ml once daily x3 days. given 1300", "13:00 azithromycin 5 ml")]
    [InlineData("Ipratropium 250 mcg was given at 10.40 am as advised.", "10:40 ipratropium 250 mcg")]
    [InlineData("Doctor says amoxicillin 5 ml three times a day", "")]
    public void DosesGiven_BesideTheirPrescription(string line, string expected) => Assert.Equal(expected, Told(Read(line)));

    [Fact]
    public void AmountOfANewPrescription_IsItsOwn() =>
        Assert.Equal("12:30 amoxicillin 5 ml", Told(Read("amoxicillin 7 ml twice a day for now", "The doctor called and prescribed amoxicillin, 5 ml three times daily. The first was given at 12.30 pm.")));

    [Theory]
    [InlineData("- o2: 0.5L", "06:40 check 91 on 0.5; 06:40 check 95 on 0.5")]
    [InlineData("- o2: room air", "06:40 check 91 on 0; 06:40 check 95 on 0")]
    public void OxygenOnALineUnderASessionsReadings_IsOfThem(string line, string expected) =>
        Assert.Equal("06:40 session LL3 RL3; " + expected, Told(Read("cpt: 06:40 LL 3 RL 3", "  - spo2: 91 -> 95", "  " + line)));

    [Fact]
    public void FeedHeld_WhereNoneRan_IsAsked() => Assert.Contains(Read("2300 feed held").Problems, p => p.Why.Contains("not given", StringComparison.Ordinal));

    [Fact]
    public void OneNumberOfMinutes_WhereNothingSaysOfWhichPart_IsAskedAndNotDealtToEveryPlace()
    {
        var reading = Read("The drill: percussion lower 3 each side, upper 2 each side", "07:10 the drill", "12:10 the drill with the four minutes");
        Assert.Equal([3.0, 3.0, 2.0, 2.0], reading.Entries.OfType<Session>().First().Areas.Select(a => a.Minutes ?? -1));
        Assert.All(reading.Entries.OfType<Session>().Last().Areas, a => Assert.Null(a.Minutes));
        Assert.Contains(reading.Problems, p => p.Why.Contains("of every place or of one part", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("05.45 night feed over. Slept well", "-05:45 feed")]
    [InlineData("12.00 feed 100 ml, over by 12.30", "12:00-12:30 feed 100")]
    [InlineData("12.00 feed 100 ml over 30 min", "12:00-12:30 feed 100")]
    public void FeedOver_IsItsEnd_UnlessItSaysHowLong(string line, string expected) => Assert.Equal(expected, Told(Read(line)));

    [Fact]
    public void MedicineWrittenBeforeNeb_IsWhatTheNebHeld() => Assert.Equal("11:40 hypertonic saline 3%; 18:00 salbutamol 2.5 mg",
        Told(Read("neb = salbutamol 2.5 mg", "11.40 3% saline neb", "18.00 neb")));

    [Theory]
    [InlineData("18:20, 2,5/2,5, 2/2, a bit short, tired")]
    [InlineData("11:30-11:50, 4/4, 3/3, 95 after, thick and yellow")]
    public void TimeAndMinutesBySides_WithoutASession_AreAsked(string line) => Assert.Contains(Read(line).Problems, p => p.Why.Contains("does not say what was done", StringComparison.Ordinal));

    [Fact]
    public void HourBehindAnInhaler_IsNoNumberOfPuffs()
    {
        var reading = Read("salbutamol 2 puffs 7pm", "physio 7.15 pm", "Wed 5 March", "inhaler 7, physio quarter past 7 pm");
        Assert.DoesNotContain(reading.Entries.OfType<Dose>(), d => d.Amount == "7 puffs");
        Assert.True(reading.Entries.OfType<Dose>().Count() == 2 || reading.Problems.Count == 1);
    }
}
