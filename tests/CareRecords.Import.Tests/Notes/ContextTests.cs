using CareRecords.Import.Notes;
using CareRecords.Import.Reading.Keys;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Notes;

/// <summary>What a text says of all its lines: keys, sections, messages, what pairs of numbers are.</summary>
public sealed class ContextTests
{
    private static NotesReading Read(params string[] lines) => NotesReader.Read(new SourceText("n.txt", lines), new ReadingContext { Date = new LocalDate(2025, 3, 5), DateOrder = DateOrder.DayMonthYear });

    [Theory]
    [InlineData("bl = salbutamol, br = beclometasone", "bl=salbutamol;br=beclometasone")]
    [InlineData("KEY  PD = percussion  V = vibration", "PD=percussion;V=vibration")]
    [InlineData("LL means left lower", "LL=left lower")]
    [InlineData("The red one is salbutamol and the orange one is budesonide", "red one=salbutamol;orange one=budesonide")]
    [InlineData("0605 1L = 94", "")]
    [InlineData("salb = 4 puffs 07:30", "")]
    [InlineData("it is salbutamol", "")]
    public void Key_IsRead(string line, string expected) => Assert.Equal(expected, string.Join(';', KeyReader.Read(line).Select(w => $"{w.Word}={w.Means}")));

    [Fact]
    public void Section_SaysWhatItsLinesSpeakOf()
    {
        var reading = Read("Feeds:", "off 06:30", "on 20:30", "Physio:", "07:15 both bases 3 min", "Obs:", "07:10 94% air");
        Assert.Collection(reading.Entries,
            e => Assert.Equal(new LocalTime(6, 30), Assert.IsType<Feed>(e).End!.Stated.TimeOfDay),
            e => Assert.Equal(new LocalTime(20, 30), Assert.IsType<Feed>(e).Start!.Stated.TimeOfDay),
            e => Assert.Equal(2, Assert.IsType<Session>(e).Areas.Count),
            e => Assert.Equal(94, Assert.IsType<Check>(e).SpO2));
        Assert.Empty(reading.Problems);
    }

    [Theory]
    [InlineData("0230 96% 86bpm air")]
    [InlineData("0230 sats 96 86 bpm, air")]
    [InlineData("0230 96% hr 86bpm air")]
    public void BeatsAreNoSaturation(string line)
    {
        var check = Assert.IsType<Check>(Assert.Single(Read(line).Entries));
        Assert.Equal((96d, 86d, 0d), (check.SpO2, check.Pulse, check.OxygenLitresPerMinute));
    }

    [Theory]
    [InlineData("[05/03/2025, 07:41] Nan: sats 94")]
    [InlineData("05/03/2025, 07:41 - Nan: sats 94")]
    [InlineData("Wed 7:41 AM - Nan: sats 94")]
    public void Message_GivesItsStampAndWriter(string line)
    {
        var check = Assert.IsType<Check>(Assert.Single(Read(line).Entries));
        Assert.Equal((new LocalTime(7, 41), "Nan", TimePrecision.MessageStamp), (check.Start!.Stated.TimeOfDay, check.By, check.Start.Precision));
    }

    [Fact]
    public void Pairs_AreSaturationAndPulse_WhereTheSecondCannotBeASaturation()
    {
        var checks = Read("02:00 95/110", "03:00 96/94", "04:00 94/104").Entries.OfType<Check>().ToList();
        Assert.Equal([(95d, 110d), (96d, 94d), (94d, 104d)], checks.Select(c => (c.SpO2!.Value, c.Pulse!.Value)));
    }

    [Fact]
    public void Pairs_AreAskedAbout_WhereNothingTells() => Assert.Contains(Read("02:00 95/94", "03:00 96/95").Problems, p => p.Question == "pulse-or-sat:n.txt:1");

    [Fact]
    public void Patient_IsNoPhysiotherapy() => Assert.Empty(Read("pt in bed 22:00", "02:00 pt asleep").Entries.OfType<Session>());

    [Theory]
    [InlineData("gave zorbium 5 ml 08:00", "what-is:zorbium")]
    [InlineData("L2 R2", "unclear:n.txt:1")]
    [InlineData("06:50 Q 2", "unclear:n.txt:1")]
    public void WhatIsNotUnderstood_IsAsked(string line, string question) => Assert.Contains(Read(line).Problems, p => p.Question == question);
}
