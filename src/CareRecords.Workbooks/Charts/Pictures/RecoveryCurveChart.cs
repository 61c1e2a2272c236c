using CareRecords.Findings;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>Recovery over all episodes: the share still recovering by day, with illnesses that outlast the record kept.</summary>
internal static class RecoveryCurveChart
{
    private const string Share = "share";

    public static ChartPage? Page(ChildFindings findings)
    {
        var recovery = findings.Recovery;
        if (recovery.Episodes < 2 || recovery.Curve.Count < 2) return null;
        var median = recovery.Median is { } days
            ? $"half recovered by day {ChartWords.Number(days)}{Limits(recovery)}"
            : "when half recovered cannot be told";
        var counts = FormattableString.Invariant(
            $"{ChartWords.Count(recovery.Episodes, "illness", "illnesses")}, {recovery.Censored} not recovered by the end of the record; {median}");
        return new ChartPage
        {
            Name = "recovery-all",
            Title = $"Recovery over all illnesses: {counts}",
            AltText = $"Share of illnesses still recovering by day from the start: {counts}.",
            SmallPrint = ChartWords.Sentence(recovery.Method),
            Key =
            [
                KeyItem.Line(ChartColours.Blue, "share still recovering", thickness: 2.2),
                KeyItem.Box(ChartColours.SkyWash, ChartColours.Blue, "its 95 % limits"),
                KeyItem.Line(ChartColours.Black, "half", [2.5, 1.5], 1.2),
            ],
            BodyHeight = 250,
            Body = (ink, body) => Plot(recovery).DrawInto(ink, body),
        };
    }

    private static string Limits(RecoveryOverEpisodes recovery) => recovery switch
    {
        { MedianLow: { } low, MedianHigh: { } high } => $" (95 % limits {ChartWords.Number(low)} to {ChartWords.Number(high)})",
        { MedianLow: { } low } => $" (95 % limits from {ChartWords.Number(low)}, upper end open)",
        _ => "",
    };

    private static PlotModel Plot(RecoveryOverEpisodes recovery)
    {
        var last = Math.Max(1, Math.Ceiling(recovery.Curve[^1].Day + 0.5));
        var plot = PlotPanels.Empty(right: 40);
        plot.Axes.Add(PlotPanels.NumberAxis("days from the start of the illness", 0, last, Math.Max(1, PlotPanels.Step(last, 16))));
        var side = PlotPanels.SideAxis(Share, "still recovering", 0, 1.03, 0.25);
        side.LabelFormatter = ChartWords.Percent;
        plot.Axes.Add(side);
        plot.Annotations.Add(new PlotLayer((ink, pen) => Draw(ink, pen, recovery, last), Share));
        return plot;
    }

    private static void Draw(IRenderContext ink, PlotPen pen, RecoveryOverEpisodes recovery, double last)
    {
        var curve = recovery.Curve;
        for (var i = 0; i < curve.Count; i++)
        {
            var (left, right) = (pen.X(curve[i].Day), pen.X(i + 1 < curve.Count ? curve[i + 1].Day : last));
            if (curve[i] is not { Low: { } low, High: { } high }) continue;
            ink.Box(left, pen.Y(high), right - left, pen.Y(low) - pen.Y(high), ChartColours.SkyWash);
            ink.Stroke(left, pen.Y(high), right, pen.Y(high), ChartColours.Blue, 0.8, [3, 2]);
            ink.Stroke(left, pen.Y(low), right, pen.Y(low), ChartColours.Blue, 0.8, [3, 2]);
        }
        ink.Stroke(pen.Left, pen.Y(0.5), pen.Right, pen.Y(0.5), ChartColours.Black, 1.2, [2.5, 1.5]);
        for (var i = 0; i < curve.Count; i++)
        {
            var (left, right, y) = (pen.X(curve[i].Day), pen.X(i + 1 < curve.Count ? curve[i + 1].Day : last), pen.Y(curve[i].Value));
            if (i > 0) ink.Stroke(left, pen.Y(curve[i - 1].Value), left, y, ChartColours.Blue, 2.2);
            ink.Stroke(left, y, right, y, ChartColours.Blue, 2.2);
        }
    }
}
