namespace CareRecords.Statistics;

/// <summary>Families of log T = location + scale·W.</summary>
public enum SurvivalFamily
{
    /// <summary>W is the smallest extreme value; shape 1/scale, characteristic time exp(location).</summary>
    Weibull,

    /// <summary>W is normal.</summary>
    LogNormal,

    /// <summary>W is logistic.</summary>
    LogLogistic,

    /// <summary>The Weibull with scale 1: a constant hazard.</summary>
    Exponential,
}
