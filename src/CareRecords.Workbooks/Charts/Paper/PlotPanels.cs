using System.Globalization;
using OxyPlot;
using OxyPlot.Axes;

namespace CareRecords.Workbooks.Charts.Paper;

/// <summary>Builds plots of one or more panels over one bottom axis, all in one look.</summary>
internal static class PlotPanels
{
    public const string X = "x";

    /// <summary>An empty plot with fixed margins in points, so that panels and pictures line up.</summary>
    public static PlotModel Empty(double right, double left = 58) => new()
    {
        Culture = CultureInfo.InvariantCulture,
        PlotMargins = new OxyThickness(left, 16, right, 34),
        Padding = new OxyThickness(0),
        PlotAreaBorderThickness = new OxyThickness(0),
        DefaultFontSize = Ink.SmallText,
        TextColor = ChartColours.Black,
        IsLegendVisible = false,
    };

    /// <summary>The bottom axis over care days, a whole number at the middle of each day.</summary>
    public static LinearAxis DayAxis(DayScale days) => Style(new LinearAxis
    {
        Key = X,
        Position = AxisPosition.Bottom,
        Minimum = -0.5,
        Maximum = days.Count - 0.5,
        MajorStep = days.LabelStep,
        MinorStep = days.Count <= 62 ? 1 : days.LabelStep,
        LabelFormatter = days.Label,
        Title = "care day",
    });

    /// <summary>A bottom axis of numbers.</summary>
    public static LinearAxis NumberAxis(string title, double minimum, double maximum, double step) => Style(new LinearAxis
    {
        Key = X,
        Position = AxisPosition.Bottom,
        Minimum = minimum,
        Maximum = maximum,
        MajorStep = step,
        MinorStep = step,
        Title = title,
    });

    /// <summary>A side axis that takes the share <paramref name="from"/> to <paramref name="to"/> of the height, from the bottom up. Above <paramref name="lastTick"/> is room for words.</summary>
    public static LinearAxis SideAxis(string key, string title, double minimum, double maximum, double step, double from = 0, double to = 1, double lastTick = double.PositiveInfinity)
    {
        var axis = Style(new RoomyAxis(lastTick)
        {
            Key = key,
            Position = AxisPosition.Left,
            Minimum = minimum,
            Maximum = maximum,
            MajorStep = step,
            MinorStep = step,
            StartPosition = from,
            EndPosition = to,
            Title = title,
        });
        axis.MajorGridlineStyle = LineStyle.Solid;
        axis.MajorGridlineColor = ChartColours.Grid;
        axis.MajorGridlineThickness = 0.6;
        return axis;
    }

    /// <summary>A step of 1, 2 or 5 (times a power of ten) that gives no more than <paramref name="most"/> labels over a length.</summary>
    public static double Step(double length, int most)
    {
        if (length <= 0 || most <= 0) return 1;
        var power = Math.Pow(10, Math.Floor(Math.Log10(length / most)));
        foreach (var factor in (double[])[1, 2, 5, 10])
        {
            if (length / (factor * power) <= most) return factor * power;
        }
        return 10 * power;
    }

    /// <summary>Draws a plot into a rectangle of the page.</summary>
    public static void DrawInto(this PlotModel plot, IRenderContext ink, OxyRect body)
    {
        ((IPlotModel)plot).Update(true);
        ((IPlotModel)plot).Render(ink, body);
    }

    private static LinearAxis Style(LinearAxis axis)
    {
        axis.FontSize = Ink.SmallText;
        axis.TitleFontSize = Ink.SmallText;
        axis.AxisTitleDistance = 6;
        axis.AxislineStyle = LineStyle.Solid;
        axis.AxislineThickness = 0.8;
        axis.TicklineColor = ChartColours.Black;
        axis.TickStyle = TickStyle.Outside;
        axis.MajorTickSize = 4;
        axis.MinorTickSize = 2;
        axis.MinimumPadding = axis.MaximumPadding = 0;
        return axis;
    }

    /// <summary>An axis that goes on above its last tick.</summary>
    private sealed class RoomyAxis(double lastTick) : LinearAxis
    {
        public override void GetTickValues(out IList<double> majorLabelValues, out IList<double> majorTickValues, out IList<double> minorTickValues)
        {
            base.GetTickValues(out majorLabelValues, out majorTickValues, out minorTickValues);
            majorLabelValues = [.. majorLabelValues.Where(v => v <= lastTick)];
            majorTickValues = [.. majorTickValues.Where(v => v <= lastTick)];
            minorTickValues = [.. minorTickValues.Where(v => v <= lastTick)];
        }
    }
}
