using CareRecords.Pooling;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;

namespace CareRecords.Workbooks.Pooled.Charts;

/// <summary>Whether fuller records tell another share: each batch of children by how much of it could be judged.</summary>
internal static class FunnelChart
{
    private const string Judged = "judged";

    public static ChartPage? Page(PooledFindings findings)
    {
        var points = findings.Completeness.Funnel;
        if (points.Count == 0) return null;
        return new ChartPage
        {
            Name = "funnel",
            Title = "Share kept against completeness",
            AltText = $"Share of gaps kept by batches of children in order of how many of their sessions could be judged, {ChartWords.Count(points.Count, "batch", "batches")}.",
            SmallPrint = "Each mark is a batch of children of like completeness; bars are two standard errors on the logit scale. Marks that lean to one side as records get thinner say that the unwritten may differ from the written.",
            Key = [KeyItem.Of(Glyph.Square, ChartColours.Blue, "feed gap"), KeyItem.Of(Glyph.TriangleUp, ChartColours.Vermilion, "inhaler gap")],
            BodyHeight = 260,
            Body = (ink, body) => Plot(findings, points).DrawInto(ink, body),
        };
    }

    private static PlotModel Plot(PooledFindings findings, IReadOnlyList<FunnelPoint> points)
    {
        var plot = PlotPanels.Empty(right: 40);
        var axis = PlotPanels.NumberAxis("share kept of judged sessions", 0, 1, 0.2);
        axis.LabelFormatter = ChartWords.Percent;
        plot.Axes.Add(axis);
        var side = PlotPanels.SideAxis(Judged, "sessions that could be judged", 0, 1.02, 0.25);
        side.LabelFormatter = ChartWords.Percent;
        plot.Axes.Add(side);
        plot.Annotations.Add(new PlotLayer((ink, pen) => Draw(ink, pen, findings, points), Judged));
        return plot;
    }

    private static void Draw(IRenderContext ink, PlotPen pen, PooledFindings findings, IReadOnlyList<FunnelPoint> points)
    {
        foreach (var (gap, colour) in (ReadOnlySpan<(PooledGap, OxyColor)>)[(findings.FeedGap, ChartColours.Blue), (findings.InhalerGap, ChartColours.Vermilion)])
            if (gap.Model.Pooled is { } pooled) ink.Stroke(pen.X(pooled), pen.Top, pen.X(pooled), pen.Bottom, colour, 1, [4, 2.5]);
        foreach (var point in points)
        {
            var feed = point.Gap == findings.FeedGap.Name;
            var (colour, y) = (feed ? ChartColours.Blue : ChartColours.Vermilion, pen.Y(point.Completeness));
            var logit = Math.Log(point.Share / (1 - point.Share));
            ink.Stroke(pen.X(Share(logit - (2 * point.StandardError))), y, pen.X(Share(logit + (2 * point.StandardError))), y, colour, 1);
            ink.Mark(feed ? Glyph.Square : Glyph.TriangleUp, pen.X(point.Share), y, 7, colour);
        }
    }

    private static double Share(double logit) => 1 / (1 + Math.Exp(-logit));
}
