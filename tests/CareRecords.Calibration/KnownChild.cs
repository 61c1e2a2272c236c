using CareRecords.Findings;
using CareRecords.Findings.Modelling;
using CareRecords.Records;
using CareRecords.Simulation;
using NodaTime;

namespace CareRecords.Calibration;

/// <summary>A simulated child's records with the truth beside. Days are counted from the start of the first care day (04:00), in local time.</summary>
/// <param name="Log">What was written.</param>
/// <param name="First">The first care day.</param>
/// <param name="Days">Care days.</param>
/// <param name="Baseline">The true usual saturation, per cent.</param>
/// <param name="Episodes">The true illnesses.</param>
/// <param name="DeficitAt">The true deficit at a day, points.</param>
internal sealed record KnownChild(
    CareLog Log, LocalDate First, int Days, double Baseline, IReadOnlyList<KnownEpisode> Episodes, Func<double, double> DeficitAt)
{
    /// <summary>Hours after midnight at which a care day starts.</summary>
    public const double DayStartsHours = 4;

    /// <summary>A child of the simulator.</summary>
    public static KnownChild From(SimulationOptions options)
    {
        var (log, truth) = SimulatedChild.Make(options);
        return new KnownChild(
            log, options.FirstDay, options.Days, truth.BaselineSpO2,
            [.. truth.Episodes.Select(e => new KnownEpisode(
                Period.DaysBetween(options.FirstDay, e.OnsetDay), CareDays(options, e.Illness.Onset), e.RecoveredAt is { } at ? CareDays(options, at) : null))],
            day => truth.Episodes.Max(e => e.Illness.DeficitAt(day + (DayStartsHours / 24))));
    }

    /// <summary>What the findings say of her illnesses.</summary>
    public Found Review()
    {
        var records = ChildRecords.Of(Log, new ReviewOptions { From = First, To = First.PlusDays(Days - 1) });
        var illness = new IllnessByRecord(records);
        var model = DailySignals.Fit(records, illness);
        return new Found(model, IllnessSummary.Of(records, illness, RecordEpisodeFindings.Of(records, illness), model));
    }

    /// <summary>The same child with a record that stops early: a few days into her last illness, or just as it ends.</summary>
    public KnownChild CutInLastIllness(int seed)
    {
        var last = Episodes.Where(e => e.RecoveredAt is not null).MaxBy(e => e.Onset)!;
        var days = (int)Math.Ceiling(last.Onset + 1.5 + (new Random(seed).NextDouble() * (last.RecoveredAt!.Value - last.Onset)));
        var end = First.PlusDays(days).At(new LocalTime((int)DayStartsHours, 0));
        return this with
        {
            Log = Log with { Entries = [.. Log.Entries.Where(e => e.When.Stated < end)] },
            Days = days,
            Episodes = [.. Episodes.Where(e => e.Onset < days - 1).Select(e => e with { RecoveredAt = e.RecoveredAt < days ? e.RecoveredAt : null })],
        };
    }

    /// <summary>The simulator's days are elapsed time from midnight.</summary>
    private static double CareDays(SimulationOptions options, double elapsedDays)
    {
        var zone = DateTimeZoneProviders.Tzdb[options.Zone];
        var local = options.FirstDay.AtStartOfDayInZone(zone).ToInstant().Plus(Duration.FromDays(elapsedDays)).InZone(zone).LocalDateTime;
        return (Period.Between(options.FirstDay.AtMidnight(), local, PeriodUnits.Minutes).Minutes / 1440.0) - (DayStartsHours / 24);
    }
}

/// <summary>What was found.</summary>
/// <param name="Model">By the model.</param>
/// <param name="Illness">By both definitions.</param>
internal sealed record Found(IllnessModelResult Model, IllnessFindings Illness);

/// <summary>A true illness.</summary>
/// <param name="OnsetDay">The care day of its onset.</param>
/// <param name="Onset">The moment of its onset, days.</param>
/// <param name="RecoveredAt">Days to recovery; null when not within the record.</param>
internal sealed record KnownEpisode(int OnsetDay, double Onset, double? RecoveredAt);
