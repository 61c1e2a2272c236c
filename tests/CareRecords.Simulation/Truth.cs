using NodaTime;

namespace CareRecords.Simulation;

/// <summary>A gap's true verdict.</summary>
public enum TrueVerdict
{
    /// <summary>Kept.</summary>
    Kept,

    /// <summary>Short.</summary>
    Short,

    /// <summary>Inhaler too early.</summary>
    Early,

    /// <summary>No inhaler.</summary>
    None,
}

/// <summary>A true illness with the moments that an analysis is asked for.</summary>
/// <param name="Illness">Its course.</param>
/// <param name="OnsetDay">The care day of its onset.</param>
/// <param name="RecoveredAt">
/// The first moment, in days from the first care day's start, from which the deficit stays under one point and oxygen is back at usual;
/// null when that lies after the last day.
/// </param>
public sealed record TrueEpisode(TrueIllness Illness, LocalDate OnsetDay, double? RecoveredAt);

/// <summary>A true step of sessions and minutes.</summary>
/// <param name="From">Its first care day.</param>
/// <param name="SessionsPerDay">Sessions a day.</param>
/// <param name="MinutesPerArea">Minutes per area.</param>
public sealed record TrueStep(LocalDate From, int SessionsPerDay, double MinutesPerArea);

/// <summary>A session's true start and verdicts.</summary>
/// <param name="Start">Local start.</param>
/// <param name="FeedGap">Elapsed minutes from the end of the last feed begun before; 0 while it runs; null when none within 12 hours.</param>
/// <param name="Feed">Kept or short; null when no feed within 12 hours.</param>
/// <param name="Inhaler">Kept, short, early or none.</param>
public sealed record TrueSession(LocalDateTime Start, double? FeedGap, TrueVerdict? Feed, TrueVerdict Inhaler);

/// <summary>Everything true of a simulated child that the analysis has to find.</summary>
/// <param name="BaselineSpO2">Her own usual saturation at usual oxygen, per cent.</param>
/// <param name="UsualOxygen">Usual oxygen, L/min.</param>
/// <param name="Episodes">Illnesses.</param>
/// <param name="Steps">Steps.</param>
/// <param name="Sessions">Sessions.</param>
public sealed record Truth(
    double BaselineSpO2, double UsualOxygen, IReadOnlyList<TrueEpisode> Episodes, IReadOnlyList<TrueStep> Steps, IReadOnlyList<TrueSession> Sessions);
