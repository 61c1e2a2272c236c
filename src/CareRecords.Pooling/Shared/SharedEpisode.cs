namespace CareRecords.Pooling;

/// <summary>Which definition an episode follows.</summary>
public enum EpisodeDefinition
{
    /// <summary>The one used for linking sessions, days and steps, and for pooled recovery.</summary>
    Main,

    /// <summary>By the record (rules).</summary>
    ByRecord,

    /// <summary>By a model over all daily signals.</summary>
    ByModel,
}

/// <summary>One illness episode under one definition. Recovery is the interval (low, high] in days from the onset's care day.</summary>
public sealed record SharedEpisode
{
    /// <summary>The definition.</summary>
    public required EpisodeDefinition Definition { get; init; }

    /// <summary>Its number within the definition, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Day of onset.</summary>
    public required int OnsetDay { get; init; }

    /// <summary>Earliest day that the onset may have been.</summary>
    public required int OnsetDayLow { get; init; }

    /// <summary>Latest day that the onset may have been.</summary>
    public required int OnsetDayHigh { get; init; }

    /// <summary>The worst day; null when not known.</summary>
    public int? PeakDay { get; init; }

    /// <summary>Lowest saturation, per cent; null when none was written.</summary>
    public double? LowestSpO2 { get; init; }

    /// <summary>Highest oxygen, L/min; null when none was written.</summary>
    public double? HighestOxygen { get; init; }

    /// <summary>Most sessions on one day.</summary>
    public int MostSessions { get; init; }

    /// <summary>The episode of which this is a relapse; null when none.</summary>
    public int? RelapseOf { get; init; }

    /// <summary>Days from the previous recovery to this onset; null for the first or when not known.</summary>
    public double? DaysSincePreviousRecovery { get; init; }

    /// <summary>Last moment known not recovered, days from onset.</summary>
    public required double RecoveryLow { get; init; }

    /// <summary>First moment known recovered, days from onset; null when not recovered by the end of the record.</summary>
    public double? RecoveryHigh { get; init; }

    /// <summary>Not recovered by the end of the record.</summary>
    public required bool Censored { get; init; }

    /// <summary>The model's estimate, days; null when there is too little.</summary>
    public double? RecoveryEstimate { get; init; }

    /// <summary>Its lower limit, days.</summary>
    public double? RecoveryEstimateLow { get; init; }

    /// <summary>Its upper limit, days; null when open.</summary>
    public double? RecoveryEstimateHigh { get; init; }

    /// <summary>Days from onset to the end of the wean; null while it lasts.</summary>
    public double? BackToMaintenanceDays { get; init; }
}
