using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Illness episodes under two definitions, and how far they differ.</summary>
public sealed record IllnessFindings
{
    /// <summary>The episodes shown on the front page and used for linking; which definition they are is in <see cref="MainDefinition"/>.</summary>
    public required IReadOnlyList<EpisodeFinding> Episodes { get; init; }

    /// <summary>The main definition in a sentence.</summary>
    public required string MainDefinition { get; init; }

    /// <summary>By the record (rules).</summary>
    public required IReadOnlyList<EpisodeFinding> ByRecord { get; init; }

    /// <summary>By the model over all daily signals; empty with a reason in <see cref="ModelMissing"/> when there is too little.</summary>
    public required IReadOnlyList<EpisodeFinding> ByModel { get; init; }

    /// <summary>Why the model gave no answer; null when it did.</summary>
    public string? ModelMissing { get; init; }

    /// <summary>Illness days by each definition: (by record, by model, by both).</summary>
    public required (int ByRecord, int ByModel, int ByBoth) IllnessDays { get; init; }

    /// <summary>What was written around each of <see cref="Episodes"/>, in order of time; see <see cref="CourseEvent"/>.</summary>
    public IReadOnlyList<CourseEvent> Course { get; init; } = [];

    /// <summary>How much the answer depends on the definition, in a sentence.</summary>
    public required string Spread { get; init; }

    /// <summary>
    /// The record's own episode of the same days, whose days are counted from another first day: the last of those that share a day known ill with
    /// this one, as its recovery is the one in question; null when the record has none.
    /// </summary>
    public EpisodeFinding? OfRecord(EpisodeFinding episode)
    {
        ArgumentNullException.ThrowIfNull(episode);
        return ByRecord.LastOrDefault(r => r.Onset <= episode.LastKnownIll && episode.Onset <= r.LastKnownIll);
    }
}

/// <summary>One illness episode.</summary>
public sealed record EpisodeFinding
{
    /// <summary>"E1", "E2" … in order of onset.</summary>
    public required string Id { get; init; }

    /// <summary>First care day of illness.</summary>
    public required LocalDate Onset { get; init; }

    /// <summary>Earliest care day that the onset may have been.</summary>
    public required LocalDate OnsetLow { get; init; }

    /// <summary>Latest care day that the onset may have been.</summary>
    public required LocalDate OnsetHigh { get; init; }

    /// <summary>What was written on the first day, in words.</summary>
    public string Evidence { get; init; } = "";

    /// <summary>The worst care day; null when not known.</summary>
    public LocalDate? Peak { get; init; }

    /// <summary>Lowest saturation, per cent; null when none was written.</summary>
    public double? LowestSpO2 { get; init; }

    /// <summary>Highest oxygen, L/min; null when none was written.</summary>
    public double? HighestOxygen { get; init; }

    /// <summary>Most sessions on one care day.</summary>
    public int MostSessions { get; init; }

    /// <summary>The episode of which this is a relapse within 7 days; null when none.</summary>
    public string? RelapseOf { get; init; }

    /// <summary>Days from the previous episode's recovery to this onset; null for the first or when not known.</summary>
    public double? DaysSincePreviousRecovery { get; init; }

    /// <summary>Recovery.</summary>
    public required RecoveryFinding Recovery { get; init; }

    /// <summary>The care day of the last moment that the record shows ill.</summary>
    public LocalDate LastKnownIll => Onset.PlusDays((int)Math.Floor(Recovery.RecordLow));

    /// <summary>Days from onset to the end of the wean (sessions and minutes back at maintenance); null while it lasts.</summary>
    public double? BackToMaintenanceDays { get; init; }

    /// <summary>Lines on which it rests.</summary>
    public IReadOnlyList<SourceLine> Sources { get; init; } = [];
}

/// <summary>What an entry in the course of an illness is.</summary>
public enum CourseKind
{
    /// <summary>A sign that somebody noticed.</summary>
    Sign,

    /// <summary>Somebody wrote that the child was better.</summary>
    Better,

    /// <summary>The first written dose of an antibiotic, a steroid or a fever medicine.</summary>
    Medicine,

    /// <summary>Oxygen above usual: the first time, and each time it was higher than before.</summary>
    Oxygen,

    /// <summary>A reading under the plan's stop value.</summary>
    LowReading,

    /// <summary>A session cut short, or with vomiting.</summary>
    Session,

    /// <summary>A line that holds no record and names the team (nurse, doctor, clinic): what was asked or advised, as written.</summary>
    Team,

    /// <summary>The plan's number of sessions a day changed.</summary>
    Plan,

    /// <summary>Admitted to or home from hospital.</summary>
    Hospital,
}

/// <summary>Something written around an illness.</summary>
/// <param name="Episode">The episode ("E1").</param>
/// <param name="Day">The care day.</param>
/// <param name="Clock">The stated clock time; null when the words give none to two hours.</param>
/// <param name="Kind">What it is.</param>
/// <param name="What">In words.</param>
/// <param name="Sources">Where it was written.</param>
public sealed record CourseEvent(string Episode, LocalDate Day, LocalTime? Clock, CourseKind Kind, string What, IReadOnlyList<SourceLine> Sources)
{
    /// <summary>The calendar day of <see cref="Clock"/>, which after midnight is the day after the care day; without a clock the care day.</summary>
    public LocalDate Date { get; init; } = Day;

    /// <summary>True when the clock is not exact.</summary>
    public bool IsAbout { get; init; }
}

/// <summary>Days from the onset (its care day's start) to recovery: what the record brackets, and the model's estimate.</summary>
/// <param name="DaysLow">Last moment known not recovered, days from onset.</param>
/// <param name="DaysHigh">First moment known recovered, days from onset; null while it lasts.</param>
/// <param name="Estimate">The model's estimate, days; null when there is too little.</param>
/// <param name="Low">Lower limit, days.</param>
/// <param name="High">Upper limit, days; null when open.</param>
/// <param name="Level">Level of the interval, 0.95.</param>
/// <param name="Censored">True when not recovered by the end of the record.</param>
/// <param name="Method">How it was worked out, or why there is no estimate.</param>
public sealed record RecoveryFinding(
    double DaysLow, double? DaysHigh, double? Estimate, double? Low, double? High, double Level, bool Censored, string Method)
{
    /// <summary>The record's own bracket: last moment known not recovered, days from onset. <see cref="DaysLow"/> may lie before it, where the model leaves more open.</summary>
    public double RecordLow { get; init; } = DaysLow;

    /// <summary>The record's own bracket: first moment known recovered, days from onset; null where the record shows none.</summary>
    public double? RecordHigh { get; init; } = DaysHigh;

    /// <summary>The return curve: the model's saturation at usual oxygen by day from onset, with its band; empty when there is no model.</summary>
    public IReadOnlyList<CurvePoint> Curve { get; init; } = [];
}

/// <summary>A point of a curve with its band.</summary>
/// <param name="Day">Days from onset.</param>
/// <param name="Value">The value (a saturation in per cent, or a share).</param>
/// <param name="Low">Lower edge of the band; null when not known.</param>
/// <param name="High">Upper edge; null when not known.</param>
public sealed record CurvePoint(double Day, double Value, double? Low, double? High);

/// <summary>Recovery over all episodes: the share still recovering by day from onset, with censoring kept.</summary>
/// <param name="Curve">Share still recovering, 0 to 1.</param>
/// <param name="Median">Median days; null when it cannot be told.</param>
/// <param name="MedianLow">Lower limit; null when it cannot be told.</param>
/// <param name="MedianHigh">Upper limit; null when it cannot be told.</param>
/// <param name="Episodes">Episodes used.</param>
/// <param name="Censored">Of them not recovered by the end of the record.</param>
/// <param name="Method">The estimator, or why there is none.</param>
public sealed record RecoveryOverEpisodes(
    IReadOnlyList<CurvePoint> Curve, double? Median, double? MedianLow, double? MedianHigh, int Episodes, int Censored, string Method);
