namespace CareRecords.Pooling;

/// <summary>One gap over all children.</summary>
public sealed record PooledGap
{
    /// <summary>"Feed gap" or "Inhaler gap".</summary>
    public required string Name { get; init; }

    /// <summary>The estimate to read first: a logistic model with a random intercept by child.</summary>
    public required PooledShare Model { get; init; }

    /// <summary>Beside it: each child's share on the logit scale, pooled by REML with Hartung-Knapp limits.</summary>
    public required PooledShare TwoStep { get; init; }

    /// <summary>Counts over children; null where suppressed.</summary>
    public required GapCounts? Counts { get; init; }

    /// <summary>Rows of the forest plot: batches of children in order of their share, then groups of children.</summary>
    public required IReadOnlyList<ForestRow> Forest { get; init; }
}

/// <summary>Counts of sessions over children.</summary>
/// <param name="Children">Children with at least one judged session.</param>
/// <param name="Kept">Kept.</param>
/// <param name="Judged">Kept or certainly not kept.</param>
/// <param name="Unknown">Cannot tell.</param>
public sealed record GapCounts(int Children, int Kept, int Judged, int Unknown);

/// <summary>
/// A pooled share, 0 to 1: that of a child in the middle of the distribution of children. Null figures are suppressed or cannot be given;
/// <see cref="Method"/> says which.
/// </summary>
public sealed record PooledShare
{
    /// <summary>The share.</summary>
    public double? Pooled { get; init; }

    /// <summary>Lower 95 % limit.</summary>
    public double? Low { get; init; }

    /// <summary>Upper 95 % limit.</summary>
    public double? High { get; init; }

    /// <summary>Variance between children on the logit scale.</summary>
    public double? Tau2 { get; init; }

    /// <summary>Share of the variation between children that is not chance (Higgins), 0 to 1.</summary>
    public double? I2 { get; init; }

    /// <summary>Lower 95 % limit for the share of a further child.</summary>
    public double? PredictionLow { get; init; }

    /// <summary>Upper 95 % limit for the share of a further child.</summary>
    public double? PredictionHigh { get; init; }

    /// <summary>The method, or why there is no figure.</summary>
    public required string Method { get; init; }
}

/// <summary>A row of a forest plot.</summary>
/// <param name="Label">The row in words.</param>
/// <param name="Children">Children; null when suppressed.</param>
/// <param name="Judged">Judged sessions; null when suppressed.</param>
/// <param name="Share">Share kept, 0 to 1; null when suppressed or not given.</param>
/// <param name="Low">Lower 95 % limit.</param>
/// <param name="High">Upper 95 % limit.</param>
public sealed record ForestRow(string Label, int? Children, int? Judged, double? Share, double? Low, double? High);
