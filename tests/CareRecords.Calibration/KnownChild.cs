using CareRecords.Findings.Modelling;
using CareRecords.Simulation;
using NodaTime;

namespace CareRecords.Calibration;

/// <summary>A simulated child as the model sees her, with the truth beside. Days are counted from the start of the first care day (04:00).</summary>
internal sealed record KnownChild(
    IReadOnlyList<Observation> Observations, IllnessModelInput Input, double Baseline, IReadOnlyList<KnownEpisode> Episodes, Func<double, double> DeficitAt)
{
    private const double DayStartsHours = 4;

    /// <summary>A child of the simulator, through the records that a family would have kept.</summary>
    public static KnownChild From(SimulationOptions options)
    {
        var (log, truth) = SimulatedChild.Make(options);
        var last = options.FirstDay.PlusDays(options.Days - 1);
        return new KnownChild(
            DailySignals.Of(log, options.FirstDay, last),
            new IllnessModelInput { CareDays = options.Days, UsualOxygen = DailySignals.UsualOxygen(log.Plan, options.FirstDay, last) },
            truth.BaselineSpO2,
            [.. truth.Episodes.Select(e => new KnownEpisode(
                e.Illness.Shape.ToString(), Period.DaysBetween(options.FirstDay, e.OnsetDay), CareDays(options, e.Illness.Onset), e.RecoveredAt is { } at ? CareDays(options, at) : null))],
            day => truth.Episodes.Max(e => e.Illness.DeficitAt(day + (DayStartsHours / 24))));
    }

    /// <summary>The simulator's days are elapsed time from midnight; care days are local time from four in the morning.</summary>
    private static double CareDays(SimulationOptions options, double elapsedDays)
    {
        var zone = DateTimeZoneProviders.Tzdb[options.Zone];
        var local = options.FirstDay.AtStartOfDayInZone(zone).ToInstant().Plus(Duration.FromDays(elapsedDays)).InZone(zone).LocalDateTime;
        return (Period.Between(options.FirstDay.AtMidnight(), local, PeriodUnits.Minutes).Minutes / 1440.0) - (DayStartsHours / 24);
    }
}

/// <summary>A true illness.</summary>
/// <param name="Kind">Its shape in a word.</param>
/// <param name="OnsetDay">The care day of its onset.</param>
/// <param name="Onset">The moment of its onset, days.</param>
/// <param name="RecoveredAt">Days to recovery; null when not within the record.</param>
internal sealed record KnownEpisode(string Kind, int OnsetDay, double Onset, double? RecoveredAt);
