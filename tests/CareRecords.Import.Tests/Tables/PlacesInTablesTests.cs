using CareRecords.Records;

namespace CareRecords.Import.Tests.Tables;

/// <summary>Which side, area and technique the minutes of a table are of, and what its letters and headings say of the readings beside them. The tables are invented.</summary>
public sealed class PlacesInTablesTests
{
    private static string Told(CareLog log) => string.Join("; ", log.Entries.OfType<Session>().Select(s =>
        string.Join(' ', s.Areas.OrderBy(a => a.Technique).ThenBy(a => a.Area).ThenBy(a => a.Side).Select(a => $"{a.Side.ToString()[0]}{a.Area.ToString()[0]}{a.Technique.ToString()[0]}{a.Minutes}"))).Distinct());

    private static IReadOnlyList<string> Sessions(string table)
    {
        var log = Inputs.Import("t.csv", table);
        return [.. log.Entries.OfType<Session>().Select(s => $"{s.Start!.Stated:HH:mm} {Told(log with { Entries = [s] })}")];
    }

    [Theory]
    // Rows of one time that name other places are one session; so is the row below without a time; a place twice is another.
    [InlineData("date,time,type,side,area,technique,minutes\n13/3/2025,07:00,CPT,both,lower,perc,3 each\n13/3/2025,07:00,CPT,both,upper,perc,2 each\n,,CPT,both,lower,vib,1 each\n14/3/2025,07:10,CPT,both,lower,perc,3 each\n", "07:00 LLP3 RLP3 LUP2 RUP2 LLV1 RLV1", "07:10 LLP3 RLP3")]
    [InlineData("date,time,type,side,area,technique,minutes\n13/3/2025,07:00,CPT,both,lower,perc,3 each\n13/3/2025,07:00,CPT,both,lower,perc,3 each\n14/3/2025,07:10,CPT,both,lower,perc,3 each\n", "07:00 LLP3 RLP3", "07:00 LLP3 RLP3", "07:10 LLP3 RLP3")]
    public void RowsOfOneTime_AreOneSession(string table, params string[] sessions) => Assert.Equal(sessions, Sessions(table));

    [Theory]
    // Two numbers under a heading that says "each side" are of the areas, not of the sides.
    [InlineData("date,percussion (start),mins each side lower / upper\n13/3/2025,07:00,3 / 2\n14/3/2025,07:10,3 / 2\n", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("date,time,LL/RL/LU/RU mins\n13/3/2025,07:00,3/3\n14/3/2025,07:10,3/3\n", "LLP3 RLP3")]
    [InlineData("date,time,item,value,unit\n13/3/2025,07:00,percussion,6,min each side\n13/3/2025,08:00,sats,97,%\n14/3/2025,07:00,percussion,6,min each side\n", "LUP6 RUP6")]
    [InlineData("\"key: chest = clapping. a/b/c/d = minutes R lower / L lower / R upper / L upper\"\ndate,time,what,detail\n13/3/2025,07:00,chest,3/3/2/2\n13/3/2025,08:00,feed,120 ml\n14/3/2025,07:00,chest,3/3/2/2\n", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("date,time,which bits,how,mins each\n13/3/2025,07:00,L+R lower,percussion,3\n14/3/2025,07:00,L+R lower,percussion,3\n", "LLP3 RLP3")]
    [InlineData("date,\"am tapping (3 min lower, 2 min upper, each side)\"\n13/3/2025,07:00\n14/3/2025,07:10\n", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("date,physio time,Lower both sides (percussion min each side)\n13/3/2025,07:00,3\n14/3/2025,07:10,3\n", "LLP3 RLP3")]
    [InlineData("R = right L = left (bottoms). NG = nose tube\ndate,time,chest,feed\n13/3/2025,07:00,R3 L3,\n13/3/2025,12:00,,NG 120ml\n14/3/2025,07:00,R3 L3,\n", "LLU3 RLU3")]
    [InlineData("date,time,did,minutes\n13/3/2025,07:00,percussion lower left and right,3 each\n14/3/2025,07:00,percussion lower left and right,3 each\n", "LLP3 RLP3")]
    [InlineData("Mins are clapping: L lower / R lower / L upper / R upper\ndate,chest,mins\n13/3/2025,07:05,3/3/2/2\n14/3/2025,07:10,3/3/2/2\n", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("\"bottoms / tops = minutes clapping on EACH side, low and high\"\ndate,chest am\n13/3/2025,\"7.05 bottoms 3 each, tops 2 each\"\n14/3/2025,\"7.10 bottoms 3 each, tops 2 each\"\n", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("\"Inhaler is salbutamol. Chest = tapping, 3 mins each lower and 2 mins each upper unless I write different\"\ndate,chest,sats\n13/3/2025,07:00,96\n14/3/2025,07:10,97\n", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("\"Percussion minutes per area. Shakes = vibration, minutes per area on the same areas as were done\"\ndate,start,L low,R low,shakes\n13/3/2025,07:00,3,3,1\n14/3/2025,07:10,3,3,1\n", "LLP3 RLP3 LLV1 RLV1")]
    [InlineData("date,time,what,left,right,technique\n13/3/2025,07:00,physio,\"3 low, 2 top\",\"3 low, 2 top\",clap\n13/3/2025,08:00,sats,,,\n14/3/2025,07:00,physio,\"3 low, 2 top\",\"3 low, 2 top\",clap\n", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("\"Patting with cupped hand. Mins = left bottom + right bottom + left top + right top\"\ndate,time,what,mins\n13/3/2025,07:00,chest,3+3+2+2\n13/3/2025,13:00,ng feed,\n14/3/2025,07:00,chest,3+3+2+2\n", "LLP3 RLP3 LUP2 RUP2")]
    [InlineData("date,start,end,activity,value,unit\n13/3/2025,07:00,07:10,Percussion both lower,3,min each side\n13/3/2025,08:00,,SpO2,96,%\n14/3/2025,07:00,07:10,Percussion both lower,3,min each side\n", "LLP3 RLP3")]
    public void Minutes_AreOfThePlacesThatTheTableNames(string table, string expected) => Assert.Equal(expected, Told(Inputs.Import("a.csv", table)));

    [Fact]
    public void OxygenOfBothReadings_StandsBesideBoth()
    {
        var log = Inputs.Import("a.csv", "date,physio,sats before,sats after,O2 L/min (before + after)\n13/3/2025,07:00,93,96,0.5\n14/3/2025,07:10,94,97,0\n");
        Assert.Equal([0.5, 0.5, 0.0, 0.0], log.Entries.OfType<Check>().OrderBy(c => c.When.Stated).Select(c => c.OxygenLitresPerMinute!.Value));
    }

    [Fact]
    public void LettersOfTheKey_AreNeitherNoNorNothing()
    {
        var log = Inputs.Import("a.csv", "\"N = saline neb, S = salbutamol neb, A = on air\"\ndate,time,neb,sats,O2\n13/3/2025,07:00,N,96,A\n14/3/2025,07:10,S 2.5 mg,95,A\n");
        Assert.Equal(["saline", "salbutamol"], log.Entries.OfType<Dose>().OrderBy(d => d.When.Stated).Select(d => d.Medicine));
        Assert.All(log.Entries.OfType<Check>(), c => Assert.Equal(0, c.OxygenLitresPerMinute));
    }

    [Fact]
    public void WhatTheInhalerHolds_IsKnownBesideOtherWords()
    {
        var log = Inputs.Import("a.csv", "\"Inhaler is salbutamol through the spacer. Chest = tapping\"\ndate,inhaler,chest\n13/3/2025,16:40 x4,17:00\n14/3/2025,16:45 x4,17:05\n");
        Assert.All(log.Entries.OfType<Dose>(), d => Assert.Equal("salbutamol", d.Medicine));
        Assert.Equal(2, log.Entries.OfType<Dose>().Count());
    }

    [Fact]
    public void RouteOfAFeed_IsThatOfTheColumnItsMillilitresStandIn()
    {
        var log = Inputs.Import("a.csv", "date,time,IN oral ml,IN tube ml,what\n13/3/2025,08:30,60,,porridge + milk\n13/3/2025,12:00,,180,bolus\n14/3/2025,08:30,50,,milk\n");
        Assert.Equal([FeedRoute.Oral, FeedRoute.Oral], log.Entries.OfType<Feed>().Where(f => f.Millilitres < 100).Select(f => f.Route));
        Assert.NotEqual(FeedRoute.Oral, Assert.Single(log.Entries.OfType<Feed>(), f => f.Millilitres == 180).Route);
    }

    [Fact]
    public void PlacesInAList_AreNoKeyForSides() =>
        Assert.Equal("LLP4 RLP5", Told(Inputs.Import("a.csv", "date,time,SpO2,comments\n13/3/2025,07:00,95,\n13/3/2025,07:10,,\"CPT, cupping 5 min R lower, 4 min L lower\"\n13/3/2025,19:00,96,\"L lower, R lower, L upper, R upper all sound clear\"\n")));
}
