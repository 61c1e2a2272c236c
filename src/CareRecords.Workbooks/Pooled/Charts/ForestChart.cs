using CareRecords.Pooling;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;

namespace CareRecords.Workbooks.Pooled.Charts;

/// <summary>The forest plot of one gap: batches of children, groups, the pooled share with its interval and the range of a further child.</summary>
internal static class ForestChart
{
    private const string Rows = "rows";
    private const double RowHeight = 15;
    private const double LabelWidth = 215;
    private const double FiguresWidth = 150;

    public static ChartPage? Page(PooledGap gap, string name)
    {
        var shown = gap.Forest.Where(r => r.Share is not null).ToList();
        if (gap.Model.Pooled is not { } pooled || shown.Count == 0) return null;
        var words = $"{ChartWords.Percent(pooled)} kept ({Limits(gap.Model.Low, gap.Model.High)})";
        return new ChartPage
        {
            Name = name,
            Title = $"{gap.Name}: {words}, {ChartWords.Count(gap.Counts?.Children ?? 0, "child", "children")}, {ChartWords.Count(gap.Counts?.Judged ?? 0, "judged session")}",
            AltText = $"Forest plot of the share of {gap.Name.ToLowerInvariant()}s kept. Pooled: {words}; a further child: {Limits(gap.Model.PredictionLow, gap.Model.PredictionHigh)}.",
            SmallPrint = "Squares: children in order of their share, in batches, and groups; bars are 95 % limits. The diamond is the pooled share of a child in the middle; the dashed bar is where a further child's share is expected. Method: " + gap.Model.Method + ".",
            BodyHeight = ((shown.Count + 3) * RowHeight) + 42,
            Body = (ink, body) => Plot(gap, shown).DrawInto(ink, body),
        };
    }

    private static PlotModel Plot(PooledGap gap, List<ForestRow> rows)
    {
        var plot = PlotPanels.Empty(right: FiguresWidth, left: LabelWidth);
        var axis = PlotPanels.NumberAxis("share kept of judged sessions", 0, 1, 0.2);
        axis.LabelFormatter = ChartWords.Percent;
        plot.Axes.Add(axis);
        var side = PlotPanels.SideAxis(Rows, "", -rows.Count - 2.7, 0.7, 1000);
        side.IsAxisVisible = false;
        plot.Axes.Add(side);
        plot.Annotations.Add(new PlotLayer((ink, pen) => Draw(ink, pen, gap, rows), Rows));
        return plot;
    }

    private static void Draw(IRenderContext ink, PlotPen pen, PooledGap gap, List<ForestRow> rows)
    {
        if (gap.Model.Pooled is { } middle) ink.Stroke(pen.X(middle), pen.Top, pen.X(middle), pen.Bottom, ChartColours.Grey, 0.9, [4, 2.5]);
        for (var i = 0; i < rows.Count; i++)
        {
            var (row, y) = (rows[i], pen.Y(-i));
            ink.Text(pen.Left - 8, y, row.Label, across: HorizontalAlignment.Right);
            Bar(ink, pen, y, row.Low, row.High, ChartColours.Black);
            if (row.Share is { } share) ink.Mark(Glyph.Square, pen.X(share), y, 6, ChartColours.Black);
            ink.Text(pen.Right + 8, y, $"{Figures(row.Share, row.Low, row.High)}  n {row.Judged}");
        }

        var at = pen.Y(-rows.Count - 1);
        ink.Text(pen.Left - 8, at, "pooled, a child in the middle", bold: true, across: HorizontalAlignment.Right);
        Diamond(ink, pen, at, gap.Model);
        ink.Text(pen.Right + 8, at, Figures(gap.Model.Pooled, gap.Model.Low, gap.Model.High), bold: true);
        var further = pen.Y(-rows.Count - 2);
        ink.Text(pen.Left - 8, further, "a further child", across: HorizontalAlignment.Right);
        if (gap.Model is { PredictionLow: { } low, PredictionHigh: { } high }) ink.Stroke(pen.X(low), further, pen.X(high), further, ChartColours.Blue, 1.6, [5, 3]);
        ink.Text(pen.Right + 8, further, Limits(gap.Model.PredictionLow, gap.Model.PredictionHigh));
    }

    private static void Bar(IRenderContext ink, PlotPen pen, double y, double? low, double? high, OxyColor colour)
    {
        if (low is not { } from || high is not { } to) return;
        ink.Stroke(pen.X(from), y, pen.X(to), y, colour, 1.2);
        ink.Stroke(pen.X(from), y - 3, pen.X(from), y + 3, colour, 1.2);
        ink.Stroke(pen.X(to), y - 3, pen.X(to), y + 3, colour, 1.2);
    }

    private static void Diamond(IRenderContext ink, PlotPen pen, double y, PooledShare share)
    {
        if (share is not { Pooled: { } middle, Low: { } low, High: { } high }) return;
        ScreenPoint[] corners = [new(pen.X(low), y), new(pen.X(middle), y - 5), new(pen.X(high), y), new(pen.X(middle), y + 5)];
        ink.DrawPolygon(corners, ChartColours.Blue, ChartColours.Blue, 1, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
    }

    private static string Figures(double? share, double? low, double? high) => share is { } value ? $"{ChartWords.Percent(value)} ({Limits(low, high)})" : "";

    private static string Limits(double? low, double? high) => low is { } from && high is { } to ? $"{ChartWords.Number(Math.Round(from * 100))}–{ChartWords.Percent(to)}" : "limits cannot be given";
}
