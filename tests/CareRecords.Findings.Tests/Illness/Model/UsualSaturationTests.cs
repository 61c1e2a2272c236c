using CareRecords.Findings.Modelling;

namespace CareRecords.Findings.Tests.Illness.Model;

public sealed class UsualSaturationTests
{
    private static List<WeightedReading> Readings(int days, Func<int, double> usual) =>
        [.. Days.Of(days, 0, _ => 0).Select((o, i) => new WeightedReading(o.Day, Math.Round(Math.Min(100, usual(o.Day) + (((i * 7 % 11) - 5) * 0.3))), 1))];

    [Fact]
    public void Rounded_readings_give_a_centre_between_whole_per_cents()
    {
        var readings = Readings(60, _ => 95.4);
        var usual = UsualFit.Of(readings, UsualFirstGuess.Of(readings, 60, null), 0.5);
        Assert.InRange(usual.Centre, 95.25, 95.55);
    }

    [Fact]
    public void The_first_guess_is_the_upper_of_two_peaks()
    {
        var readings = Readings(60, day => day is >= 20 and < 40 ? 90 : 96);
        Assert.InRange(UsualFirstGuess.Of(readings, 60, null).Centre, 95.5, 96.5);
    }

    [Fact]
    public void A_slow_drift_is_followed()
    {
        var readings = Readings(200, day => 95 + Math.Sin(day / 200.0 * 2 * Math.PI));
        var usual = UsualFirstGuess.Of(readings, 200, null);
        for (var round = 0; round < 3; round++) usual = UsualFit.Of(readings, usual, 0.5);
        Assert.InRange(usual.On(50), 95.6, 96.3);
        Assert.InRange(usual.On(150), 93.7, 94.4);
    }

    [Fact]
    public void Without_well_readings_the_previous_answer_stays()
    {
        var readings = Readings(30, _ => 95);
        var guess = UsualFirstGuess.Of(readings, 30, null);
        Assert.Equal(guess.Centre, UsualFit.Of([.. readings.Select(r => r with { Weight = 0 })], guess, 0.5).Centre);
    }
}
