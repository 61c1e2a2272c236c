namespace CareRecords.Pooling;

/// <summary>What followed steps down, by hours stable before the step. Which came first is in the record; what caused what is not.</summary>
public sealed record PooledSetbacks
{
    /// <summary>By band of hours, shortest first, then steps whose hours cannot be told.</summary>
    public required IReadOnlyList<SetbackBand> Bands { get; init; }

    /// <summary>The test for a trend over hours with the child as the unit; null p when it could not be done.</summary>
    public required GroupTest Trend { get; init; }
}

/// <summary>Steps down after a number of stable hours.</summary>
/// <param name="Label">The band in words ("under 24 h").</param>
/// <param name="Children">Children with such a step; null when suppressed.</param>
/// <param name="Steps">Steps whose outcome is known; null when suppressed.</param>
/// <param name="Setbacks">Of them followed by a setback within seven days; null when suppressed.</param>
/// <param name="Share">Share, from the logistic model with a random intercept by child, 0 to 1; null when suppressed or not given.</param>
/// <param name="Low">Lower 95 % limit.</param>
/// <param name="High">Upper 95 % limit.</param>
/// <param name="Unknown">Steps whose outcome cannot be told; null when suppressed.</param>
/// <param name="Method">The method, or why there is no figure.</param>
public sealed record SetbackBand(
    string Label, int? Children, int? Steps, int? Setbacks, double? Share, double? Low, double? High, int? Unknown, string Method);

/// <summary>A test between groups of children, by permuting whole children.</summary>
/// <param name="What">What was compared ("recovery by study group").</param>
/// <param name="Groups">Groups compared.</param>
/// <param name="PValue">Two-sided p; null when it could not be done.</param>
/// <param name="Method">The statistic, or why there is none.</param>
public sealed record GroupTest(string What, IReadOnlyList<string> Groups, double? PValue, string Method);
