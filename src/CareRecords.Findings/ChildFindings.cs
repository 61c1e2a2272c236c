using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Everything that is said of one child's records: each figure with its interval, count and unit. Unknown is null, never zero.</summary>
public sealed record ChildFindings
{
    /// <summary>The version of the definitions in docs/definitions.md that these figures follow.</summary>
    public const string DefinitionsVersion = "1.1";

    /// <summary>The care days covered.</summary>
    public required ReviewSpan Span { get; init; }

    /// <summary>The plan items in force, defaults labelled.</summary>
    public required IReadOnlyList<PlanValueInForce> Plan { get; init; }

    /// <summary>Sessions in order of time.</summary>
    public required IReadOnlyList<SessionFinding> Sessions { get; init; }

    /// <summary>Care days from the first to the last, none left out.</summary>
    public required IReadOnlyList<DayFinding> Days { get; init; }

    /// <summary>Gaps, sessions and minutes against the plan.</summary>
    public required AdherenceFindings Adherence { get; init; }

    /// <summary>The child's own usual; null when there is too little to say, with the reason in <see cref="BaselineMissing"/>.</summary>
    public required Baseline? Baseline { get; init; }

    /// <summary>Why there is no baseline; null when there is one.</summary>
    public string? BaselineMissing { get; init; }

    /// <summary>Illness episodes under both definitions.</summary>
    public required IllnessFindings Illness { get; init; }

    /// <summary>Steps up and down, planned and done.</summary>
    public required TaperFindings Taper { get; init; }

    /// <summary>Recovery over all episodes.</summary>
    public required RecoveryOverEpisodes Recovery { get; init; }

    /// <summary>Saturation before and after sessions at the same oxygen.</summary>
    public required SessionEffect SessionEffect { get; init; }

    /// <summary>Saturation at each oxygen flow, never pooled across flows; by rising flow.</summary>
    public required IReadOnlyList<SaturationAtFlow> SaturationByFlow { get; init; }

    /// <summary>How complete and how contemporaneous the records are.</summary>
    public required QualityFindings Quality { get; init; }

    /// <summary>What is new since the last review workbook; null when none came in.</summary>
    public SinceLastReview? SinceLastReview { get; init; }

    /// <summary>Lines that a person should look at, in order of time.</summary>
    public required IReadOnlyList<Flag> Flags { get; init; }
}

/// <summary>The care days that the findings cover.</summary>
/// <param name="From">The first care day.</param>
/// <param name="To">The last care day, included.</param>
/// <param name="Zone">IANA time zone.</param>
/// <param name="DayStarts">Clock time at which a care day starts.</param>
/// <param name="DaysWithRecords">Care days on which anything was written.</param>
/// <param name="DaysMissing">Care days on which nothing was written.</param>
public sealed record ReviewSpan(
    LocalDate From, LocalDate To, string Zone, LocalTime DayStarts, int DaysWithRecords, IReadOnlyList<LocalDate> DaysMissing);

/// <summary>A plan value as understood, from a day on.</summary>
/// <param name="Item">What it states.</param>
/// <param name="Name">Its name in words.</param>
/// <param name="From">From which care day; null from the first.</param>
/// <param name="Value">The value as written.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="IsDefault">True: "default, not your plan".</param>
/// <param name="DefaultSource">Where a default comes from; empty otherwise.</param>
/// <param name="Source">Where it was written; null for a default.</param>
public sealed record PlanValueInForce(
    PlanItem Item, string Name, LocalDate? From, string Value, string Unit, bool IsDefault, string DefaultSource, SourceLine? Source);

/// <summary>The child's own usual saturation at usual oxygen, over days that are not illness days.</summary>
/// <param name="SpO2">Robust centre of the daily medians; <paramref name="Method"/> names it. Per cent.</param>
/// <param name="SpO2Low">Lower edge of the usual band, per cent.</param>
/// <param name="SpO2High">Upper edge of the usual band, per cent, at most 100.</param>
/// <param name="CentreLow">Lower limit of the 95 % interval of the centre; null when too few days.</param>
/// <param name="CentreHigh">Upper limit of the 95 % interval of the centre; null when too few days.</param>
/// <param name="Oxygen">Usual oxygen, L/min; null when never written.</param>
/// <param name="OxygenFromPlan">True when the usual oxygen is the plan's.</param>
/// <param name="DaysUsed">Days that gave it.</param>
/// <param name="Readings">Readings that gave it.</param>
/// <param name="Provisional">True when fewer than 14 well days gave it.</param>
/// <param name="Method">How it was worked out.</param>
public sealed record Baseline(
    double SpO2, double SpO2Low, double SpO2High, double? CentreLow, double? CentreHigh, double? Oxygen, bool OxygenFromPlan,
    int DaysUsed, int Readings, bool Provisional, string Method);

/// <summary>Saturations at one oxygen flow.</summary>
/// <param name="OxygenLitresPerMinute">The flow, L/min; 0 is air; null: flow not written.</param>
/// <param name="Readings">Number of readings.</param>
/// <param name="Days">Care days with such a reading.</param>
/// <param name="Median">Median, per cent.</param>
/// <param name="LowerQuartile">Lower quartile, per cent.</param>
/// <param name="UpperQuartile">Upper quartile, per cent.</param>
/// <param name="Lowest">Lowest reading, per cent.</param>
/// <param name="Highest">Highest reading, per cent.</param>
public sealed record SaturationAtFlow(
    double? OxygenLitresPerMinute, int Readings, int Days, double Median, double LowerQuartile, double UpperQuartile, double Lowest, double Highest);

/// <summary>One care day.</summary>
public sealed record DayFinding
{
    /// <summary>The care day.</summary>
    public required LocalDate Day { get; init; }

    /// <summary>Whether anything was written for it.</summary>
    public required bool HasRecords { get; init; }

    /// <summary>Sessions written.</summary>
    public required int SessionsDone { get; init; }

    /// <summary>Sessions planned (lower end of a range); null when the plan does not say.</summary>
    public double? SessionsPlanned { get; init; }

    /// <summary>Sessions that the notes say did not take place, with a reason given.</summary>
    public int SessionsOmittedWithReason { get; init; }

    /// <summary>Sessions that the notes say did not take place, no reason given.</summary>
    public int SessionsOmittedWithoutReason { get; init; }

    /// <summary>Minutes of all sessions; null when no session's minutes are known.</summary>
    public double? Minutes { get; init; }

    /// <summary>Sessions whose minutes are not known.</summary>
    public int SessionsWithoutMinutes { get; init; }

    /// <summary>Median minutes per area over the day's areas; null when not known.</summary>
    public double? MinutesPerArea { get; init; }

    /// <summary>Minutes per area planned (lower end of a range), the median over the parts usually treated; null when the plan does not say.</summary>
    public double? MinutesPerAreaPlanned { get; init; }

    /// <summary>Saturation readings.</summary>
    public int Readings { get; init; }

    /// <summary>Median of resting readings at usual oxygen, per cent; null when there is none.</summary>
    public double? MedianSpO2AtUsualOxygen { get; init; }

    /// <summary>Lowest reading at any flow, per cent; null when there is none.</summary>
    public double? LowestSpO2 { get; init; }

    /// <summary>Highest oxygen flow written, L/min; null when none was written.</summary>
    public double? HighestOxygen { get; init; }

    /// <summary>Feeds written.</summary>
    public int Feeds { get; init; }

    /// <summary>Doses written.</summary>
    public int Doses { get; init; }

    /// <summary>Signs of illness written, in words.</summary>
    public IReadOnlyList<string> Signs { get; init; } = [];

    /// <summary>The main definition's episode that the day belongs to; null when well.</summary>
    public string? Episode { get; init; }

    /// <summary>The step (as done) that the day belongs to; null when none.</summary>
    public string? Step { get; init; }

    /// <summary>Feed gaps on the day: kept, short, unknown.</summary>
    public VerdictCount FeedGaps { get; init; } = new(0, 0, 0);

    /// <summary>Inhaler gaps on the day: kept, not kept (short, early or none), unknown.</summary>
    public VerdictCount InhalerGaps { get; init; } = new(0, 0, 0);
}

/// <summary>Verdicts counted.</summary>
/// <param name="Kept">Kept.</param>
/// <param name="NotKept">Judged and not kept.</param>
/// <param name="Unknown">Cannot tell.</param>
public sealed record VerdictCount(int Kept, int NotKept, int Unknown);

/// <summary>Something written that a person should look at: a sentence, a time and its source; never advice.</summary>
/// <param name="When">The local time.</param>
/// <param name="Kind">Why it is listed, as a kind.</param>
/// <param name="What">What was written ("SpO2 84 % on 0.5 L/min").</param>
/// <param name="Why">Why it is listed ("under the plan's stop value, 88 %").</param>
/// <param name="Sources">Where it was written.</param>
public sealed record Flag(LocalDateTime When, FlagKind Kind, string What, string Why, IReadOnlyList<SourceLine> Sources);

/// <summary>Why a line is listed.</summary>
public enum FlagKind
{
    /// <summary>A feed gap short, or a feed running.</summary>
    FeedGap,

    /// <summary>An inhaler gap short.</summary>
    InhalerGap,

    /// <summary>A session stopped early.</summary>
    StoppedEarly,

    /// <summary>Vomiting, in a session or as a sign.</summary>
    Vomit,

    /// <summary>Trouble breathing or a change of colour.</summary>
    Distress,

    /// <summary>An admission.</summary>
    Admitted,

    /// <summary>A reading under the plan's stop value.</summary>
    LowReading,

    /// <summary>A care day with oxygen above usual.</summary>
    OxygenAboveUsual,

    /// <summary>A step down soon after a sign, a low saturation or a change of oxygen.</summary>
    StepUnstable,
}
