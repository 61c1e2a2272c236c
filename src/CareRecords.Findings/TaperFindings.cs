using NodaTime;

namespace CareRecords.Findings;

/// <summary>Which way a step goes from the one before.</summary>
public enum StepDirection
{
    /// <summary>The first step, or no change in load.</summary>
    Same,

    /// <summary>More sessions or minutes.</summary>
    Up,

    /// <summary>Fewer sessions or minutes: a step of the wean.</summary>
    Down,
}

/// <summary>What happened in the seven days after a step began.</summary>
public enum StepOutcome
{
    /// <summary>The record ends too soon, or is too thin.</summary>
    Unknown,

    /// <summary>No step up, no new episode, no oxygen up.</summary>
    Steady,

    /// <summary>A step up, a new episode or oxygen up.</summary>
    Setback,
}

/// <summary>Steps planned and steps as done.</summary>
/// <param name="Planned">The plan's dated rows as steps.</param>
/// <param name="Done">Steps found in what was done.</param>
/// <param name="WeanInWords">How the wean went, in the trade's terms; no causes.</param>
public sealed record TaperFindings(IReadOnlyList<PlannedStep> Planned, IReadOnlyList<TaperStep> Done, string WeanInWords);

/// <summary>A step of the plan.</summary>
/// <param name="From">First care day.</param>
/// <param name="To">Last care day, included.</param>
/// <param name="SessionsPerDay">Sessions a day, lower end; null when not said.</param>
/// <param name="MinutesPerArea">Minutes per area; null when not said.</param>
public sealed record PlannedStep(LocalDate From, LocalDate To, double? SessionsPerDay, double? MinutesPerArea)
{
    /// <summary>Minutes planned for lower chest, upper chest and vibration; null when the plan sets none of them apart.</summary>
    public PartMinutes? Parts { get; init; }
}

/// <summary>Median minutes a side, by part; null where none has its minutes.</summary>
/// <param name="Lower">Lower chest, vibration apart.</param>
/// <param name="Upper">Upper chest, vibration apart.</param>
/// <param name="Vibration">Vibration, any part.</param>
public sealed record PartMinutes(double? Lower, double? Upper, double? Vibration);

/// <summary>A step as done.</summary>
public sealed record TaperStep
{
    /// <summary>"S1", "S2" … in order.</summary>
    public required string Id { get; init; }

    /// <summary>First care day.</summary>
    public required LocalDate From { get; init; }

    /// <summary>Last care day, included.</summary>
    public required LocalDate To { get; init; }

    /// <summary>Sessions a day (median over its days with records).</summary>
    public required double SessionsPerDay { get; init; }

    /// <summary>Minutes per area (median); null when not known.</summary>
    public double? MinutesPerArea { get; init; }

    /// <summary>The plan on most of its days; null when it does not say.</summary>
    public double? PlannedSessionsPerDay { get; init; }

    /// <summary>The plan's minutes per area on most of its days; null when it does not say.</summary>
    public double? PlannedMinutesPerArea { get; init; }

    /// <summary>The plan's sessions where it changed while the step was held ("4 to 30 Mar, then 3"); null when it did not.</summary>
    public string? PlannedSessionsInWords { get; init; }

    /// <summary>The plan's minutes per area where they changed while the step was held; null when they did not.</summary>
    public string? PlannedMinutesInWords { get; init; }

    /// <summary>Median minutes of each part of the chest that was treated.</summary>
    public PartMinutes Parts { get; init; } = new(null, null, null);

    /// <summary>Direction from the step before.</summary>
    public required StepDirection Direction { get; init; }

    /// <summary>The episode in which, or after which, it began; null when none.</summary>
    public string? Episode { get; init; }

    /// <summary>Day of that episode on which it began, from 0; null when none.</summary>
    public int? DayOfEpisode { get; init; }

    /// <summary>Hours in band, on usual or unchanged oxygen and without signs, before it began; null when it cannot be told.</summary>
    public double? StableHoursBefore { get; init; }

    /// <summary>From what <see cref="StableHoursBefore"/> are counted, and the oxygen then; null when it cannot be told.</summary>
    public string? StableInWords { get; init; }

    /// <summary>What followed within seven days.</summary>
    public required StepOutcome FollowedBy { get; init; }

    /// <summary>What followed within fourteen days.</summary>
    public StepOutcome FollowedWithin14 { get; init; }

    /// <summary>What followed within thirty days.</summary>
    public StepOutcome FollowedWithin30 { get; init; }

    /// <summary>What followed within seven days, in words.</summary>
    public string FollowedByWhat { get; init; } = "";

    /// <summary>Where it differs from the plan, in words; null when it does not.</summary>
    public string? DiffersFromPlan { get; init; }

    /// <summary>Care days held.</summary>
    public int DaysHeld => Period.DaysBetween(From, To) + 1;
}
