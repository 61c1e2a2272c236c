namespace CareRecords.Statistics;

/// <summary>One measurement of a level that wanders.</summary>
/// <param name="Time">When, in any unit; not before the one before it.</param>
/// <param name="Value">What was measured.</param>
/// <param name="NoiseFactor">The variance of its error relative to the ordinary one, above 0; 1 for an ordinary measurement.</param>
public readonly record struct LevelReading(double Time, double Value, double NoiseFactor = 1);

/// <summary>The level at one time.</summary>
/// <param name="Time">The time.</param>
/// <param name="Mean">Its expected value given all readings.</param>
/// <param name="Variance">Its variance given all readings and the parameters.</param>
public sealed record LevelState(double Time, double Mean, double Variance)
{
    /// <summary>The level with normal limits; the uncertainty of the parameters is not in them.</summary>
    /// <param name="level">The confidence level.</param>
    public Interval Limits(double level = 0.95)
    {
        Require.Level(level);
        var half = Gaussian.Critical(level) * Math.Sqrt(Variance);
        return new(Mean - half, Mean + half, level);
    }
}

/// <summary>A smoothed level.</summary>
/// <param name="States">The level at each reading, in order.</param>
/// <param name="Noise">The variance of an ordinary reading about the level.</param>
/// <param name="Drift">The variance that the level gains per unit of time.</param>
/// <param name="LogLikelihood">The log-likelihood of the readings after the first.</param>
public sealed record SmoothedLevel(IReadOnlyList<LevelState> States, double Noise, double Drift, double LogLikelihood);

/// <summary>
/// The local-level model: reading = level + error, the level a random walk in time; Kalman filter with a diffuse start and
/// fixed-interval (Rauch-Tung-Striebel) smoother, at uneven times and with errors of different size.
/// Source: Durbin J, Koopman SJ (2012), Time Series Analysis by State Space Methods, chapter 2.
/// Assumes normal independent errors and steps. Smallest data: one reading to smooth with given variances; four readings,
/// not all equal, to estimate them.
/// </summary>
public static class LocalLevel
{
    /// <summary>The level with given variances.</summary>
    /// <param name="readings">Readings in order of time.</param>
    /// <param name="noise">The variance of an ordinary reading, above 0.</param>
    /// <param name="drift">The variance gained per unit of time, 0 or more.</param>
    public static Outcome<SmoothedLevel> Smooth(IReadOnlyList<LevelReading> readings, double noise, double drift)
    {
        Validate(readings);
        if (!(noise > 0) || !(drift >= 0) || double.IsInfinity(noise) || double.IsInfinity(drift))
        {
            throw new ArgumentOutOfRangeException(nameof(noise), noise, "The noise is above 0 and the drift not below it, both finite.");
        }

        if (readings.Count == 0)
        {
            return new TooLittleData("local level", 0, 1, "no readings");
        }

        var n = readings.Count;
        var (mean, variance, log) = Filter(readings, noise, drift);
        var states = new LevelState[n];
        states[^1] = new(readings[^1].Time, mean[^1], variance[^1]);
        for (var t = n - 2; t >= 0; t--)
        {
            var ahead = variance[t] + (drift * (readings[t + 1].Time - readings[t].Time));
            var gain = variance[t] / ahead;
            states[t] = new(
                readings[t].Time,
                mean[t] + (gain * (states[t + 1].Mean - mean[t])),
                variance[t] + (gain * gain * (states[t + 1].Variance - ahead)));
        }

        return new SmoothedLevel(states, noise, drift, log);
    }

    /// <summary>The level with variances of greatest likelihood.</summary>
    /// <param name="readings">Readings in order of time.</param>
    public static Outcome<SmoothedLevel> Fit(IReadOnlyList<LevelReading> readings)
    {
        Validate(readings);
        if (readings.Count < 4 || readings.All(r => r.Value == readings[0].Value) || readings[^1].Time <= readings[0].Time)
        {
            return new TooLittleData("local level", readings.Count, 4, "four readings over some time, not all equal, are needed to tell noise from drift");
        }

        // Given the ratio of drift to noise the noise has a closed form, so one parameter is left to search.
        double Profile(double logRatio)
        {
            var (_, _, log, scale) = FilterScaled(readings, 1, Math.Exp(logRatio));
            return log - (0.5 * (readings.Count - 1) * (Math.Log(scale) + 1));
        }

        var unit = (readings[^1].Time - readings[0].Time) / readings.Count;
        var best = Enumerable.Range(-40, 81).Select(k => (0.5 * k) - Math.Log(unit)).MaxBy(Profile);
        var refined = GoldenSection(Profile, best - 0.5, best + 0.5);
        var ratio = Math.Exp(refined);
        var noise = FilterScaled(readings, 1, ratio).Scale;
        return Smooth(readings, noise, ratio * noise);
    }

    private static void Validate(IReadOnlyList<LevelReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        for (var i = 0; i < readings.Count; i++)
        {
            var r = readings[i];
            if (!double.IsFinite(r.Time) || !double.IsFinite(r.Value) || !(r.NoiseFactor > 0) || double.IsInfinity(r.NoiseFactor) || (i > 0 && r.Time < readings[i - 1].Time))
            {
                throw new ArgumentException("Readings are finite, in order of time, with a noise factor above 0.", nameof(readings));
            }
        }
    }

    private static (double[] Mean, double[] Variance, double Log) Filter(IReadOnlyList<LevelReading> readings, double noise, double drift)
    {
        var (mean, variance, log, scale) = FilterScaled(readings, noise, drift);
        return (mean, variance, log - (0.5 * (readings.Count - 1) * scale));
    }

    /// <summary>The filter; Log leaves out the quadratic part, Scale is its mean over readings after the first.</summary>
    private static (double[] Mean, double[] Variance, double Log, double Scale) FilterScaled(IReadOnlyList<LevelReading> readings, double noise, double drift)
    {
        var n = readings.Count;
        var (mean, variance) = (new double[n], new double[n]);

        // A diffuse start: after the first reading the level is known as well as that reading.
        (mean[0], variance[0]) = (readings[0].Value, noise * readings[0].NoiseFactor);
        var (log, squares) = (-0.5 * (n - 1) * Math.Log(2 * Math.PI), 0.0);
        for (var t = 1; t < n; t++)
        {
            var before = variance[t - 1] + (drift * (readings[t].Time - readings[t - 1].Time));
            var spread = before + (noise * readings[t].NoiseFactor);
            var surprise = readings[t].Value - mean[t - 1];
            mean[t] = mean[t - 1] + (before / spread * surprise);
            variance[t] = before * noise * readings[t].NoiseFactor / spread;
            log -= 0.5 * Math.Log(spread);
            squares += surprise * surprise / spread;
        }

        return (mean, variance, log, n > 1 ? squares / (n - 1) : 0);
    }

    private static double GoldenSection(Func<double, double> peaked, double low, double high)
    {
        var golden = (Math.Sqrt(5) - 1) / 2;
        while (high - low > 1e-9)
        {
            var (left, right) = (high - (golden * (high - low)), low + (golden * (high - low)));
            (low, high) = peaked(left) < peaked(right) ? (left, high) : (low, right);
        }

        return 0.5 * (low + high);
    }
}
