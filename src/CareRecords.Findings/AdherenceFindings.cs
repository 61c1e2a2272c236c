using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>A share of judged cases, with the unknown beside it.</summary>
/// <param name="Kept">Kept.</param>
/// <param name="Judged">Kept or certainly not kept.</param>
/// <param name="Unknown">Cannot tell.</param>
/// <param name="Proportion">Kept over judged; null when nothing could be judged.</param>
/// <param name="Low">Lower limit shown: the wider of the plain and the day-cluster interval; null when nothing could be judged.</param>
/// <param name="High">Upper limit shown.</param>
/// <param name="Level">Level of the interval, 0.95.</param>
/// <param name="Method">Which interval is shown.</param>
/// <param name="PlainLow">Wilson's lower limit, days taken as independent.</param>
/// <param name="PlainHigh">Wilson's upper limit.</param>
/// <param name="WorstCase">Share if every unknown were not kept; null when there is no case at all.</param>
/// <param name="BestCase">Share if every unknown were kept.</param>
/// <param name="WidthRatio">Width of the day-cluster interval over the plain one; null when not worked out.</param>
public sealed record ShareKept(
    int Kept, int Judged, int Unknown, double? Proportion, double? Low, double? High, double Level, string Method,
    double? PlainLow, double? PlainHigh, double? WorstCase, double? BestCase, double? WidthRatio);

/// <summary>Done against planned.</summary>
/// <param name="Done">Done.</param>
/// <param name="Planned">Planned; null when the plan does not say.</param>
/// <param name="Proportion">Done over planned; null without a plan. May exceed 1.</param>
/// <param name="DaysCounted">Care days that count: with records and a plan.</param>
public sealed record DoneOfPlanned(double Done, double? Planned, double? Proportion, int DaysCounted)
{
    /// <summary>Planned, of what nobody wrote whether it was done: in neither of the two; null where that makes no sense.</summary>
    public double? NotWritten { get; init; }

    /// <summary>Done over planned if nothing of the unwritten was done; null without a plan.</summary>
    public double? WorstCase => Planned + (NotWritten ?? 0) is { } all and > 0 ? Done / all : null;
}

/// <summary>A session's minutes against the plan over the parts usually treated, the unwritten apart.</summary>
/// <param name="Done">Minutes of the parts whose minutes were written, or the written total; null when none were.</param>
/// <param name="Planned">The plan's minutes for those parts.</param>
/// <param name="NotWritten">The plan's minutes for the other parts: whether they were done is unknown.</param>
/// <param name="Written">How many of the parts written have which item of the plan.</param>
public sealed record MinutesAgainstPlan(double? Done, double Planned, double NotWritten, IReadOnlyList<(PlanItem Item, int Parts)> Written);

/// <summary>A group of sessions or days, each measure side by side.</summary>
/// <param name="Label">The group in words ("week from 3 March", "well days", "04:00–10:00", "night carer").</param>
/// <param name="From">First care day of a week; null for other groups.</param>
/// <param name="To">Last care day of a week; null for other groups.</param>
/// <param name="FeedGap">Feed gaps.</param>
/// <param name="InhalerGap">Inhaler gaps.</param>
/// <param name="Sessions">Sessions done of planned; null where it makes no sense (time of day, writer).</param>
/// <param name="DaysAllDone">Days with all planned sessions, among days with records and a plan; null where it makes no sense.</param>
/// <param name="Minutes">Minutes done of planned, over the parts whose minutes are known; null where it makes no sense.</param>
public sealed record AdherenceGroup(
    string Label, LocalDate? From, LocalDate? To, ShareKept FeedGap, ShareKept InhalerGap, DoneOfPlanned? Sessions, ShareKept? DaysAllDone, DoneOfPlanned? Minutes);

/// <summary>How many verdicts would change if written times carried a rounding error.</summary>
/// <param name="Minutes">The error allowed, plus or minus.</param>
/// <param name="FeedGapFlips">Feed verdicts that would no longer be certain.</param>
/// <param name="InhalerGapFlips">Inhaler verdicts that would no longer be certain.</param>
public sealed record RoundingSensitivity(int Minutes, int FeedGapFlips, int InhalerGapFlips);

/// <summary>A daily series that a run chart is taken of.</summary>
public enum RunSeriesKind
{
    /// <summary>Sessions a day, since the plan's number last changed.</summary>
    Sessions,

    /// <summary>Share of judged feed gaps kept.</summary>
    FeedGapsKept,

    /// <summary>Median saturation at usual oxygen.</summary>
    Saturation,
}

/// <summary>A run chart's signals (Anhøj and Olesen 2014).</summary>
/// <param name="Kind">Which series.</param>
/// <param name="Since">The first day that counts, where that is later than the record's first; else null.</param>
/// <param name="Series">What was charted.</param>
/// <param name="Median">The median drawn.</param>
/// <param name="UsefulPoints">Points not on the median.</param>
/// <param name="LongestRun">Longest run on one side.</param>
/// <param name="LongestRunLimit">A longer run is a signal.</param>
/// <param name="Crossings">Crossings of the median.</param>
/// <param name="CrossingsLimit">Fewer crossings are a signal.</param>
/// <param name="Signal">Either signal; null when there are too few points (under 10).</param>
public sealed record RunChartFinding(
    RunSeriesKind Kind, LocalDate? Since, string Series, double Median, int UsefulPoints, int LongestRun, int LongestRunLimit, int Crossings, int CrossingsLimit, bool? Signal);

/// <summary>An exact binomial test of a share against the plan's target.</summary>
/// <param name="Gap">Which gap.</param>
/// <param name="Target">The target share, 0 to 1.</param>
/// <param name="PValue">Two-sided exact p; null when nothing could be judged.</param>
public sealed record TargetTest(string Gap, double Target, double? PValue);

/// <summary>What the sessions ask of a household.</summary>
/// <param name="Days">Care days with a session whose every session's minutes are known.</param>
/// <param name="MedianMinutes">Median minutes of those days; null when there is none.</param>
/// <param name="LeastMinutes">The least of them.</param>
/// <param name="MostMinutes">The most of them.</param>
/// <param name="NightSessions">Sessions begun from 22:00 to before 06:00, as stated.</param>
public sealed record Effort(int Days, double? MedianMinutes, double? LeastMinutes, double? MostMinutes, int NightSessions);

/// <summary>Everything against the plan.</summary>
public sealed record AdherenceFindings
{
    /// <summary>All sessions and days.</summary>
    public required AdherenceGroup Overall { get; init; }

    /// <summary>By calendar week of care days, Monday first.</summary>
    public required IReadOnlyList<AdherenceGroup> ByWeek { get; init; }

    /// <summary>Well and illness days apart.</summary>
    public IReadOnlyList<AdherenceGroup> ByState { get; init; } = [];

    /// <summary>Minutes a day and sessions at night: on all days, well days and illness days.</summary>
    public (Effort All, Effort Well, Effort Illness) Effort { get; init; } = (new(0, null, null, null, 0), new(0, null, null, null, 0), new(0, null, null, null, 0));

    /// <summary>The parts of the chest that a session usually treats, by the plan's item that sets their minutes; empty when no session names parts.</summary>
    public IReadOnlyList<(PlanItem Item, int Parts)> UsualParts { get; init; } = [];

    /// <summary>Median minutes of each part of the chest that was treated: all sessions, and those of illness days.</summary>
    public (PartMinutes All, PartMinutes Illness) Parts { get; init; } = (new(null, null, null), new(null, null, null));

    /// <summary>By part of the day.</summary>
    public IReadOnlyList<AdherenceGroup> ByTimeOfDay { get; init; } = [];

    /// <summary>By who wrote or did it.</summary>
    public IReadOnlyList<AdherenceGroup> ByWriter { get; init; } = [];

    /// <summary>How many verdicts hang on rounding, at ±5 and ±10 minutes.</summary>
    public IReadOnlyList<RoundingSensitivity> Rounding { get; init; } = [];

    /// <summary>Run charts.</summary>
    public IReadOnlyList<RunChartFinding> RunCharts { get; init; } = [];

    /// <summary>Tests against the plan's target; empty when the plan states none.</summary>
    public IReadOnlyList<TargetTest> TargetTests { get; init; } = [];

    /// <summary>Reasons given for sessions not done or cut short, with how often each.</summary>
    public IReadOnlyList<(string Reason, int Times)> Reasons { get; init; } = [];
}
