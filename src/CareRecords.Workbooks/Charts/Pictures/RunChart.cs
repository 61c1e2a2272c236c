using CareRecords.Findings;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>Daily series as run charts: the median, and whether runs and crossings give a signal (Anhøj and Olesen 2014).</summary>
internal static class RunChart
{
    /// <summary>Wide and pale, so that it shows around the days' points.</summary>
    private static readonly OxyColor PlannedBand = OxyColor.FromRgb(0xC4, 0xC4, 0xC4);

    public static ChartPage? Page(ChildFindings findings)
    {
        if (findings.Sessions.Count == 0) return null;
        var series = RunSeries.Of(findings);
        var signals = new List<string>();
        foreach (var one in series)
        {
            if (one.Run is not null) signals.Add($"{one.Name}, {one.Signal}");
        }
        var counts = signals.Count == 0 ? "no median could be taken" : string.Join("; ", signals);
        return new ChartPage
        {
            Name = "runs",
            Title = $"Day to day over {ChartWords.Count(findings.Span.DaysWithRecords, "day")} with records: {counts}",
            AltText = $"Daily series around their medians, {ChartWords.Count(findings.Span.DaysWithRecords, "day")} with records: {counts}.",
            SmallPrint = "A signal is a longer run on one side of the median, or fewer crossings of it, than chance gives in about one chart of twenty (Anhøj and Olesen 2014). An illness or a changed plan is reason enough for one.",
            Key =
            [
                KeyItem.Of(Glyph.Dot, ChartColours.Blue, "a day"),
                KeyItem.Line(ChartColours.Black, "median", [2.5, 1.5], 1.3),
                KeyItem.Line(PlannedBand, "planned (band behind the days)", thickness: 8),
                .. KeyItem.Illness(findings),
            ],
            BodyHeight = series.Count * 108 + 50,
            Body = (ink, body) => Plot(findings, series).DrawInto(ink, body),
        };
    }

    private static PlotModel Plot(ChildFindings findings, IReadOnlyList<RunSeries> series)
    {
        var days = DayScale.Of(findings.Span);
        var plot = PlotPanels.Empty(right: 92);
        plot.Axes.Add(PlotPanels.DayAxis(days));
        for (var i = 0; i < series.Count; i++)
        {
            var (one, key) = (series[i], series[i].Name);
            var top = 1 - (double)i / series.Count;
            var (low, high) = Extent(one, findings.Days);
            // What is left above a panel is the room for its own words.
            plot.Axes.Add(PlotPanels.SideAxis(
                key, one.AxisTitle, low, high + (high - low) * 0.08, Math.Max(1, PlotPanels.Step(high - low, 4)), top - 0.98 / series.Count, top - 0.2 / series.Count));
            plot.Annotations.Add(days.IllnessBands(findings.Days, key, named: false));
            plot.Annotations.Add(new PlotLayer((ink, pen) => Lines(ink, pen, days, findings.Days, one), key));
            plot.Annotations.Add(new PlotLayer((ink, pen) => Points(ink, pen, days, findings.Days, one), key));
        }
        return plot;
    }

    /// <summary>From zero up for counts and shares; saturations keep to their own range.</summary>
    private static (double Low, double High) Extent(RunSeries series, IReadOnlyList<DayFinding> all)
    {
        var (low, high) = (double.PositiveInfinity, 1.0);
        foreach (var day in all)
        {
            low = Math.Min(low, series.Value(day) ?? low);
            high = Math.Max(high, Math.Max(series.Value(day) ?? 0, series.Planned(day) ?? 0));
        }
        return series.Name == "saturation" && low < high ? (Math.Floor(low) - 1, high) : series.Name == "saturation" ? (high - 4, high) : (0, high);
    }

    private static void Lines(IRenderContext ink, PlotPen pen, DayScale days, IReadOnlyList<DayFinding> all, RunSeries series)
    {
        foreach (var day in all)
        {
            var x = days.Of(day.Day);
            if (series.Planned(day) is { } plan) ink.Stroke(pen.X(x - 0.5), pen.Y(plan), pen.X(x + 0.5), pen.Y(plan), PlannedBand, 8);
        }
        Heading(ink, pen, series);
        if (series.Run is not { } run) return;
        var from = series.Since is { } since ? Math.Max(pen.Left, pen.X(days.Of(since) - 0.5)) : pen.Left;
        ink.Stroke(from, pen.Y(run.Median), pen.Right, pen.Y(run.Median), ChartColours.Black, 1.3, [2.5, 1.5]);
        ink.Text(pen.Right + 6, pen.Y(run.Median), $"median {ChartWords.Number(run.Median)}", bold: true);
    }

    private static void Heading(IRenderContext ink, PlotPen pen, RunSeries series)
    {
        var name = series is { Since: { } since }
            ? $"Sessions a day since the plan changed on {ChartWords.Day(since)}"
            : ChartWords.Sentence(series.Run?.Series ?? series.AxisTitle).TrimEnd('.');
        var words = series.Run is null ? $"{name}, as written" : $"{name}: {series.Signal}";
        ink.Text(pen.Left, pen.Top - 8, words, bold: true);
        ink.Text(pen.Left + ink.Width(words + "  ", bold: true), pen.Top - 8, series.Details);
    }

    private static void Points(IRenderContext ink, PlotPen pen, DayScale days, IReadOnlyList<DayFinding> all, RunSeries series)
    {
        var size = days.Count <= 100 ? 5.0 : 3.0;
        DataPoint? before = null;
        foreach (var day in all)
        {
            if (series.Value(day) is not { } y)
            {
                before = null;
                continue;
            }
            var x = days.Of(day.Day);
            if (before is { } last) ink.Stroke(pen.X(last.X), pen.Y(last.Y), pen.X(x), pen.Y(y), ChartColours.Blue, 0.9);
            before = new DataPoint(x, y);
        }
        foreach (var day in all)
        {
            if (series.Value(day) is { } y) ink.Mark(Glyph.Dot, pen.X(days.Of(day.Day)), pen.Y(y), size, ChartColours.Blue);
        }
    }
}
