namespace CareRecords.Statistics;

/// <summary>
/// How far out the percentiles of bootstrap samples are to be read. Plain percentiles of samples of n are too narrow twice over: the spread of what was drawn
/// is too small by √((n − 1)/n), and a normal quantile stands where Student's should. The tail is Φ(−t·√(n/(n − 1))), t Student's critical value on n − 1, so
/// that for a mean the limits become Student's.
/// Source: Hesterberg TC (2015), Am Stat 69:371-386. Assumes n independent units and a statistic whose distribution is like a mean's. Smallest data: two units.
/// </summary>
public static class ExpandedPercentile
{
    /// <summary>The share of samples beyond each limit, below (1 − level)/2.</summary>
    /// <param name="level">The level of the interval.</param>
    /// <param name="units">How many independent units are drawn, 2 or more.</param>
    public static double Tail(double level, int units)
    {
        Require.Level(level);
        ArgumentOutOfRangeException.ThrowIfLessThan(units, 2);
        return Gaussian.Upper(StudentT.Critical(level, units - 1) * Math.Sqrt(units / (units - 1.0)));
    }
}
