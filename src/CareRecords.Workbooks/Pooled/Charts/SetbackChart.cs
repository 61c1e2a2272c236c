using CareRecords.Pooling;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;

namespace CareRecords.Workbooks.Pooled.Charts;

/// <summary>Share of steps down followed by a setback, by hours stable before.</summary>
internal static class SetbackChart
{
    private const string Share = "share";

    public static ChartPage? Page(PooledSetbacks setbacks)
    {
        var shown = setbacks.Bands.Where(b => b.Share is not null).ToList();
        if (shown.Count == 0) return null;
        var words = string.Join("; ", shown.Select(b => $"{b.Label}: {ChartWords.Percent(b.Share ?? 0)} of {b.Steps}"));
        return new ChartPage
        {
            Name = "setbacks",
            Title = "Setbacks within seven days of a step down, by hours stable before",
            AltText = $"Share of steps down followed by a setback: {words}.",
            SmallPrint = "Bars are 95 % limits with the child as the unit. Families chose when to step down; the figures say what followed, not what it came from. Bands with too few children are kept back.",
            BodyHeight = 230,
            Body = (ink, body) => Plot(shown).DrawInto(ink, body),
        };
    }

    private static PlotModel Plot(List<SetbackBand> bands)
    {
        var plot = PlotPanels.Empty(right: 40);
        var axis = PlotPanels.NumberAxis("hours stable before the step", -0.5, bands.Count - 0.5, 1);
        axis.LabelFormatter = v => v == Math.Round(v) && v >= 0 && v < bands.Count ? bands[(int)v].Label : "";
        plot.Axes.Add(axis);
        var side = PlotPanels.SideAxis(Share, "followed by a setback", 0, 1, 0.25);
        side.LabelFormatter = ChartWords.Percent;
        plot.Axes.Add(side);
        plot.Annotations.Add(new PlotLayer((ink, pen) => Draw(ink, pen, bands), Share));
        return plot;
    }

    private static void Draw(IRenderContext ink, PlotPen pen, List<SetbackBand> bands)
    {
        for (var i = 0; i < bands.Count; i++)
        {
            var x = pen.X(i);
            if (bands[i] is { Low: { } low, High: { } high })
            {
                ink.Stroke(x, pen.Y(low), x, pen.Y(high), ChartColours.Blue, 1.6);
                ink.Stroke(x - 4, pen.Y(low), x + 4, pen.Y(low), ChartColours.Blue, 1.6);
                ink.Stroke(x - 4, pen.Y(high), x + 4, pen.Y(high), ChartColours.Blue, 1.6);
            }

            if (bands[i].Share is { } share) ink.Mark(Glyph.Square, x, pen.Y(share), 7, ChartColours.Blue);
            ink.Text(x + 9, pen.Top + 8, FormattableString.Invariant($"{bands[i].Setbacks} of {bands[i].Steps} steps, {bands[i].Children} children"));
        }
    }
}
