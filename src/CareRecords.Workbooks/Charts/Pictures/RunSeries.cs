using CareRecords.Findings;
using CareRecords.Workbooks.Charts.Paper;
using NodaTime;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>A daily series as a run chart shows it.</summary>
/// <param name="Name">Its name in the title.</param>
/// <param name="AxisTitle">The side axis' title with its unit.</param>
/// <param name="Value">A day's value; null where there is none.</param>
/// <param name="Planned">A day's planned value; null where there is none.</param>
/// <param name="Run">The median and signals; null for a series shown without.</param>
/// <param name="Since">The first day that the median and signals count; null for all.</param>
internal sealed record RunSeries(
    string Name, string AxisTitle, Func<DayFinding, double?> Value, Func<DayFinding, double?> Planned, RunChartFinding? Run, LocalDate? Since)
{
    /// <summary>The series with signals in the findings' order, then the minutes for themselves.</summary>
    public static IReadOnlyList<RunSeries> Of(ChildFindings findings) => [.. findings.Adherence.RunCharts.Select(Of), Minutes];

    private static RunSeries Of(RunChartFinding run) => run.Kind switch
    {
        RunSeriesKind.Sessions => new("sessions", "sessions a day", d => d.HasRecords ? d.SessionsDone : null, d => d.SessionsPlanned, run, run.Since),
        RunSeriesKind.FeedGapsKept => new("feed gaps kept", "feed gaps kept (%)", d => Share(d.FeedGaps), _ => null, run, null),
        RunSeriesKind.Saturation => new("saturation", "saturation (%)", d => d.MedianSpO2AtUsualOxygen, _ => null, run, null),
        _ => throw new ArgumentOutOfRangeException(nameof(run), run.Kind, "not a series that is drawn"),
    };

    /// <summary>Whether runs and crossings give a signal, in a few words.</summary>
    public string Signal => Run switch
    {
        null => "no median taken",
        { Signal: null } => "too few days to tell",
        { Signal: true } => "a signal of change",
        _ => "no signal of change",
    };

    /// <summary>The counts behind <see cref="Signal"/>.</summary>
    public string Details => Run switch
    {
        null => "",
        { Signal: null } => $"{ChartWords.Count(Run.UsefulPoints, "day")} off the median, 10 are needed",
        _ => FormattableString.Invariant(
            $"longest run {Run.LongestRun} (at most {Run.LongestRunLimit}), crossings {Run.Crossings} (at least {Run.CrossingsLimit})"),
    };

    // A day with a session whose minutes were not written has no total: the rest of it would look like a short day.
    private static RunSeries Minutes { get; } = new("minutes", "minutes a day", d => d.SessionsWithoutMinutes == 0 ? d.Minutes : null, _ => null, null, null);

    private static double? Share(VerdictCount gaps) => gaps.Kept + gaps.NotKept == 0 ? null : 100.0 * gaps.Kept / (gaps.Kept + gaps.NotKept);
}
