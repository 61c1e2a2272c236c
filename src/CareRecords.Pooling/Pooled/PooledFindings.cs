namespace CareRecords.Pooling;

/// <summary>
/// What is said of many children together. The child is the unit throughout. A figure that would rest on too few children is null and its
/// place is listed in <see cref="Disclosure"/>; a figure that the data cannot give is null and its method says why.
/// </summary>
public sealed record PooledFindings
{
    /// <summary>Children pooled; null when they are fewer than the smallest group shown.</summary>
    public required int? Children { get; init; }

    /// <summary>Gaps between feeds and sessions.</summary>
    public required PooledGap FeedGap { get; init; }

    /// <summary>Gaps between inhaler and sessions.</summary>
    public required PooledGap InhalerGap { get; init; }

    /// <summary>Recovery from illness.</summary>
    public required PooledRecovery Recovery { get; init; }

    /// <summary>What followed steps down.</summary>
    public required PooledSetbacks Setbacks { get; init; }

    /// <summary>Tests between groups of children.</summary>
    public required IReadOnlyList<GroupTest> GroupTests { get; init; }

    /// <summary>How complete the children's records are.</summary>
    public required PooledCompleteness Completeness { get; init; }

    /// <summary>What was kept back, and why.</summary>
    public required DisclosureReport Disclosure { get; init; }

    /// <summary>Inputs that were left out, in order of name.</summary>
    public required IReadOnlyList<RefusedInput> Refused { get; init; }

    /// <summary>Things to know before reading the figures ("children follow two versions of the definitions").</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>How it was pooled.</summary>
    public required PoolOptions Options { get; init; }
}
