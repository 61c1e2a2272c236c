using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Whether a gap was kept. The unsure case is the default.</summary>
public enum GapVerdict
{
    /// <summary>The notes cannot tell.</summary>
    Unknown,

    /// <summary>At least the limit, however the times are read.</summary>
    Kept,

    /// <summary>Under the limit, however the times are read.</summary>
    Short,

    /// <summary>Inhaler only: given earlier than the window, within 240 minutes.</summary>
    Early,

    /// <summary>Inhaler only: medicines were written that day, but none that is due before a session.</summary>
    None,
}

/// <summary>The time between the end of the last feed and a session's start.</summary>
/// <param name="LowMinutes">Least elapsed minutes that the notes allow, 0 or more; null when nothing can be said.</param>
/// <param name="HighMinutes">Most elapsed minutes; null when nothing can be said or no upper end is known.</param>
/// <param name="LimitMinutes">The limit used.</param>
/// <param name="LimitIsDefault">True: "default, not your plan".</param>
/// <param name="Verdict">Kept, short or unknown; exactly the limit is kept.</param>
/// <param name="Why">The verdict in a sentence.</param>
/// <param name="Feed">The feed that was used; null when none.</param>
/// <param name="FeedRunning">True when the feed certainly ran at the session's start.</param>
public sealed record FeedGapFinding(
    double? LowMinutes, double? HighMinutes, double LimitMinutes, bool LimitIsDefault, GapVerdict Verdict, string Why, Feed? Feed, bool FeedRunning);

/// <summary>The time between the medicine due before a session and its start.</summary>
/// <param name="LowMinutes">Least elapsed minutes; null when nothing can be said.</param>
/// <param name="HighMinutes">Most elapsed minutes; null when nothing can be said.</param>
/// <param name="LimitMinutes">The least gap used.</param>
/// <param name="WindowMinutes">The most minutes that still count.</param>
/// <param name="LimitIsDefault">True: "default, not your plan".</param>
/// <param name="Verdict">Kept, short, early, none or unknown.</param>
/// <param name="Why">The verdict in a sentence.</param>
/// <param name="Medicine">Generic name of the medicine used; null when none.</param>
/// <param name="Dose">The dose that was used; null when none.</param>
public sealed record InhalerGapFinding(
    double? LowMinutes, double? HighMinutes, double LimitMinutes, double WindowMinutes, bool LimitIsDefault, GapVerdict Verdict, string Why,
    string? Medicine, Dose? Dose);

/// <summary>Whether an inhaled medicine of another class stood in its usual order to the session.</summary>
/// <param name="Dose">The dose.</param>
/// <param name="Class">Its class.</param>
/// <param name="InOrder">True or false as the times tell; null when they cannot.</param>
/// <param name="Why">In a sentence.</param>
public sealed record OrderFinding(Dose Dose, MedicineClass Class, bool? InOrder, string Why);

/// <summary>A saturation with its oxygen.</summary>
/// <param name="SpO2">Per cent.</param>
/// <param name="OxygenLitresPerMinute">L/min; 0 is air; null when not said.</param>
public sealed record SaturationReading(double SpO2, double? OxygenLitresPerMinute);

/// <summary>What is said of one session.</summary>
public sealed record SessionFinding
{
    /// <summary>Its number in order of time, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>The session as written.</summary>
    public required Session Session { get; init; }

    /// <summary>Its start in local time, as stated.</summary>
    public required LocalDateTime Start { get; init; }

    /// <summary>The care day that its stated start belongs to.</summary>
    public required LocalDate CareDay { get; init; }

    /// <summary>Minutes in all; null when not known.</summary>
    public double? Minutes { get; init; }

    /// <summary>Median minutes per area and technique; null when not known.</summary>
    public double? MinutesPerArea { get; init; }

    /// <summary>Minutes per area planned, the median over the parts usually treated; null when the plan does not say.</summary>
    public double? MinutesPerAreaPlanned { get; init; }

    /// <summary>Its minutes against the plan's, part by part; null when they cannot be compared.</summary>
    public MinutesAgainstPlan? AgainstPlan { get; init; }

    /// <summary>Areas that other sessions treat and this one left out, in words; empty when none or when not known.</summary>
    public IReadOnlyList<string> AreasLeftOut { get; init; } = [];

    /// <summary>Feed gap.</summary>
    public required FeedGapFinding FeedGap { get; init; }

    /// <summary>Inhaler gap.</summary>
    public required InhalerGapFinding InhalerGap { get; init; }

    /// <summary>Order of other inhaled medicines.</summary>
    public IReadOnlyList<OrderFinding> Order { get; init; } = [];

    /// <summary>Reading before; null when none.</summary>
    public SaturationReading? Before { get; init; }

    /// <summary>Reading after; null when none.</summary>
    public SaturationReading? After { get; init; }

    /// <summary>The main definition's episode; null when well.</summary>
    public string? Episode { get; init; }

    /// <summary>The step as done; null when none.</summary>
    public string? Step { get; init; }
}
