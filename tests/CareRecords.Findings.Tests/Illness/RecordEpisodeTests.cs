using NodaTime;

namespace CareRecords.Findings.Tests.Illness;

/// <summary>A letter a care day: i evidence of illness, . clear, m nothing that could tell.</summary>
public class RecordEpisodeTests
{
    [Theory]
    [InlineData("......", "")]
    [InlineData("..i...", "")]
    [InlineData("..ii..", "2-3")]
    [InlineData("..ii.i..", "2-5")]
    [InlineData("..ii..i..", "2-3")]
    [InlineData("..ii..ii..", "2-3 6-7")]
    [InlineData("..imi..", "2-4")]
    [InlineData("..i.i.ii..", "6-7")]
    [InlineData("..immmmi..", "")]
    [InlineData("..ii.m.i..", "2-3")]
    [InlineData("..iim.mi..", "2-7")]
    [InlineData("..iimmmmii..", "2-3 8-9")]
    [InlineData("iiii", "0-3")]
    [InlineData("i", "")]
    [InlineData("", "")]
    public void Two_days_begin_it_and_two_clear_days_end_it(string days, string episodes) =>
        Assert.Equal(episodes, string.Join(' ', RecordEpisode.In(Days(days)).Select(e => $"{e.First}-{e.Last}")));

    [Fact]
    public void Onset_may_lie_in_the_unwritten_days_before() => Assert.Equal(2, RecordEpisode.In(Days("..mmii..")).Single().EarliestFirst);

    private static List<DayEvidence> Days(string letters) =>
    [
        .. letters.Select((c, i) => new DayEvidence(new LocalDate(2026, 1, 1).PlusDays(i), c switch { 'i' => DayState.Ill, '.' => DayState.Clear, _ => DayState.Missing }, [], [])),
    ];
}
