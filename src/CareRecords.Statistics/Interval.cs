namespace CareRecords.Statistics;

/// <summary>A pair of limits, both ends included; an infinite end means no limit on that side.</summary>
/// <param name="Low">The lower limit.</param>
/// <param name="High">The upper limit.</param>
/// <param name="Level">The confidence level, for example 0.95.</param>
public sealed record Interval(double Low, double High, double Level)
{
    /// <summary>High minus Low.</summary>
    public double Width => High - Low;

    /// <summary>Whether a value lies within the limits, both ends included.</summary>
    /// <param name="value">The value asked about.</param>
    public bool Covers(double value) => Low <= value && value <= High;
}
