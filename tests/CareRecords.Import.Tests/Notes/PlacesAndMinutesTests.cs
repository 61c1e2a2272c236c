using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Notes;

/// <summary>Which side, area and technique each number of minutes is of. The lines are invented; a session is written as side, area, technique, minutes ("LLP3").</summary>
public sealed class PlacesAndMinutesTests
{
    private static string Told(params string[] lines)
    {
        var reading = NotesReader.Read(new SourceText("n.txt", lines), new ReadingContext { NotAfter = new LocalDate(2025, 3, 20), DateOrder = DateOrder.DayMonthYear });
        return string.Join("; ", reading.Entries.OfType<Session>().OrderBy(s => s.When.Stated).Select(s =>
            s.Start!.Stated.ToString("dd HH:mm", null) + " " + string.Join(' ', s.Areas.OrderBy(a => a.Technique).ThenBy(a => a.Area).ThenBy(a => a.Side).Select(a => $"{a.Side.ToString()[0]}{a.Area.ToString()[0]}{a.Technique.ToString()[0]}{a.Minutes}"))));
    }

    [Theory]
    [InlineData("7am clap R low 3, L low 3, R up 2, L up 2", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("7am percussion down L and R 3mins each, up L and R 2mins each", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("7am clapping bottom 4 left 4 right, top 2 left 2 right", "LLP4 RLP4 LUP2 RUP2")]
    [InlineData("7am clapping bottoms and tops, 4 and 3", "LLP4 RLP4 LUP3 RUP3")]
    [InlineData("7am I clapped the lower parts for three minutes each side and the upper parts for two minutes each side", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("Clapped him at 7 am. Left bottom three minutes. Right bottom three minutes.", "LLP3 RLP3")]
    [InlineData("7am clap left bottom right bottom left top right top four minutes each and one minute shakes both bottoms", "LLP4 RLP4 LUP4 RUP4 LLV1 RLV1")]
    [InlineData("7am tapping left lower three minutes no sorry four minutes, right lower four minutes", "LLP4 RLP4")]
    [InlineData("7am clap lower left and lower right three minutes each, but he fell asleep and I left the upper", "LLP3 RLP3")]
    [InlineData("7am clap right lower 6 mins, left lower 4 mins (doctor heard more on the right), uppers 3 mins each side", "LLP4 RLP6 LUP3 RUP3")]
    [InlineData("7am P LB3 RB3 LT2 RT2", "LLU3 RLU3 LUU2 RUU2")]
    [InlineData("7am clapping BL5 BR5 TL3 TR3", "LLP5 RLP5 LUP3 RUP3")]
    [InlineData("7am 4 minutes cupping on each lower and 3 on each upper, plus vibrating with my hands for 1 minute on each lower", "LLP4 RLP4 LUP3 RUP3 LLV1 RLV1")]
    [InlineData("7am all four places clapped, that's both bottoms and both tops, 3 each", "LLP3 RLP3 LUP3 RUP3")]
    [InlineData("7am clap left 3 low 2 top, right 3 low 2 top", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("7am clap left 3 low, 2 top, right 3 low, 2 top", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("7am clapping all 4, 2 min", "LLP2 RLP2 LUP2 RUP2")]
    [InlineData("7am clapping all 4 3 each", "LLP3 RLP3 LUP3 RUP3")]
    [InlineData("7am clapping 3 min all 4 (L+R lower, L+R upper)", "LLP3 RLP3 LUP3 RUP3")]
    [InlineData("7am clapping lower two only, 4 each", "LLP4 RLP4")]
    [InlineData("7am clap LL 3 RL 3 LU 2 RU 2, then shakes, 1 min on each of those 4", "LLP3 RLP3 LUP2 RUP2 LLV1 RLV1 LUV1 RUV1")]
    [InlineData("7am clapping bottoms three, tops two", "LLP3 RLP3 LUP2 RUP2")]
    public void Minutes_AreOfThePlacesBesideThem(string line, string expected) => Assert.Equal("04 07:00 " + expected, Told("Tue 4 March 2025", line));

    [Theory]
    [InlineData("three claps today, 7am, 1pm and 6pm, bottoms three a side and tops two a side", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("7am, 1pm and 6pm, clap bases 3 ea tops 2 ea, all three", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("four lots, 7am and 11am and 3pm and 7pm clapping the bottoms four minutes each side and the tops two each side", "LLP4 RLP4 LUP2 RUP2")]
    public void NumbersThatCountSessions_AreNoMinutes(string line, string expected)
    {
        var told = Told("Tue 4 March 2025", line).Split("; ");
        Assert.True(told.Length >= 3, string.Join("; ", told));
        Assert.All(told, t => Assert.EndsWith(expected, t, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("LL = left lower RL = right lower LU / RU = uppers", "7am clap LL3 RL3 LU2 RU2")]
    [InlineData("P = percussion. LB RB = left base, right base. LT RT = left top, right top.", "7am P LB3 RB3 LT2 RT2")]
    [InlineData("K = clap, LB RB = bases, LT RT = tops, number = mins", "7am K LB3 RB3 LT2 RT2")]
    [InlineData("BL = bottom left BR = bottom right TL TR = tops. its all clapping", "7am BL3 BR3 TL2 TR2")]
    [InlineData("CPT = percussion both sides, bases (LL) and apices (UL).", "7am CPT LL 3 min each, UL 2 min each")]
    [InlineData("usual = clap R low 3, L low 3, R up 2, L up 2", "7am usual")]
    [InlineData("A klop is clapping with the cupped hand, three minutes each side at the bottom and two minutes each side at the top.", "7am klop")]
    [InlineData("Order in every entry: left lower / right lower / left upper / right upper, in minutes of percussion.", "7am percussion 3/3/2/2")]
    [InlineData("I do clapping both sides always", "7am bottoms 3 each tops 2 each")]
    public void PlacesOfAKey_HoldInEverySession(string key, string line) => Assert.Equal("04 07:00 LLP3 RLP3 LUP2 RUP2", Told(key, "", "Tue 4 March 2025", line));

    [Theory]
    [InlineData("pats = cupping, always at the bottom of his back unless i say", "7am pats bottom 4 left 4 right, top 2 left 2 right", "LLP4 RLP4 LUP2 RUP2")]
    [InlineData("Physio here means percussion on lower chest, left and right.", "7am physio: lower 3mins each side, upper 2mins each side", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("Physio here means percussion on lower chest, left and right.", "7am physio 3mins each side", "LLP3 RLP3")]
    [InlineData("Order in every entry: left lower / right lower / left upper / right upper, in minutes of percussion.", "7am percussion 4/4/-/-", "LLP4 RLP4")]
    [InlineData("usual = clap LL 3 RL 3 LU 2 RU 2", "7am usual but only the left side, bottom and top", "LLP3 LUP2")]
    [InlineData("usual = clap LL 3 RL 3 LU 2 RU 2", "7am usual, and one minute of vibration to each side", "LLP3 RLP3 LUP2 RUP2 LUV1 RUV1")]
    [InlineData("usual = clap LL 3 RL 3 LU 2 RU 2", "back to two today, usual at 7 am", "LLP3 RLP3 LUP2 RUP2")]
    public void WhatALineSays_HoldsBeforeTheKey(string key, string line, string expected) => Assert.Equal("04 07:00 " + expected, Told(key, "", "Tue 4 March 2025", line));

    [Fact]
    public void TheSame_WithTwoNumbers_IsTheLowerAndTheUpper() =>
        Assert.Equal("04 07:00 LLP3 RLP3 LUP2 RUP2; 04 18:00 LLP4 RLP4 LUP3 RUP3", Told("Tue 4 March 2025", "7am clap lowers 3 each, uppers 2 each", "6pm same, 4 and 3"));

    [Fact]
    public void LettersOfThoseWhoWrite_AreNoSides() =>
        Assert.Equal("04 07:00 LLP3 RLP3; 04 19:00 LLP4 RLP4", Told("S = Sara, R = Ruth. Chest = cupping", "", "Tue 4 March 2025", "S – chest 7am, bases 3 each side", "R – chest 7pm, bases 4 each side"));

    [Theory]
    [InlineData("AM pats 7.15: lowers 3 each. PM pats 6.30: lowers 3 each", "04 07:15 LLP3 RLP3; 04 18:30 LLP3 RLP3")]
    [InlineData("PM pats were 6.30, lowers 3 each", "04 18:30 LLP3 RLP3")]
    [InlineData("Percussion to be four times daily", "")]
    public void HalvesOfTheDayAndPlans_BesideSessions(string line, string expected) => Assert.Equal(expected, Told("Tue 4 March 2025", line));

    [Fact]
    public void OrdinalsThatCountTheSessionsOfADay_AreNoDays() =>
        Assert.Equal("11 07:15 LLP5 RLP5; 11 11:20 LLP5 RLP5; 11 19:00 LLU4 RLU4", Told("Tue 11 March 2025", "1st clapping 7.15 a.m., 5 minutes each bottom", "2nd at 11.20, the same", "3rd, 7 in the evening, 4 minutes right bottom and 4 left bottom"));

    [Fact]
    public void DaysWithADashAndTheirWeekday_AndTimesWithOneLetter_BesideAKeyOfLetters() =>
        Assert.Equal("03 07:00 LLP3 RLP3; 04 18:10 LLP3 RLP3", Told("P = physio by tapping, ll/rl = left lower, right lower. A = on air.", "3-3 Mon", "P 7.00a ll3 rl3", "4-3 Tue", "P 6.10p ll3 rl3", "5-3 Wed", "nothing"));

    [Fact]
    public void MoreThanAnHourAndAHalfOnOnePlace_AreNoMinutes() =>
        Assert.DoesNotContain("624", Told("Tue 4 March 2025", "chest at six twenty four minutes each side low clapping"), StringComparison.Ordinal);

    [Fact]
    public void NightsOfSomebodysWork_OpenNoNightShift() =>
        Assert.Equal("06 06:15 LLP3 RLP3", Told("Thursday 6th March 2025. Minding him while his mam is on nights.", "Clapped him at 6.15 a.m., three minutes low down each side."));
}
