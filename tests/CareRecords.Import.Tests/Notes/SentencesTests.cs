using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Notes;

/// <summary>Sentences whose second half leans on the first. The lines are invented; each result is written as one text.</summary>
public sealed class SentencesTests
{
    private static NotesReading Read(params string[] lines) => NotesReader.Read(new SourceText("n.txt", ["Tue 4 March 2025", .. lines]), new ReadingContext { NotAfter = new LocalDate(2025, 3, 20), DateOrder = DateOrder.DayMonthYear });

    private static string Told(NotesReading reading) => string.Join("; ", reading.Entries.OrderBy(e => e.When.Stated).Select(e => Clock(e.Start) + (e.End is null ? "" : "-" + Clock(e.End)) + " " + e switch
    {
        Session s => "session " + string.Join(' ', s.Areas.Select(a => $"{a.Side.ToString()[0]}{a.Area.ToString()[0]}{a.Minutes}")),
        Feed f => $"feed {f.Millilitres}{(f.MillilitresPerHour is { } rate ? $"@{rate}" : "")}",
        Dose d => $"{d.Medicine} {d.Amount}",
        Check c => $"check {c.SpO2}{(c.SpO2High is { } high ? $"-{high}" : "")}{(c.OxygenLitresPerMinute is { } flow ? System.FormattableString.Invariant($" on {flow}") : "")}",
        Sign s => $"{s.What} {s.Value}",
        _ => "?",
    }).Select(s => s.TrimEnd()));

    private static string Clock(UncertainTime? time) => time?.Stated.TimeOfDay.ToString("HH:mm", null) ?? "";

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
    public void Sentence(string line, string expected) => Assert.Equal(expected, Told(Read(line)));

    [Theory]
    [InlineData("When I write full it is left down 3 min, right down 3 min, left up 2 min, right up 2 min", "full")]
    [InlineData("PLAN (on the fridge): physio twice a day. LL 3, RL 3, LU 2, RU 2", "physio per plan")]
    public void Key_InASentence_IsUsed(string key, string words) =>
        Assert.Equal("07:15 session LL3 RL3 LU2 RU2", Told(Read(key, "07:15 " + words)));

    [Fact]
    public void Letters_OfAKeyDoNotTakeSmallWordsApart() =>
        Assert.Equal("07:00 salbutamol; 20:30 feed @50", Told(Read("Key: N = salbutamol neb, O = oxygen, P = physio", "07:00 N, no P, visitors", "20:30 pump on 50 ml/h")));

    [Fact]
    public void Reason_OfWhatWasNotDone_IsNotDenied()
    {
        var reading = Read("Evening physio not done because of the vomiting");
        Assert.DoesNotContain(reading.Entries, e => e is Session);
        Assert.Single(reading.Omitted);
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
}
