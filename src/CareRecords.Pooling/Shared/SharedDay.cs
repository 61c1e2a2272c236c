namespace CareRecords.Pooling;

/// <summary>One care day.</summary>
public sealed record SharedDay
{
    /// <summary>The day, from 0.</summary>
    public required int Day { get; init; }

    /// <summary>Whether anything was written for it.</summary>
    public required bool HasRecords { get; init; }

    /// <summary>Sessions written.</summary>
    public required int SessionsDone { get; init; }

    /// <summary>Sessions planned; null when the plan does not say.</summary>
    public double? SessionsPlanned { get; init; }

    /// <summary>Sessions that did not take place, with a reason given.</summary>
    public int OmittedWithReason { get; init; }

    /// <summary>Sessions that did not take place, no reason given.</summary>
    public int OmittedWithoutReason { get; init; }

    /// <summary>Minutes of all sessions; null when none is known.</summary>
    public double? Minutes { get; init; }

    /// <summary>Sessions whose minutes are not known.</summary>
    public int SessionsWithoutMinutes { get; init; }

    /// <summary>Saturation readings.</summary>
    public int Readings { get; init; }

    /// <summary>Median of resting readings at usual oxygen, per cent; null when there is none.</summary>
    public double? MedianSpO2AtUsualOxygen { get; init; }

    /// <summary>Lowest reading at any flow, per cent; null when there is none.</summary>
    public double? LowestSpO2 { get; init; }

    /// <summary>Highest oxygen written, L/min; null when none was written.</summary>
    public double? HighestOxygen { get; init; }

    /// <summary>Feeds written.</summary>
    public int Feeds { get; init; }

    /// <summary>Doses written.</summary>
    public int Doses { get; init; }

    /// <summary>Signs of illness written, counted; which signs is not shared.</summary>
    public int Signs { get; init; }

    /// <summary>The main definition's episode; null when well.</summary>
    public int? Episode { get; init; }

    /// <summary>The step as done; null when none.</summary>
    public int? Step { get; init; }
}
