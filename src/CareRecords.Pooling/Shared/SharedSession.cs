using CareRecords.Findings;

namespace CareRecords.Pooling;

/// <summary>One session.</summary>
public sealed record SharedSession
{
    /// <summary>Its number in order, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Its care day.</summary>
    public required int Day { get; init; }

    /// <summary>Minutes in all; null when not written.</summary>
    public double? Minutes { get; init; }

    /// <summary>Median minutes per area and technique; null when not written.</summary>
    public double? MinutesPerArea { get; init; }

    /// <summary>Minutes per area planned; null when the plan does not say.</summary>
    public double? MinutesPerAreaPlanned { get; init; }

    /// <summary>How many areas that other sessions treat were left out.</summary>
    public int AreasLeftOut { get; init; }

    /// <summary>Least minutes since the end of the last feed; null when no feed was written within 12 hours.</summary>
    public double? FeedGapLow { get; init; }

    /// <summary>Most minutes; null when no upper end is known.</summary>
    public double? FeedGapHigh { get; init; }

    /// <summary>The limit used, minutes.</summary>
    public required double FeedGapLimit { get; init; }

    /// <summary>The limit is a starting value and not the plan's.</summary>
    public required bool FeedGapLimitIsDefault { get; init; }

    /// <summary>Kept, short or unknown.</summary>
    public required GapVerdict FeedGap { get; init; }

    /// <summary>The feed certainly ran at the session's start.</summary>
    public bool FeedRunning { get; init; }

    /// <summary>Least minutes since the inhaler; null when none counts.</summary>
    public double? InhalerGapLow { get; init; }

    /// <summary>Most minutes; null when none counts.</summary>
    public double? InhalerGapHigh { get; init; }

    /// <summary>The least gap used, minutes.</summary>
    public required double InhalerGapLimit { get; init; }

    /// <summary>The most minutes that still count.</summary>
    public required double InhalerWindow { get; init; }

    /// <summary>The limits are starting values and not the plan's.</summary>
    public required bool InhalerLimitIsDefault { get; init; }

    /// <summary>Kept, short, early, none or unknown.</summary>
    public required GapVerdict InhalerGap { get; init; }

    /// <summary>Saturation before, per cent; null when not written.</summary>
    public double? SpO2Before { get; init; }

    /// <summary>Oxygen beside it, L/min; 0 is air; null when not written.</summary>
    public double? OxygenBefore { get; init; }

    /// <summary>Saturation after, per cent; null when not written.</summary>
    public double? SpO2After { get; init; }

    /// <summary>Oxygen beside it, L/min; null when not written.</summary>
    public double? OxygenAfter { get; init; }

    /// <summary>The main definition's episode; null when well.</summary>
    public int? Episode { get; init; }

    /// <summary>The step as done; null when none.</summary>
    public int? Step { get; init; }
}
