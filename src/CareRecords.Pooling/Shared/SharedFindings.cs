namespace CareRecords.Pooling;

/// <summary>
/// What pooling needs of one child and nothing that names anyone: numbers, yes or no, and codes from closed lists. No text, no date, no clock
/// time. Days count from the first care day with a record, which is day 0. Unknown is null, never zero.
/// </summary>
public sealed record SharedFindings
{
    /// <summary>The version of these tables; another version is refused.</summary>
    public const int TablesVersion = 2;

    /// <summary>The child, the span and the figures of which there is one a child.</summary>
    public required SharedChildRow Child { get; init; }

    /// <summary>Plan values.</summary>
    public required IReadOnlyList<SharedPlanValue> Plan { get; init; }

    /// <summary>Sessions in order.</summary>
    public required IReadOnlyList<SharedSession> Sessions { get; init; }

    /// <summary>Care days from day 0 on, none left out.</summary>
    public required IReadOnlyList<SharedDay> Days { get; init; }

    /// <summary>Illness episodes under each definition.</summary>
    public required IReadOnlyList<SharedEpisode> Episodes { get; init; }

    /// <summary>Steps as done.</summary>
    public required IReadOnlyList<SharedStep> Steps { get; init; }

    /// <summary>Saturations at each oxygen flow.</summary>
    public required IReadOnlyList<SharedSaturation> Saturations { get; init; }

    /// <summary>Completeness by kind of record.</summary>
    public required IReadOnlyList<SharedCompleteness> Completeness { get; init; }
}
