namespace CareRecords.Statistics;

/// <summary>
/// A point estimate that never travels without its interval, its count and its method.
/// An infinite limit means that the data set no limit on that side; NaN is refused.
/// </summary>
public sealed record Estimate
{
    /// <summary>Makes an estimate.</summary>
    /// <param name="value">The point estimate, in the unit of the data.</param>
    /// <param name="low">The lower confidence limit, in the same unit; may be negative infinity.</param>
    /// <param name="high">The upper confidence limit, in the same unit; may be positive infinity.</param>
    /// <param name="level">The confidence level, above 0 and below 1.</param>
    /// <param name="count">How many independent observations (or trials, or studies) stand behind it.</param>
    /// <param name="method">The name of the method, as a reader would cite it.</param>
    /// <exception cref="ArgumentException">A figure is NaN or the limits are in the wrong order.</exception>
    public Estimate(double value, double low, double high, double level, int count, string method)
    {
        if (double.IsNaN(value) || double.IsNaN(low) || double.IsNaN(high) || low > high)
        {
            throw new ArgumentException($"{method}: {value} with limits {low} to {high} is not an estimate.", nameof(value));
        }

        Require.Level(level);
        (Value, Low, High, Level, Count, Method) = (value, low, high, level, count, method);
    }

    /// <summary>The point estimate.</summary>
    public double Value { get; }

    /// <summary>The lower confidence limit.</summary>
    public double Low { get; }

    /// <summary>The upper confidence limit.</summary>
    public double High { get; }

    /// <summary>The confidence level, for example 0.95.</summary>
    public double Level { get; }

    /// <summary>How many observations stand behind it.</summary>
    public int Count { get; }

    /// <summary>The method.</summary>
    public string Method { get; }

    /// <summary>High minus Low; infinite when a limit is.</summary>
    public double Width => High - Low;

    /// <summary>Whether a value lies within the limits, both ends included.</summary>
    /// <param name="value">The value asked about.</param>
    public bool Covers(double value) => Low <= value && value <= High;

    /// <summary>The same estimate on another scale.</summary>
    /// <param name="rising">A strictly rising function, for example the inverse logit.</param>
    /// <param name="method">The name of the method on the new scale.</param>
    public Estimate OnScale(Func<double, double> rising, string method)
    {
        ArgumentNullException.ThrowIfNull(rising);
        return new(rising(Value), rising(Low), rising(High), Level, Count, method);
    }
}
