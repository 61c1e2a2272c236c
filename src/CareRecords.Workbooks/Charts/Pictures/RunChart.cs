using CareRecords.Findings;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>Sessions and minutes a day as run charts: the median, and whether runs and crossings give a signal (Anhøj and Olesen 2014).</summary>
internal static class RunChart
{
    private const string Sessions = "sessions";
    private const string Minutes = "minutes";

    public static ChartPage? Page(ChildFindings findings)
    {
        if (findings.Sessions.Count == 0) return null;
        var sessions = Find(findings.Adherence.RunCharts, "session");
        var minutes = Find(findings.Adherence.RunCharts, "minute");
        var counts = $"sessions a day: {Signal(sessions)}; minutes a day: {Signal(minutes)}";
        var details = $"Sessions: {Details(sessions)}. Minutes: {Details(minutes)}.";
        return new ChartPage
        {
            Name = "runs",
            Title = $"{char.ToUpperInvariant(counts[0])}{counts[1..]} ({ChartWords.Count(findings.Span.DaysWithRecords, "day")} with records)",
            AltText = $"Sessions and minutes of each care day around their medians: {counts}. {details}",
            SmallPrint = details + " A signal is a longer run on one side of the median, or fewer crossings, than chance gives in about one chart of twenty (Anhøj and Olesen 2014). An illness or a changed plan is reason enough for one.",
            Key =
            [
                KeyItem.Of(Glyph.Dot, ChartColours.Blue, "a day"),
                KeyItem.Line(ChartColours.Black, "median", [2.5, 1.5], 1.3),
                KeyItem.Line(ChartColours.Grey, "planned", [1.5, 2], 1.3),
                .. KeyItem.Illness(findings),
            ],
            BodyHeight = 330,
            Body = (ink, body) => Plot(findings, sessions, minutes).DrawInto(ink, body),
        };
    }

    private static PlotModel Plot(ChildFindings findings, RunChartFinding? sessions, RunChartFinding? minutes)
    {
        var days = DayScale.Of(findings.Span);
        var plot = PlotPanels.Empty(right: 92);
        plot.Axes.Add(PlotPanels.DayAxis(days));
        Panel(plot, days, findings, Sessions, "sessions a day", 0.54, 1, d => d.HasRecords ? d.SessionsDone : null, d => d.SessionsPlanned, sessions);
        Panel(plot, days, findings, Minutes, "minutes a day", 0, 0.46, d => d.SessionsWithoutMinutes == 0 ? d.Minutes : null, _ => null, minutes);
        return plot;
    }

    private static void Panel(
        PlotModel plot, DayScale days, ChildFindings findings, string key, string title, double from, double to,
        Func<DayFinding, double?> value, Func<DayFinding, double?> planned, RunChartFinding? run)
    {
        var most = 1.0;
        foreach (var day in findings.Days) most = Math.Max(most, Math.Max(value(day) ?? 0, planned(day) ?? 0));
        plot.Axes.Add(PlotPanels.SideAxis(key, title, 0, most * 1.12, Math.Max(1, PlotPanels.Step(most, 5)), from, to));
        plot.Annotations.Add(days.IllnessBands(findings.Days, key, named: key == Sessions));
        plot.Annotations.Add(new PlotLayer((ink, pen) => Draw(ink, pen, days, findings.Days, value, planned, run), key));
    }

    private static void Draw(
        IRenderContext ink, PlotPen pen, DayScale days, IReadOnlyList<DayFinding> all, Func<DayFinding, double?> value, Func<DayFinding, double?> planned,
        RunChartFinding? run)
    {
        if (run is not null)
        {
            ink.Stroke(pen.Left, pen.Y(run.Median), pen.Right, pen.Y(run.Median), ChartColours.Black, 1.3, [2.5, 1.5]);
            ink.Text(pen.Right + 6, pen.Y(run.Median), $"median {ChartWords.Number(run.Median)}", bold: true);
        }
        var size = days.Count <= 100 ? 5.0 : 3.0;
        DataPoint? before = null;
        foreach (var day in all)
        {
            var x = days.Of(day.Day);
            if (planned(day) is { } plan) ink.Stroke(pen.X(x - 0.5), pen.Y(plan), pen.X(x + 0.5), pen.Y(plan), ChartColours.Grey, 1.3, [1.5, 2]);
            if (value(day) is not { } y)
            {
                before = null;
                continue;
            }
            if (before is { } last) ink.Stroke(pen.X(last.X), pen.Y(last.Y), pen.X(x), pen.Y(y), ChartColours.Blue, 0.9);
            before = new DataPoint(x, y);
        }
        foreach (var day in all)
        {
            if (value(day) is { } y) ink.Mark(Glyph.Dot, pen.X(days.Of(day.Day)), pen.Y(y), size, ChartColours.Blue);
        }
    }

    private static RunChartFinding? Find(IReadOnlyList<RunChartFinding> charts, string word)
    {
        foreach (var chart in charts)
        {
            if (chart.Series.StartsWith(word, StringComparison.OrdinalIgnoreCase)) return chart;
        }
        return null;
    }

    private static string Signal(RunChartFinding? run) => run switch
    {
        null => "not charted",
        { Signal: null } => "too few days to tell",
        { Signal: true } => "a signal of change",
        _ => "no signal of change",
    };

    private static string Details(RunChartFinding? run) => run switch
    {
        null => "not charted",
        { Signal: null } => FormattableString.Invariant($"{ChartWords.Count(run.UsefulPoints, "day")} off the median, 10 are needed"),
        _ => FormattableString.Invariant(
            $"longest run {run.LongestRun} (signal over {run.LongestRunLimit}), {ChartWords.Count(run.Crossings, "crossing")} (signal under {run.CrossingsLimit})"),
    };
}
