using OxyPlot;

namespace CareRecords.Workbooks.Charts.Paper;

/// <summary>Plain strokes of the charts over any render context. Lengths are points (1/72 inch) of the printed picture.</summary>
internal static class Ink
{
    /// <summary>Least size of any text, points.</summary>
    public const double SmallText = 9.5;

    private const double HatchStep = 5;

    public static void Text(
        this IRenderContext ink, double x, double y, string text, double size = SmallText, bool bold = false, OxyColor? colour = null,
        HorizontalAlignment across = HorizontalAlignment.Left, VerticalAlignment down = VerticalAlignment.Middle, double rotation = 0) =>
        ink.DrawText(
            new ScreenPoint(x, y), text, colour ?? ChartColours.Black, "", size, bold ? FontWeights.Bold : FontWeights.Normal, rotation, across, down);

    /// <summary>Text on a white ground, so that lines behind it do not cross it.</summary>
    public static void TextOnWhite(
        this IRenderContext ink, double x, double y, string text, double size = SmallText, bool bold = false, OxyColor? colour = null,
        HorizontalAlignment across = HorizontalAlignment.Left)
    {
        var width = ink.Width(text, size, bold);
        var left = across switch { HorizontalAlignment.Center => x - width / 2, HorizontalAlignment.Right => x - width, _ => x };
        ink.Box(left - 1.5, y - size * 0.56, width + 3, size * 1.12, OxyColor.FromAColor(225, OxyColors.White));
        ink.Text(x, y, text, size, bold, colour, across);
    }

    public static double Width(this IRenderContext ink, string text, double size = SmallText, bool bold = false) =>
        ink.MeasureText(text, "", size, bold ? FontWeights.Bold : FontWeights.Normal).Width;

    public static void Stroke(
        this IRenderContext ink, double x1, double y1, double x2, double y2, OxyColor colour, double thickness = 1, double[]? dash = null) =>
        ink.DrawLine([new ScreenPoint(x1, y1), new ScreenPoint(x2, y2)], colour, thickness, EdgeRenderingMode.PreferGeometricAccuracy, dash, LineJoin.Miter);

    public static void Box(
        this IRenderContext ink, double x, double y, double width, double height, OxyColor fill, OxyColor? edge = null, double thickness = 0.8,
        double[]? dash = null)
    {
        if (dash is null)
        {
            ink.DrawRectangle(new OxyRect(x, y, width, height), fill, edge ?? OxyColors.Undefined, edge is null ? 0 : thickness, EdgeRenderingMode.PreferGeometricAccuracy);
            return;
        }
        ScreenPoint[] corners = [new(x, y), new(x + width, y), new(x + width, y + height), new(x, y + height)];
        ink.DrawPolygon(corners, fill, edge ?? OxyColors.Undefined, thickness, EdgeRenderingMode.PreferGeometricAccuracy, dash, LineJoin.Miter);
    }

    /// <summary>A pale box with diagonal lines: told from plain paper in black-and-white print.</summary>
    public static void Hatch(this IRenderContext ink, OxyRect box)
    {
        if (box.Width <= 0 || box.Height <= 0) return;
        ink.DrawRectangle(box, ChartColours.HatchFill, OxyColors.Undefined, 0, EdgeRenderingMode.PreferGeometricAccuracy);
        ink.PushClip(box);
        // Lines start at whole steps of the page, not of the box, so that neighbouring boxes join.
        var first = Math.Floor((box.Left - box.Height) / HatchStep) * HatchStep - box.Bottom % HatchStep;
        var ends = new List<ScreenPoint>();
        for (var x = first; x < box.Right; x += HatchStep)
        {
            ends.Add(new ScreenPoint(x, box.Bottom));
            ends.Add(new ScreenPoint(x + box.Height, box.Top));
        }
        ink.DrawLineSegments(ends, ChartColours.HatchLine, 0.7, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
        ink.PopClip();
    }

    /// <summary>Breaks text into lines that fit a width, at spaces.</summary>
    public static IReadOnlyList<string> Wrap(this IRenderContext ink, string text, double width, double size, bool bold)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && ink.Width(longer, size, bold) > width)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }
        lines.Add(line);
        return lines;
    }
}
