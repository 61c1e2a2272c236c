using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace CareRecords.Workbooks.Charts.Paper;

/// <summary>A layer of a plot drawn in its axes' own values by a plain function: whiskers, bands, labels and marks that OxyPlot has no series for.</summary>
internal sealed class PlotLayer : Annotation
{
    private readonly Action<IRenderContext, PlotPen> _draw;

    public PlotLayer(Action<IRenderContext, PlotPen> draw, string yAxis, AnnotationLayer layer = AnnotationLayer.AboveSeries)
    {
        (_draw, XAxisKey, YAxisKey, Layer) = (draw, PlotPanels.X, yAxis, layer);
    }

    public override void Render(IRenderContext rc) => _draw(rc, new PlotPen(Set(XAxis), Set(YAxis)));

    /// <summary>Nothing is clipped: labels stand in the margins beside their lines.</summary>
    public override OxyRect GetClippingRect() => OxyRect.Everything;

    private static Axis Set(Axis? axis) => axis ?? throw new InvalidOperationException("A layer belongs to a plot that has its axes.");
}

/// <summary>Turns a panel's values into points of the page.</summary>
internal readonly struct PlotPen(Axis x, Axis y)
{
    public double Left => X(x.ActualMinimum);
    public double Right => X(x.ActualMaximum);
    public double Top => Y(y.ActualMaximum);
    public double Bottom => Y(y.ActualMinimum);
    public double X(double value) => x.Transform(value);
    public double Y(double value) => y.Transform(value);
}
