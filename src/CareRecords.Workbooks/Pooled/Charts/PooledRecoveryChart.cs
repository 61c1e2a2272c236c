using CareRecords.Findings;
using CareRecords.Pooling;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;

namespace CareRecords.Workbooks.Pooled.Charts;

/// <summary>Curves of the share of illnesses still recovering: all children with limits, or groups side by side.</summary>
internal static class PooledRecoveryChart
{
    private const string Share = "share";
    private static readonly (OxyColor Colour, double[]? Dash)[] Lines =
    [
        (ChartColours.Blue, null), (ChartColours.Vermilion, [7, 3]), (ChartColours.Green, [2.5, 2.5]), (ChartColours.Black, [9, 3, 2, 3]), (ChartColours.Grey, [4, 2]),
    ];

    public static ChartPage? All(RecoveryCurve curve)
    {
        if (curve.Curve.Count < 2) return null;
        var words = $"{ChartWords.Count(curve.Episodes ?? 0, "illness", "illnesses")} of {ChartWords.Count(curve.Children ?? 0, "child", "children")}; {Median(curve)}";
        return new ChartPage
        {
            Name = "recovery-pooled",
            Title = $"Recovery over all children: {words}",
            AltText = $"Share of illnesses still recovering by day from onset: {words}.",
            SmallPrint = curve.Method + ". Shown as long as enough children are followed, in steps of enough children.",
            Key = [KeyItem.Line(ChartColours.Blue, "share still recovering", thickness: 2.2), KeyItem.Box(ChartColours.SkyWash, ChartColours.Blue, "its 95 % limits")],
            BodyHeight = 260,
            Body = (ink, body) => Plot([curve], withBand: true).DrawInto(ink, body),
        };
    }

    public static ChartPage? ByGroup(IReadOnlyList<RecoveryCurve> curves, string grouping, string name)
    {
        var shown = curves.Where(c => c.Curve.Count >= 2).Take(Lines.Length).ToList();
        if (shown.Count < 2) return null;
        var medians = string.Join("; ", shown.Select(c => $"{c.Label}: {Median(c)}"));
        return new ChartPage
        {
            Name = name,
            Title = $"Recovery by {grouping}",
            AltText = $"Share of illnesses still recovering by {grouping}. {medians}.",
            SmallPrint = medians + ". Groups are as families gave them or as records show them; what differs between them besides is not known.",
            Key = [.. shown.Select((c, i) => KeyItem.Line(Lines[i].Colour, $"{c.Label} ({c.Children})", Lines[i].Dash, 2))],
            BodyHeight = 260,
            Body = (ink, body) => Plot(shown, withBand: false).DrawInto(ink, body),
        };
    }

    private static string Median(RecoveryCurve curve) => curve switch
    {
        { Median: { } m, MedianLow: { } low, MedianHigh: { } high } => $"half recovered by day {ChartWords.Number(m)} ({ChartWords.Number(low)} to {ChartWords.Number(high)})",
        { Median: { } m } => $"half recovered by day {ChartWords.Number(m)}, limits open",
        _ => "when half recovered cannot be told",
    };

    private static PlotModel Plot(IReadOnlyList<RecoveryCurve> curves, bool withBand)
    {
        var last = Math.Max(1, curves.Max(c => c.Curve[^1].Day));
        var plot = PlotPanels.Empty(right: 40);
        plot.Axes.Add(PlotPanels.NumberAxis("days from the onset of the illness", 0, last, Math.Max(1, PlotPanels.Step(last, 16))));
        var side = PlotPanels.SideAxis(Share, "still recovering", 0, 1.03, 0.25);
        side.LabelFormatter = ChartWords.Percent;
        plot.Axes.Add(side);
        plot.Annotations.Add(new PlotLayer((ink, pen) => Draw(ink, pen, curves, withBand), Share));
        return plot;
    }

    private static void Draw(IRenderContext ink, PlotPen pen, IReadOnlyList<RecoveryCurve> curves, bool withBand)
    {
        if (withBand) Band(ink, pen, curves[0].Curve);
        ink.Stroke(pen.Left, pen.Y(0.5), pen.Right, pen.Y(0.5), ChartColours.Grey, 1, [4, 2.5]);
        for (var c = 0; c < curves.Count; c++)
        {
            var points = curves[c].Curve.Select(p => new ScreenPoint(pen.X(p.Day), pen.Y(p.Value))).ToList();
            ink.DrawLine(points, Lines[c].Colour, 2.2, EdgeRenderingMode.PreferGeometricAccuracy, Lines[c].Dash, LineJoin.Round);
        }
    }

    private static void Band(IRenderContext ink, PlotPen pen, IReadOnlyList<CurvePoint> curve)
    {
        var known = curve.Where(p => p.Low is not null && p.High is not null).ToList();
        if (known.Count < 2) return;
        var upper = known.Select(p => new ScreenPoint(pen.X(p.Day), pen.Y(p.High ?? 1))).ToList();
        var lower = known.Select(p => new ScreenPoint(pen.X(p.Day), pen.Y(p.Low ?? 0))).Reverse();
        ink.DrawPolygon([.. upper, .. lower], ChartColours.SkyWash, ChartColours.Blue, 0.8, EdgeRenderingMode.PreferGeometricAccuracy, [3, 2], LineJoin.Round);
    }
}
