using NodaTime;

namespace CareRecords.Findings.Tests.Recovery.Record;

public class RecoveryBracketTests
{
    private static readonly Instant Onset = Instant.FromUtc(2026, 2, 1, 4, 0);

    [Fact]
    public void Moments_with_a_clock_bracket_from_the_last_ill_to_the_first_well() =>
        Assert.Equal((30, 34), Bracket([Ill(10), Ill(30), Well(34), Well(60), Well(82)], lastDayEnds: 48));

    [Fact]
    public void Forty_seven_hours_are_not_enough() =>
        Assert.Equal((30, null), Bracket([Ill(30), Well(34), Well(81)], lastDayEnds: 48));

    [Fact]
    public void Illness_known_of_a_whole_day_is_known_at_its_beginning_and_nothing_within_the_day_shows_recovery() =>
        Assert.Equal((24, 50), Bracket([Ill(24, 48), Well(30), Well(40), Well(50), Well(98)], lastDayEnds: 48));

    [Fact]
    public void Illness_with_a_clock_later_on_a_day_raises_the_lower_limit_within_it() =>
        Assert.Equal((36, 50), Bracket([Ill(24, 48), Ill(36), Well(40), Well(50), Well(98)], lastDayEnds: 48));

    [Fact]
    public void Wellness_known_of_a_whole_day_is_known_at_its_end() =>
        Assert.Equal((24, 72), Bracket([Ill(24, 48), Well(48, 72), Well(72, 96), Well(96, 120)], lastDayEnds: 48));

    [Fact]
    public void Illness_of_a_whole_day_within_48_hours_takes_the_recovery_back() =>
        Assert.Equal((72, 100), Bracket([Ill(24), Well(30), Well(60), Ill(72, 96), Well(80), Well(100), Well(148)], lastDayEnds: 48));

    [Fact]
    public void Illness_before_the_onset_of_the_same_whole_day_does_not_begin_before_it() =>
        Assert.Equal((0, 26), Bracket([Ill(-4, 20), Well(26), Well(74)], lastDayEnds: 24));

    private static CourseMoment Ill(double from, double? to = null) => new(Hours(from, to), true);

    private static CourseMoment Well(double from, double? to = null) => new(Hours(from, to), false);

    private static InstantRange Hours(double from, double? to) => new(Onset + Duration.FromHours(from), Onset + Duration.FromHours(to ?? from));

    private static (double LastIll, double? FirstWell) Bracket(CourseMoment[] moments, double lastDayEnds)
    {
        var found = RecoveryBracket.Of(moments, Onset, Onset + Duration.FromHours(lastDayEnds), Instant.MaxValue);
        return ((found.LastIll - Onset).TotalHours, (found.FirstWell - Onset)?.TotalHours);
    }
}
