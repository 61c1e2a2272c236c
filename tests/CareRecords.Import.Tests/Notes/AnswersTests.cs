using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Notes;

/// <summary>An answer given once needs no second asking: the line it speaks of is read with it.</summary>
public sealed class AnswersTests
{
    private static NotesReading Read(string line, string? question = null, string? answer = null) => NotesReader.Read(new SourceText("n.txt", [line]), new ReadingContext
    {
        Date = new LocalDate(2025, 3, 5),
        DateOrder = DateOrder.DayMonthYear,
        Answers = question is null ? new Dictionary<string, string>() : new Dictionary<string, string> { [question] = answer! },
    });

    [Theory]
    [InlineData("physio 07:15 both sides 3 each. sats 95/97", "pulse-or-sat:n.txt:1", "two saturations")]
    [InlineData("04:00 95/97", "pulse-or-sat:n.txt:1", "saturation and pulse")]
    [InlineData("physio 07:15 LL 3 RL 3, sats 93-96", "before-after:n.txt:1", "before and after")]
    [InlineData("physio 07:15 LL 3 RL 3, sats 93-96", "before-after:n.txt:1", "range")]
    [InlineData("07:40 sats 9,5", "slip:n.txt:1", "95")]
    [InlineData("physio 7 both sides 3 each", "am-or-pm:n.txt:1", "pm")]
    [InlineData("0610 off", "unclear:n.txt:1", "the feed")]
    [InlineData("did 4 physios, LL 3 RL 3", "when:n.txt:1", "07:00, 11:00, 15:00 and 19:00")]
    public void Answer_SettlesItsQuestion(string line, string question, string answer)
    {
        var asked = Read(line);
        Assert.Contains(asked.Problems, p => p.Question == question);
        var settled = Read(line, question, answer);
        Assert.DoesNotContain(settled.Problems, p => p.Question == question);
        Assert.True(settled.Entries.Count > asked.Entries.Count, string.Join("; ", settled.Entries));
    }

    [Fact]
    public void SaturationAndPulse_AreReadAsSuch()
    {
        var check = Assert.Single(Read("04:00 95/97", "pulse-or-sat:n.txt:1", "saturation and pulse").Entries.OfType<Check>());
        Assert.Equal((95, 97), (check.SpO2, check.Pulse));
    }

    [Fact]
    public void TimesGivenLater_MakeAsManySessions() =>
        Assert.Equal(4, Read("did 4 physios, LL 3 RL 3", "when:n.txt:1", "07:00, 11:00, 15:00 and 19:00").Entries.OfType<Session>().Count());
}
