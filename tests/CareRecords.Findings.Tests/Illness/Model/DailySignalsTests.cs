using CareRecords.Findings.Modelling;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Tests.Illness.Model;

public sealed class DailySignalsTests
{
    private static readonly LocalDate First = new(2026, 3, 27);

    private static Check At(int day, int hour, double? spo2, CheckPhase phase = CheckPhase.None, double? oxygen = null) => new()
    {
        Sources = [SourceLine.InText("checks.csv", 1, "")],
        Start = UncertainTime.Exactly(First.PlusDays(day).At(new LocalTime(hour, 0))),
        SpO2 = spo2,
        Phase = phase,
        OxygenLitresPerMinute = oxygen,
    };

    private static Sign Noted(int hour, SignKind kind, double? number = null) => new()
    {
        Sources = [SourceLine.InText("signs.csv", 1, "")],
        Start = UncertainTime.Exactly(First.At(new LocalTime(hour, 0))),
        Kind = kind,
        What = "sign",
        Number = number,
    };

    private static IReadOnlyList<Observation> Of(params CareEntry[] entries)
    {
        var records = ChildRecords.Of(
            new CareLog { Zone = "Europe/London", ZoneFrom = "the plan", Entries = entries }, new ReviewOptions { From = First, To = First.PlusDays(9) });
        return DailySignals.Of(records, IllnessSigns.Of(records));
    }

    [Fact]
    public void Hours_count_from_the_first_care_day_and_every_care_day_is_24_of_them_whatever_the_clocks_do()
    {
        // Clocks go forward on 29 March 2026.
        Assert.Equal([4, 4 + (24 * 5)], Of(At(0, 8, 95), At(5, 8, 95)).Select(o => o.Hours));
    }

    [Fact]
    public void Before_the_first_care_day_starts_is_left_out() => Assert.Empty(Of(At(0, 3, 95)));

    [Fact]
    public void During_a_session_is_not_at_rest() => Assert.Empty(Of(At(0, 8, 95, CheckPhase.During)));

    [Fact]
    public void A_range_counts_as_its_middle() => Assert.Equal(95, Of(At(0, 8, 94) with { SpO2High = 96 })[0].SpO2);

    [Fact]
    public void A_flow_without_a_saturation_is_kept() => Assert.Equal(new Observation(4, null, 1.5, false), Of(At(0, 8, null, oxygen: 1.5))[0]);

    [Fact]
    public void Readings_after_sessions_are_set_back_by_what_sessions_do()
    {
        // Twelve sessions that lift by 1, 2, 1, 2 …: 1.5 on the mean.
        var entries = Enumerable.Range(0, 12).SelectMany(i => new[] { At(i / 2, 8 + (i % 2 * 8), 94, CheckPhase.Before), At(i / 2, 9 + (i % 2 * 8), 95 + (i % 2), CheckPhase.After) });
        Assert.Equal(93.5, Of([.. entries])[1].SpO2);
    }

    [Theory]
    [InlineData(SignKind.Unwell, null, true)]
    [InlineData(SignKind.Temperature, 38.0, true)]
    [InlineData(SignKind.Temperature, 37.9, false)]
    [InlineData(SignKind.Better, null, false)]
    public void Signs_of_illness_are_kept(SignKind kind, double? number, bool kept) => Assert.Equal(kept, Of(Noted(12, kind, number)).Count == 1);

    [Fact]
    public void Two_signs_of_a_day_count_once() => Assert.Single(Of(Noted(9, SignKind.Unwell), Noted(12, SignKind.Temperature, 39)));
}
