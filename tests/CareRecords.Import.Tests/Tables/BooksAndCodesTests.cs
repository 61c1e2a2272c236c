using CareRecords.Records;

namespace CareRecords.Import.Tests.Tables;

/// <summary>Books with codes, numbers and corrections: several events in the cell of an hour, rows that speak of other rows, units, stamps and keys in columns of their own.</summary>
public sealed class BooksAndCodesTests
{
    private static IReadOnlyList<string> Told(string table) => Tables.Told.By(Inputs.Import("a.csv", table));

    [Fact]
    public void CellOfAnHour_WithCodesOfTheKey_GivesEachItsTime()
    {
        var log = Inputs.Import("a.csv", """
            Week of 3 November 2025
            D = drum (clapping): 3 min left and right. K = sats / heart rate. M = milk by tube in ml
            Hour,Mon 3 Nov,Tue 4 Nov,Wed 5 Nov
            06:00,06:20 D,"06:10 D, 06:40 K 94/110",D :50
            07:00,M 150,M 120,K 93/112 before
            21:00,K 95/108,,D ?? not sure
            22:00,,,
            23:00,,,
            00:00,K 91/120,,
            """);
        Assert.Equal(
        [
            "session 03 06:20 L?3 R?3", "feed 03 07:00~ 150 ml Tube", "check 03 21:00~ 95 p108", "check 04 00:00~ 91 p120", "session 04 06:10 L?3 R?3",
            "check 04 06:40 94 p110", "feed 04 07:00~ 120 ml Tube", "session 05 06:50 L?3 R?3", "check 05 07:00~ 93 p112 before",
        ], Tables.Told.By(log));
        Assert.Contains("leaves open", Assert.Single(log.Problems).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void NumberedEntries_SpeakOfOneAnother()
    {
        var log = Inputs.Import("a.csv", """
            No.,Date,Time,What,Details
            1,3 Nov 2025,06:40,physio,left 3 right 3
            2,3 Nov 2025,07:00,sats,94
            3,3 Nov 2025,17:00,physio,as no. 1
            4,3 Nov 2025,17:10,salbutamol,2 puffs
            5,3 Nov 2025,18:00,note,No. 2: for 94 read 92
            6,3 Nov 2025,18:05,note,No. 4 cancelled
            """);
        Assert.Equal(["session 03 06:40 L?3 R?3", "check 03 07:00 92", "session 03 17:00 L?3 R?3"], Tables.Told.By(log));
        Assert.Empty(log.Problems);
        Assert.True(log.Lines.Balances);
    }

    [Fact]
    public void NumberedEntryPutRight_TakesWhatBorrowedItsTimeAlongAndKeepsNoEndBeforeIt()
    {
        var log = Inputs.Import("a.csv", """
            No.,Date,Start,Finish,What,Details,Sats before
            1,3 Nov 2025,06:40,06:55,physio,left 3 right 3,93
            2,3 Nov 2025,12:00,12:30,physio,left 3 right 3,94
            3,3 Nov 2025,17:00,,note,No. 1: for 06:40 read 06:45,
            4,3 Nov 2025,17:05,,note,No. 2 should read 12:50,
            """);
        Assert.Equal(["check 03 06:45~ 93 before", "session 03 06:45 to 03 06:55 L?3 R?3", "check 03 12:50~ 94 before", "session 03 12:50 L?3 R?3"], Tables.Told.By(log));
        Assert.True(log.Lines.Balances);
    }

    [Fact]
    public void RemarkOfARow_PutsItsOwnRowRight() =>
        Assert.Equal(["check 03 07:10 95", "check 03 17:20 93", "check 04 02:00 88", "check 04 02:00~ o1"], Told("""
            Date,Time,What,Reading,Remarks
            3 Nov 2025,07:10,sats,85,slipped - should be 95
            3 Nov 2025,05:20 AM,sats,93,"meant PM, my mistake"
            4 Nov 2025,02:00,sats,88,turned him up to 1
            """));

    [Fact]
    public void UnitsStampsAndRowsTakenBack_HaveColumnsOfTheirOwn() =>
        Assert.Equal(["dose 03 06:40 salbutamol 2 puffs", "check 03 07:00 94"], Told("""
            date,when,what,how much,unit,logged at,undone
            3 Nov 2025,06:40,salbutamol,2,puffs,2025-11-03 21:00,
            3 Nov 2025,07:00,sats,94,%,2025-11-03 21:01,
            3 Nov 2025,07:05,salbutamol,2,puffs,2025-11-03 21:02,y
            """));

    [Fact]
    public void StampsFromGreenwich_AreOnTheChildsClock()
    {
        var log = Inputs.Import("a.csv", "status,type,start,finish,left,right\nok,physio,2025-11-03T06:50:00+01:00,2025-11-03T07:10:00+01:00,3,3\ndeleted,physio,2025-11-04T06:50:00+01:00,,3,3\nok,physio,2025-11-05T16:00:00Z,2025-11-05T16:15:00Z,4,4\n",
            new ImportOptions { MachineZone = "UTC", Zone = "Europe/Paris" });
        Assert.Equal(["session 03 06:50 to 03 07:10 L?3 R?3", "session 05 17:00 to 05 17:15 L?4 R?4"], Tables.Told.By(log));
        Assert.Empty(log.Problems);
    }

    [Fact]
    public void TimesOfOneCell_ThatRunForwardInOneWayOnly_AreSettled() =>
        Assert.Equal(["feed 03 08:30 120 ml", "feed 03 12:30 140 ml", "feed 03 17:30 130 ml", "feed 04 08:15 100 ml", "feed 04 13:00 150 ml"], Told("""
            Day,Drinks
            3 Nov 2025,"8.30 120, 12.30 140, 5.30 130"
            4 Nov 2025,"8.15 100, 1.00 150"
            """));

    [Fact]
    public void FormOfADay_WithItsPartsAcross_HasASessionEach() =>
        Assert.Equal(["check 14 07:10~ 95 after", "session 14 07:10 LL3 RL3", "check 14 17:20~ 96 after", "session 14 17:20 LL4 RL4", "check 15 07:00~ 96 after", "session 15 07:00 LL3 RL3"], Told("""
            Dt. 14-11-2025 (Fri),Morning,Evening
            Physio at,7.10,5.20
            Lt base,3,4
            Rt base,3,4
            SpO2 after,95,96

            Dt. 15-11-2025 (Sat),Morning,Evening
            Physio at,7.00,
            Lt base,3,
            Rt base,3,
            SpO2 after,96,
            """));

    [Theory]
    [InlineData("", "session 03 07:00 R?4 R?2 L?3 L?1", 1)]
    [InlineData(" (base / top)", "session 03 07:00 RL4 RU2 LL3 LU1", 0)]
    public void TwoNumbersBehindASide_NeedTheirOrder(string explained, string told, int problems)
    {
        var log = Inputs.Import("a.csv", $"Date,Time,What,Minutes{explained}\n3 Nov 2025,07:00,physio,\"Rt 4/2, Lt 3/1\"\n");
        Assert.Equal([told], Tables.Told.By(log));
        Assert.Equal(problems, log.Problems.Count);
    }

    [Fact]
    public void TableOfNights_PutsItsMorningsOnTheNextDay() =>
        Assert.Equal(["check 03 23:30 93", "check 04 02:10 91", "check 05 03:00 92"], Told("OVERNIGHT (night of),,\nDate,Time,Sats\n3 Nov 2025,23:30,93\n3 Nov 2025,02:10,91\n4 Nov 2025,03:00,92\n"));

    [Fact]
    public void SpanishTable_IsReadByItsWords() =>
        Assert.Equal(["check 03 07:05~ 95 o0 after", "session 03 07:05 LL3 RL3", "feed 03 13:30 to 03 14:00 150 ml Tube", "check 13 17:30~ 96 o0.5 after", "session 13 17:30 LL3 RL3"], Told("""
            Fecha;Hora;Qué;Izq. abajo;Der. abajo;Sat. después;O2 l/min;Cantidad;Notas
            03/11/2025;7:05;Fisio;3;3;95;aire;;
            ;13:30;Toma por sonda;;;;;150 ml;terminó a las 14:00
            13/11/2025;17:30;Fisio;;;96;0,5;;igual que esta mañana
            """));

    [Theory]
    [InlineData("3 Nov 2025,06:40,Inhaler,not given", 0)]
    [InlineData("3 Nov 2025,06:40,Inhaler,\"salbutamol 2 puffs, budesonide 1 puff\"", 2)]
    public void MedicinesOfARow_AreNoneOrSeveral(string row, int doses) =>
        Assert.Equal(doses, Inputs.Import("a.csv", $"Date,Time,What,Details\n{row}\n3 Nov 2025,07:00,physio,left 3 right 3\n").Entries.OfType<Dose>().Count());
}
