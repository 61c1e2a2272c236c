namespace CareRecords.Pooling;

/// <summary>One row a child.</summary>
public sealed record SharedChildRow
{
    /// <summary>The child's code.</summary>
    public required ChildCode Code { get; init; }

    /// <summary>The definitions that the figures follow.</summary>
    public required Version Definitions { get; init; }

    /// <summary>Age band; <see cref="AgeBand.NotGiven"/> unless the family gave one.</summary>
    public required AgeBand AgeBand { get; init; }

    /// <summary>Study group; null unless given.</summary>
    public StudyGroup? StudyGroup { get; init; }

    /// <summary>Care days from the first record to the last.</summary>
    public required int Days { get; init; }

    /// <summary>Of them with anything written.</summary>
    public required int DaysWithRecords { get; init; }

    /// <summary>Own usual saturation at usual oxygen, per cent; null with too few days.</summary>
    public double? BaselineSpO2 { get; init; }

    /// <summary>Lower edge of the usual band, per cent.</summary>
    public double? BaselineLow { get; init; }

    /// <summary>Upper edge of the usual band, per cent.</summary>
    public double? BaselineHigh { get; init; }

    /// <summary>Usual oxygen, L/min; null when never written.</summary>
    public double? UsualOxygen { get; init; }

    /// <summary>Days that gave the baseline; 0 without one.</summary>
    public int BaselineDays { get; init; }

    /// <summary>Readings that gave the baseline; 0 without one.</summary>
    public int BaselineReadings { get; init; }

    /// <summary>True when fewer than 14 well days gave the baseline; null without one.</summary>
    public bool? BaselineProvisional { get; init; }

    /// <summary>Sessions with a reading before and after at the same oxygen.</summary>
    public required int EffectPairs { get; init; }

    /// <summary>Pairs left out because oxygen changed or was not written.</summary>
    public required int EffectPairsLeftOut { get; init; }

    /// <summary>Median change of saturation over a session, points; null with too few pairs.</summary>
    public double? EffectMedian { get; init; }

    /// <summary>Its lower limit, distribution-free.</summary>
    public double? EffectLow { get; init; }

    /// <summary>Its upper limit.</summary>
    public double? EffectHigh { get; init; }

    /// <summary>The level of these limits, 0 to 1.</summary>
    public double? EffectLevel { get; init; }

    /// <summary>Exact clock times looked at for digit preference.</summary>
    public required int ClockTimes { get; init; }

    /// <summary>Share of their minutes ending in 0 or 5; null when there is no time.</summary>
    public double? MultiplesOfFive { get; init; }

    /// <summary>Share on the quarter hours.</summary>
    public double? MultiplesOfFifteen { get; init; }

    /// <summary>Runs of entries that look written later or together.</summary>
    public required int LateEntries { get; init; }

    /// <summary>Saturation readings without a flow.</summary>
    public required int ReadingsWithoutOxygen { get; init; }
}
