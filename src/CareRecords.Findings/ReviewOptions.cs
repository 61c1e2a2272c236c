using NodaTime;

namespace CareRecords.Findings;

/// <summary>What to look at. Gaps still see the feeds and doses written before the first day.</summary>
public sealed record ReviewOptions
{
    /// <summary>First care day, included; null from the first record.</summary>
    public LocalDate? From { get; init; }

    /// <summary>Last care day, included; null to the last record.</summary>
    public LocalDate? To { get; init; }

    /// <summary>Bootstrap draws behind each day-cluster interval; at least 200.</summary>
    public int Draws { get; init; } = 1000;

    /// <summary>The seed of the draws: the same records give the same figures everywhere.</summary>
    public int Seed { get; init; } = 20260101;
}
