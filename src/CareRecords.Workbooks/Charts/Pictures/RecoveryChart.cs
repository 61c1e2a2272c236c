using System.Diagnostics;
using CareRecords.Findings;
using CareRecords.Workbooks.Charts.Paper;
using NodaTime;
using OxyPlot;
using OxyPlot.Annotations;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>One illness: the way back to the usual band, what the record brackets and what the model makes of it.</summary>
internal static class RecoveryChart
{
    private const string Saturation = "saturation";
    private const string Answer = "answer";
    private const double DaysBefore = 3;

    public static ChartPage? Page(ChildFindings findings, EpisodeFinding episode)
    {
        var recovery = episode.Recovery;
        var dots = DayMedians(findings, episode, out var last);
        if (dots.Count == 0 && recovery.Curve.Count == 0) return null;
        var record = recovery.RecordHigh is { } high
            ? $"recovered between day {ChartWords.Number(recovery.RecordLow)} and day {ChartWords.Number(high)} by the record"
            : $"not recovered by the end of the record, day {ChartWords.Number(recovery.RecordLow)}";
        var model = recovery is { Estimate: { } estimate, Low: not null }
            ? $"model: day {ChartWords.Number(estimate)} ({Limits(recovery)})"
            : "no model estimate";
        return new ChartPage
        {
            Name = "recovery-" + episode.Id.ToLowerInvariant(),
            Title = $"Illness {episode.Id}, days from {ChartWords.Day(episode.Onset)}: {record}; {model}",
            AltText = $"Saturation at usual oxygen by day from the start of illness {episode.Id}: {record}. {char.ToUpperInvariant(model[0])}{model[1..]}.",
            SmallPrint = FormattableString.Invariant(
                $"Day 0 is the start of {ChartWords.Day(episode.Onset)}. {OwnCount(findings, episode)}{ChartWords.Count(dots.Count, "day")} with a reading at usual oxygen; days without one have no dot. {Guess(recovery)}{ChartWords.Sentence(recovery.Method)}"),
            Key =
            [
                KeyItem.Of(Glyph.Dot, ChartColours.Black, "day's median at usual oxygen"),
                .. recovery.Curve.Count == 0 ? (KeyItem[])[] : [KeyItem.Line(ChartColours.Blue, "model's guess of the level on usual oxygen, not readings", thickness: 2)],
                KeyItem.Box(ChartColours.SkyWash, ChartColours.Blue, "usual band"),
                KeyItem.Line(ChartColours.Black, "recovery lies in here, by the record", thickness: 4),
            ],
            BodyHeight = 300,
            Body = (ink, body) => Plot(findings, episode, dots, last).DrawInto(ink, body),
        };
    }

    /// <summary>The record's own episode may begin on another day: the same recovery is then so many days from there.</summary>
    private static string OwnCount(ChildFindings findings, EpisodeFinding episode) =>
        findings.Illness.OfRecord(episode) is { Recovery: { RecordHigh: { } high } recovery } record && record.Onset != episode.Onset
            ? $"By the record the illness begins on {ChartWords.Day(record.Onset)}: from there {ChartWords.Number(recovery.RecordLow)} to {ChartWords.Number(high)} days. "
            : "";

    private static string Guess(RecoveryFinding recovery) => recovery.Curve.Count == 0 ? ""
        : "The curve is the model's guess of the level on usual oxygen, also on days on more, and not readings; under the lowest reading it is cut off. ";

    private static string Limits(RecoveryFinding recovery) => recovery switch
    {
        { Low: { } low, High: { } high } => $"95 % interval {ChartWords.Number(low)} to {ChartWords.Number(high)}",
        { Low: { } low } => $"95 % interval from {ChartWords.Number(low)}, upper end open",
        _ => throw new UnreachableException(),
    };

    private static List<DataPoint> DayMedians(ChildFindings findings, EpisodeFinding episode, out double last)
    {
        var recovery = episode.Recovery;
        last = Math.Max(Math.Max(recovery.DaysHigh ?? recovery.DaysLow, recovery.High ?? 0), 3);
        foreach (var point in recovery.Curve) last = Math.Max(last, point.Day);
        last = Math.Ceiling(Math.Min(last + 2, Math.Max(3, Period.DaysBetween(episode.Onset, findings.Span.To) + 1)));
        var dots = new List<DataPoint>();
        foreach (var day in findings.Days)
        {
            double x = Period.DaysBetween(episode.Onset, day.Day) + 0.5;
            if (day.MedianSpO2AtUsualOxygen is { } median && x > -DaysBefore && x < last) dots.Add(new DataPoint(x, median));
        }
        return dots;
    }

    private static PlotModel Plot(ChildFindings findings, EpisodeFinding episode, List<DataPoint> dots, double last)
    {
        var (low, high) = (findings.Baseline?.SpO2Low ?? 100, 100.5);
        foreach (var dot in dots) low = Math.Min(low, dot.Y);

        // The axis ends where readings are: the model's guess beyond them is cut off, and the small print says so.
        low = Math.Min(low, episode.LowestSpO2 ?? 100);
        low = Math.Max(0, Math.Floor(low) - 1);
        var plot = PlotPanels.Empty(right: 104);
        plot.Axes.Add(PlotPanels.NumberAxis("days from the start of the illness", -DaysBefore, last, PlotPanels.Step(last + DaysBefore, 16) is var s && s < 1 ? 1 : s));
        plot.Axes.Add(PlotPanels.SideAxis(Saturation, "saturation (%)", low, high, PlotPanels.Step(high - low, 7), 0.27));
        var rows = PlotPanels.SideAxis(Answer, "", 0, 2, 0.5, to: 0.22);
        rows.LabelFormatter = value => value switch { 1.5 => "record", 0.5 => "model", _ => "" };
        rows.MajorGridlineStyle = LineStyle.None;
        rows.TickStyle = OxyPlot.Axes.TickStyle.None;
        plot.Axes.Add(rows);
        if (findings.Baseline is { } baseline) plot.Annotations.Add(UsualBand(baseline));
        plot.Annotations.Add(new PlotLayer((ink, pen) => Curve(ink, pen, episode.Recovery.Curve), Saturation, AnnotationLayer.BelowSeries));
        plot.Annotations.Add(new PlotLayer((ink, pen) => Dots(ink, pen, dots), Saturation));
        plot.Annotations.Add(new PlotLayer((ink, pen) => Answers(ink, pen, episode.Recovery, last), Answer));
        return plot;
    }

    private static PlotLayer UsualBand(Baseline baseline) => new(
        (ink, pen) =>
        {
            var (high, low) = (pen.Y(baseline.SpO2High), pen.Y(baseline.SpO2Low));
            ink.Box(pen.Left, high, pen.Right - pen.Left, low - high, ChartColours.SkyWash);
            ink.Stroke(pen.Left, low, pen.Right, low, ChartColours.Blue, 0.8);
            ink.Stroke(pen.Left, high, pen.Right, high, ChartColours.Blue, 0.8);
            ink.Text(pen.Right + 6, (high + low) / 2, $"usual band\n{ChartWords.Range(baseline.SpO2Low, baseline.SpO2High)} %", colour: ChartColours.Blue);
        },
        Saturation, AnnotationLayer.BelowAxes);

    private static void Curve(IRenderContext ink, PlotPen pen, IReadOnlyList<CurvePoint> curve)
    {
        if (curve.Count < 2) return;
        ink.PushClip(new OxyRect(pen.Left, pen.Top, pen.Right - pen.Left, pen.Bottom - pen.Top));
        var band = new List<ScreenPoint>(curve.Count * 2);
        var line = new List<ScreenPoint>(curve.Count);
        foreach (var point in curve)
        {
            line.Add(new ScreenPoint(pen.X(point.Day), pen.Y(point.Value)));
            if (point.High is { } high) band.Add(new ScreenPoint(pen.X(point.Day), pen.Y(Math.Min(high, 100.5))));
        }
        for (var i = curve.Count - 1; i >= 0; i--)
        {
            if (curve[i].Low is { } low) band.Add(new ScreenPoint(pen.X(curve[i].Day), pen.Y(low)));
        }
        if (band.Count > 2)
            ink.DrawPolygon(band, OxyColor.FromAColor(50, ChartColours.Blue), ChartColours.Blue, 0.6, EdgeRenderingMode.PreferGeometricAccuracy, [3, 2], LineJoin.Round);
        ink.DrawLine(line, ChartColours.Blue, 2, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Round);
        ink.PopClip();
    }

    private static void Dots(IRenderContext ink, PlotPen pen, List<DataPoint> dots)
    {
        var onset = pen.X(0);
        ink.Stroke(onset, pen.Top, onset, pen.Bottom, ChartColours.Black, 0.9, [2, 2]);
        ink.TextOnWhite(onset + 3, pen.Top + 7, "illness starts");
        foreach (var dot in dots) ink.Mark(Glyph.Dot, pen.X(dot.X), pen.Y(dot.Y), 5.5, ChartColours.Black);
    }

    private static void Answers(IRenderContext ink, PlotPen pen, RecoveryFinding recovery, double last)
    {
        ink.Stroke(pen.Left, pen.Y(1), pen.Right, pen.Y(1), ChartColours.Grid, 0.6);
        var (row, from) = (pen.Y(1.5), pen.X(recovery.RecordLow));
        var to = pen.X(Math.Min(recovery.RecordHigh ?? last, last));
        ink.Stroke(from, row, Math.Max(to, from + 2), row, ChartColours.Black, 4);
        if (recovery.RecordHigh is null) ink.Text(pen.Right + 6, row, "and beyond");
        row = pen.Y(0.5);
        // An estimate without limits is no more than the middle of the record's bracket: it is not drawn as a model's.
        if (recovery is not { Estimate: { } estimate, Low: { } low })
        {
            ink.Text(pen.Left + 4, row, "no estimate");
            return;
        }
        ink.Stroke(pen.X(Math.Max(low, -DaysBefore)), row, pen.X(Math.Min(recovery.High ?? last, last)), row, ChartColours.Blue, 1.8);
        if (recovery.High is null || recovery.High > last) ink.Text(pen.Right + 6, row, "and beyond");
        ink.Mark(Glyph.Dot, pen.X(Math.Min(estimate, last)), row, 7, ChartColours.Blue);
    }
}
