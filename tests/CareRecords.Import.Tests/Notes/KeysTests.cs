using static CareRecords.Import.Tests.Notes.Telling;

namespace CareRecords.Import.Tests.Notes;

/// <summary>What a family explains of its own words, in keys and in sentences, and what its lines mean by them. The lines are invented.</summary>
public sealed class KeysTests
{
    [Theory]
    [InlineData("As taught: percussion on RLL LLL RUL LUL. \"Full set\" = 3 min on every area.", "06:50 full set", "06:50 session RL3 LL3 RU3 LU3")]
    [InlineData("perc = cupping, lowers L and R 4 min each unless I say different", "08:00 perc", "08:00 session LL4 RL4")]
    [InlineData("Log. SpO2 / HR. RA = room air, perc = mins per lobe", "07:10 perc LLL 4 RLL 4. SpO2 95 RA", "07:10 session LL4 RL4; 07:10 check 95 on 0")]
    [InlineData("C = clapping. BL BR = bottom left / right, TL TR = top left / right, number after = mins", "06.50 C BL3 BR3 TL2", "06:50 session LL3 RL3 LU2")]
    [InlineData("S = sats. 93>95 is before > after. A = air. Ox 0.5 = litres", "06.45 S 92 Ox 0.25", "06:45 check 92 on 0.25")]
    [InlineData("F = feed down the button, ml. T = temp", "18.00 F 180", "18:00 feed 180")]
    [InlineData("LL = left lower, RL = right lower, LU and RU the tops. K = klop (cupped hand).", "06h55 K LL 3 RL 3 LU 2", "06:55 session LL3 RL3 LU2")]
    [InlineData("Key: P = percussion, B = bases (lower), T = tops (upper), both sides, mins each side", "0715 P B3 T2", "07:15 session LL3 RL3 LU2 RU2")]
    [InlineData("NIGHT LOG, home nursing. CPT per order: perc LLL RLL 4 min ea, LUL RUL 3 min ea", "2145 CPT per order", "21:45 session LL4 RL4 LU3 RU3")]
    [InlineData("SpO2 all taken without oxygen", "07:00 sats 95", "07:00 check 95 on 0")]
    [InlineData("physio = cupped hand, low left and low right", "07:00 physio 3 each side", "07:00 session LL3 RL3")]
    [InlineData("Clap = lower L, lower R, upper L, upper R", "06:30 clap 2 min each area", "06:30 session LL2 RL2 LU2 RU2")]
    [InlineData("physio = bottoms then tops, both sides", "06:45 physio 3 bottoms 2 tops", "06:45 session LL3 RL3 LU2 RU2")]
    [InlineData("LB RB = bases, LT RT = tops", "06:45 chest LB3 RB3 LT2 RT2", "06:45 session LL3 RL3 LU2 RU2")]
    [InlineData("pump = the salbutamol inhaler", "06:05 2 pumps", "06:05 salbutamol")]
    [InlineData("sat = sats, air unless said", "07:00 sat 93 on 1L", "07:00 check 93 on 1")]
    [InlineData("Obs written SpO2 / HR", "03:00 96 / 85 air", "03:00 check 96 on 0")]
    [InlineData("SpO2 x/y = before CPT / after CPT", "06:35 CPT RL3 LL3. SpO2 95/97", "06:35 session RL3 LL3; 06:35 check 95; 06:35 check 97")]
    public void KeyAboveTheFirstDay_ExplainsWhatFollows(string key, string line, string expected) => Assert.Equal(expected, Told(Whole(key, "Tue 4 March 2025", line)));

    [Theory]
    [InlineData("When I write full it is left down 3 min, right down 3 min, left up 2 min, right up 2 min", "full")]
    [InlineData("PLAN (on the fridge): physio twice a day. LL 3, RL 3, LU 2, RU 2", "physio per plan")]
    public void Key_InASentence_IsUsed(string key, string words) =>
        Assert.Equal("07:15 session LL3 RL3 LU2 RU2", Told(Read(key, "07:15 " + words)));

    [Fact]
    public void Letters_OfAKeyDoNotTakeSmallWordsApart() =>
        Assert.Equal("07:00 salbutamol; 20:30 feed @50", Told(Read("Key: N = salbutamol neb, O = oxygen, P = physio", "07:00 N, no P, visitors", "20:30 pump on 50 ml/h")));

    [Fact]
    public void KeyThatNamesTheUnitOfOxygen_ReadsTheNumbersBesideIt()
    {
        var reading = Whole("Std = clapping LL3 RL3 LU2 RU2", "O = oxygen l/min (O0 = air), S = sats before>after", "Tue 4 March 2025", "18h40 Std S 95>97 O0,25");
        Assert.Equal("18:40 session LL3 RL3 LU2 RU2; 18:40 check 95 on 0.25; 18:40 check 97 on 0.25", Told(reading));
    }

    [Fact]
    public void RoutineAsShown_StandsForWhatWasShown()
    {
        var reading = Whole("Chest as shown by the physiotherapist: cupped hand, lower left three minutes, lower right three minutes, upper left two, upper right two.", "Tue 4 March 2025", "8.00 a.m. Chest, as shown.");
        Assert.Equal("08:00 session LL3 RL3 LU2 RU2", Told(reading));
    }

    [Fact]
    public void WordForASessionJustTold_KeepsThatSession()
    {
        var reading = Read("Done at 7.25am. 4 mins clapping each of low left, low right, high left, high right. Calling that the full works from here on", "full works 6pm");
        Assert.Equal("07:25 session LL4 RL4 LU4 RU4; 18:00 session LL4 RL4 LU4 RU4", Told(reading));
    }

    [Theory]
    [InlineData("All her milk goes down the tube.", CareRecords.Records.FeedRoute.Tube)]
    [InlineData("feeds are g-tube", CareRecords.Records.FeedRoute.Tube)]
    [InlineData("Milk by tube at night, the rest from a bottle.", CareRecords.Records.FeedRoute.Unknown)]
    public void WayOfAllFeeds_SaidOnceForAll_IsThatOfEach(string above, CareRecords.Records.FeedRoute route) =>
        Assert.Equal(route, Assert.IsType<CareRecords.Records.Feed>(Assert.Single(Whole(above, "", "Tue 4 March 2025", "milk 150 ml at 12.30pm").Entries)).Route);

    [Theory]
    [InlineData("physio says clap bottoms 3 min each side, tops 2 each side. if i put full its all of that", "full 7am")]
    [InlineData("I do clapping 3 min each side on the bottom and 2 min each side on top, that is what I call the round", "did the round at 7am")]
    [InlineData("Physio has set clapping: bottoms 3 min each side, tops 2 min each side. I put full set for that.", "7am full set")]
    [InlineData("I do tapping, lower 3 minutes each side, upper 2 minutes each side. This is called routine", "full routine 7am")]
    public void NameOfASession_ToldBeside_WhatItIs(string key, string line)
    {
        var session = Assert.IsType<CareRecords.Records.Session>(Assert.Single(Whole(key, "", "Tue 4 March 2025", line).Entries));
        Assert.Equal(["Lower3", "Lower3", "Upper2", "Upper2"], session.Areas.Select(a => $"{a.Area}{a.Minutes}").Order());
        Assert.All(session.Areas, a => Assert.Equal(CareRecords.Records.Technique.Percussion, a.Technique));
    }

    [Theory]
    [InlineData("lwr / upr = both sides unless I say different", "7am lwr 3 upr 2 clapping", "07:00 session LL3 RL3 LU2 RU2")]
    [InlineData("Lb / Rb = left / right base, Lt / Rt = left / right top", "7am perc Lb 3 Rb 3 Lt 2 Rt 2", "07:00 session LL3 RL3 LU2 RU2")]
    [InlineData("tapping = with cupped hand / LL RL = left lower right lower, LU RU = upper / number is minutes / neb = levosalbutamol", "7am tapping LL 3 RL 3 LU 2 RU 2", "07:00 session LL3 RL3 LU2 RU2")]
    [InlineData("NGF = tube feed. O2 = litres, RA = room air. T = temperature. b / a = before / after CPT", "02:15 O2 0,5", "02:15 check  on 0.5")]
    [InlineData("M = mask treatment, that is salbutamol 2.5 mg.", "M 6:30 a.m.", "06:30 salbutamol 2.5 mg")]
    [InlineData("Sat. is the finger machine. Ox. is oxygen in litres.", "7 a.m. sat. 93, ox. 1/2", "07:00 check 93 on 0.5")]
    [InlineData("A = on air", "8am temp 38.1, brought up a big green plug", "08:00 temperature 38.1 C; 08:00 secretions big, green plug")]
    [InlineData("Her programme is percussion to the lower chest for 3 minutes each side, then the upper chest for 2 minutes each side. I refer to this below as the full programme.", "the full programme was done at 7.00am", "07:00 session LL3 RL3 LU2 RU2")]
    [InlineData("LB = left bottom, RB = right bottom, LT + RT = the tops. i do pats with a cupped hand.", "9am LB3 RB3 LT2 RT2", "09:00 session LL3 RL3 LU2 RU2")]
    [InlineData("clap mins = LB-RB-LT-RT (left base, right base, left top, right top).", "0715 3-3-2-2", "07:15 session LL3 RL3 LU2 RU2")]
    [InlineData("clap mins = LB-RB-LT-RT (left base, right base, left top, right top). v1 = then vibes 1 min on each of the four.", "1730 3-3-2-2 v1", "17:30 session LL3 RL3 LU2 RU2 LL1 RL1 LU1 RU1")]
    [InlineData("a \"drum\" is me clapping her chest with a cupped hand, 3 min each side at the bottom and 2 min each side up top. A \"skoosh\" is the salbutamol, 2 puffs through the spacer.", "Drum at 7am", "07:00 session LL3 RL3 LU2 RU2")]
    [InlineData("a \"drum\" is me clapping her chest with a cupped hand, 3 min each side at the bottom and 2 min each side up top. A \"skoosh\" is the salbutamol, 2 puffs through the spacer.", "skoosh 6.45am", "06:45 salbutamol 2 puffs")]
    [InlineData("Puffs are salbutamol with the chamber.", "7.00am 2 puffs", "07:00 salbutamol 2 puffs")]
    [InlineData("Knocking = with the hollow hand (kloppen). Under = lower, up = upper. Minutes are per side.", "7.30am knocking under 3, up 2, 13.00 same", "07:30 session LL3 RL3 LU2 RU2; 13:00 session LL3 RL3 LU2 RU2")]
    [InlineData("tapping = percusion with cup hand, taught by the PT", "7am tapping both lower 3 mins", "07:00 session LL3 RL3")]
    public void Keys_OfManyForms_AreUsed(string key, string line, string expected) => Assert.Equal(expected, Told(Whole(key, "", "Tue 4 March 2025", line)));
}
