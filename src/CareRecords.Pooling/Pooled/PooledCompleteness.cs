namespace CareRecords.Pooling;

/// <summary>How complete the records are, over children.</summary>
public sealed record PooledCompleteness
{
    /// <summary>Care days over children; null when suppressed.</summary>
    public required int? Days { get; init; }

    /// <summary>Of them with anything written; null when suppressed.</summary>
    public required int? DaysWithRecords { get; init; }

    /// <summary>Median over children of the share of days with records; null when suppressed.</summary>
    public required double? MedianShareOfDays { get; init; }

    /// <summary>Points of the funnel: batches of children in order of completeness.</summary>
    public required IReadOnlyList<FunnelPoint> Funnel { get; init; }
}

/// <summary>A batch of children of like completeness.</summary>
/// <param name="Gap">"Feed gap" or "Inhaler gap".</param>
/// <param name="Children">Children.</param>
/// <param name="Completeness">Mean over them of the share of sessions that could be judged, 0 to 1.</param>
/// <param name="Share">Share kept over them, 0 to 1.</param>
/// <param name="StandardError">Its standard error on the logit scale, over children where there is more than one.</param>
public sealed record FunnelPoint(string Gap, int Children, double Completeness, double Share, double StandardError);
