namespace CareRecords.Studies;

/// <summary>The truth of a simulated study. Shares are those of a child in the middle of the distribution of children.</summary>
public sealed record StudyOptions
{
    /// <summary>Seed: same seed, same study.</summary>
    public required int Seed { get; init; }

    /// <summary>Children.</summary>
    public int Children { get; init; } = 24;

    /// <summary>Care days a child, on average.</summary>
    public int Days { get; init; } = 90;

    /// <summary>True share of feed gaps kept by the middle child.</summary>
    public double FeedGapKept { get; init; } = 0.8;

    /// <summary>True share of inhaler gaps kept by the middle child.</summary>
    public double InhalerGapKept { get; init; } = 0.7;

    /// <summary>Standard deviation between children on the logit scale.</summary>
    public double BetweenChildren { get; init; } = 0.7;

    /// <summary>Share of gaps that cannot be told.</summary>
    public double Unknown { get; init; } = 0.15;

    /// <summary>Illnesses a child, at most.</summary>
    public int MostIllnesses { get; init; } = 3;

    /// <summary>Weibull shape of days to recovery.</summary>
    public double RecoveryShape { get; init; } = 1.8;

    /// <summary>Median days to recovery of the middle child.</summary>
    public double RecoveryMedian { get; init; } = 9;

    /// <summary>Standard deviation between children of the logarithm of days to recovery.</summary>
    public double RecoveryBetween { get; init; } = 0.25;

    /// <summary>True share of steps followed by a setback, for the middle child after a step at 48 stable hours.</summary>
    public double SetbackShare { get; init; } = 0.25;

    /// <summary>Change of the logit of a setback for each further 24 stable hours.</summary>
    public double SetbackSlope { get; init; }

    /// <summary>Difference of group B from group A on the logit scale of both gaps.</summary>
    public double GroupDifference { get; init; }

    /// <summary>Ratio of group B's days to recovery to group A's.</summary>
    public double GroupRecoveryRatio { get; init; } = 1;

    /// <summary>Age bands and groups are given.</summary>
    public bool WithGroups { get; init; } = true;
}
