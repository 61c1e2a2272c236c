using CareRecords.Findings;

namespace CareRecords.Pooling;

/// <summary>One step as done.</summary>
public sealed record SharedStep
{
    /// <summary>Its number in order, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>First day.</summary>
    public required int FromDay { get; init; }

    /// <summary>Last day, included.</summary>
    public required int ToDay { get; init; }

    /// <summary>Sessions a day.</summary>
    public required double SessionsPerDay { get; init; }

    /// <summary>Minutes per area; null when not known.</summary>
    public double? MinutesPerArea { get; init; }

    /// <summary>The plan's sessions a day on most of its days; null when it does not say.</summary>
    public double? PlannedSessionsPerDay { get; init; }

    /// <summary>The plan's minutes per area on most of its days; null when it does not say.</summary>
    public double? PlannedMinutesPerArea { get; init; }

    /// <summary>Direction from the step before.</summary>
    public required StepDirection Direction { get; init; }

    /// <summary>The episode in which, or after which, it began; null when none.</summary>
    public int? Episode { get; init; }

    /// <summary>Day of that episode on which it began, from 0; null when none.</summary>
    public int? DayOfEpisode { get; init; }

    /// <summary>Hours stable before it; null when it cannot be told.</summary>
    public double? StableHoursBefore { get; init; }

    /// <summary>What followed within seven days.</summary>
    public required StepOutcome FollowedBy { get; init; }
}
