using CareRecords.Statistics.Tests.Reference;

namespace CareRecords.Statistics.Tests.Trend;

public class LocalLevelTests
{
    [Fact]
    public void Nile_variances_are_those_published_and_the_smoothed_level_is_that_of_R()
    {
        // Durbin J, Koopman SJ (2012), section 2.2.5: 15099 and 1469.1. R 4.2.2: tsSmooth(StructTS(Nile, type = "level")), whose
        // start is not quite diffuse, so that its level agrees to four digits.
        var t = CsvTable.Data("nile.csv");
        var fit = LocalLevel.Fit([.. t.Numbers("year").Zip(t.Numbers("flow"), (y, f) => new LevelReading(y, f))]).Value;
        Assert.Equal(15099, fit.Noise, 0.6);
        Assert.Equal(1469.1, fit.Drift, 0.1);
        Near.Equal(1111.66878, fit.States[0].Mean, 1e-4);
        Near.Equal(999.58588, fit.States[27].Mean, 1e-4);
        Near.Equal(798.36744, fit.States[99].Mean, 1e-4);
    }

    [Fact]
    public void Without_drift_the_level_is_the_mean_of_the_readings()
    {
        var smooth = LocalLevel.Smooth([new(0, 1), new(1, 2), new(5, 6)], 3, 0).Value;
        Assert.All(smooth.States, s =>
        {
            Near.Equal(3, s.Mean);
            Near.Equal(1, s.Variance);
        });
    }

    [Fact]
    public void Two_readings_by_hand()
    {
        // Noise 1, drift 1 over 1: the second level has weight 2/3 on its own reading.
        var smooth = LocalLevel.Smooth([new(0, 0), new(1, 3)], 1, 1).Value;
        Near.Equal(2, smooth.States[1].Mean);
        Near.Equal(1, smooth.States[0].Mean);
        Near.Equal(2 / 3.0, smooth.States[1].Variance);
    }

    [Fact]
    public void Level_or_too_few_readings_are_named_outcomes()
    {
        Assert.False(LocalLevel.Fit([new(0, 96), new(1, 96), new(2, 96), new(3, 96)]).IsKnown);
        Assert.False(LocalLevel.Fit([new(0, 96), new(1, 95)]).IsKnown);
        Assert.False(LocalLevel.Smooth([], 1, 1).IsKnown);
        Assert.Throws<ArgumentException>(() => LocalLevel.Smooth([new(1, 1), new(0, 1)], 1, 1));
        Assert.Throws<ArgumentException>(() => LocalLevel.Smooth([new(1, double.NaN)], 1, 1));
    }

    [Fact]
    public void Limits_cover_the_level_in_simulation() => Coverage.Between(0.95, 0.95, 1500, random =>
    {
        var level = 0.0;
        List<LevelReading> readings = [];
        List<double> levels = [];
        for (var t = 0; t < 12; t++)
        {
            level += Math.Sqrt(0.5) * random.Gaussian();
            levels.Add(level);
            readings.Add(new(t, level + random.Gaussian()));
        }

        return LocalLevel.Smooth(readings, 1, 0.5).Value.States[6].Limits().Covers(levels[6]);
    });
}
