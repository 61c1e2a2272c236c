using CareRecords.Findings;

namespace CareRecords.Pooling;

/// <summary>Recovery over children: days from onset, episodes with censoring kept as intervals.</summary>
public sealed record PooledRecovery
{
    /// <summary>All children.</summary>
    public required RecoveryCurve All { get; init; }

    /// <summary>By study group; empty when no child gave one.</summary>
    public required IReadOnlyList<RecoveryCurve> ByStudyGroup { get; init; }

    /// <summary>By age band; empty when no child gave one.</summary>
    public required IReadOnlyList<RecoveryCurve> ByAgeBand { get; init; }

    /// <summary>By how long the child was usually stable before a step down.</summary>
    public required IReadOnlyList<RecoveryCurve> ByStability { get; init; }
}

/// <summary>The share of episodes still recovering by day from onset.</summary>
public sealed record RecoveryCurve
{
    /// <summary>The children in words ("All children", "Group A").</summary>
    public required string Label { get; init; }

    /// <summary>Children with an episode; null when suppressed.</summary>
    public int? Children { get; init; }

    /// <summary>Episodes; null when suppressed.</summary>
    public int? Episodes { get; init; }

    /// <summary>Of them not recovered by the end of the record; null when suppressed.</summary>
    public int? Censored { get; init; }

    /// <summary>The nonparametric curve on whole days, to the last day at which enough children are still followed; empty when suppressed.</summary>
    public IReadOnlyList<CurvePoint> Curve { get; init; } = [];

    /// <summary>Median days; null when it cannot be told.</summary>
    public double? Median { get; init; }

    /// <summary>Its lower limit, by bootstrap over children.</summary>
    public double? MedianLow { get; init; }

    /// <summary>Its upper limit; null when open.</summary>
    public double? MedianHigh { get; init; }

    /// <summary>The Weibull model beside it; null when there is too little.</summary>
    public WeibullRecovery? Weibull { get; init; }

    /// <summary>The method, or why there is no figure.</summary>
    public required string Method { get; init; }
}

/// <summary>A Weibull model of days to recovery over all episodes; limits by standard errors that take children, not episodes, as independent.</summary>
/// <param name="Shape">Shape; over 1: recovery more likely with each day.</param>
/// <param name="Scale">Scale, days.</param>
/// <param name="Median">Median, days.</param>
/// <param name="MedianLow">Lower 95 % limit; null when it could not be given.</param>
/// <param name="MedianHigh">Upper 95 % limit.</param>
public sealed record WeibullRecovery(double Shape, double Scale, double Median, double? MedianLow, double? MedianHigh);
