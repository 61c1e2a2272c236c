using OxyPlot;

namespace CareRecords.Workbooks.Charts.Paper;

/// <summary>Marks told apart by shape alone; each has its own colour beside it.</summary>
internal enum Glyph
{
    /// <summary>Filled circle, blue: kept, or at usual oxygen.</summary>
    Dot,

    /// <summary>Hollow circle.</summary>
    Ring,

    /// <summary>Two strokes, vermilion: short, or a setback.</summary>
    Cross,

    /// <summary>A question mark, black: cannot tell.</summary>
    Question,

    /// <summary>Filled triangle on its base.</summary>
    TriangleUp,

    /// <summary>Hollow triangle on its base.</summary>
    HollowTriangleUp,

    /// <summary>Filled triangle on its point.</summary>
    TriangleDown,

    /// <summary>Hollow triangle on its point.</summary>
    HollowTriangleDown,

    /// <summary>Filled square.</summary>
    Square,

    /// <summary>Hollow square.</summary>
    HollowSquare,

    /// <summary>Hollow diamond.</summary>
    HollowDiamond,

    /// <summary>Upright cross: a reading without its oxygen.</summary>
    Plus,

    /// <summary>Short level stroke: none written.</summary>
    Dash,
}

/// <summary>Draws the marks.</summary>
internal static class Glyphs
{
    private const EdgeRenderingMode Exact = EdgeRenderingMode.PreferGeometricAccuracy;

    /// <summary>Draws a mark about its centre; <paramref name="size"/> is its width in points.</summary>
    public static void Mark(this IRenderContext ink, Glyph glyph, double x, double y, double size, OxyColor colour)
    {
        var r = size / 2;
        switch (glyph)
        {
            case Glyph.Dot:
                ink.DrawEllipse(new OxyRect(x - r, y - r, size, size), colour, OxyColors.Undefined, 0, Exact);
                break;
            case Glyph.Ring:
                ink.DrawEllipse(new OxyRect(x - r, y - r, size, size), OxyColors.White, colour, 1.1, Exact);
                break;
            case Glyph.Cross:
                ink.Stroke(x - r, y - r, x + r, y + r, colour, 1.9);
                ink.Stroke(x - r, y + r, x + r, y - r, colour, 1.9);
                break;
            case Glyph.Plus:
                ink.Stroke(x - r, y, x + r, y, colour, 1.2);
                ink.Stroke(x, y - r, x, y + r, colour, 1.2);
                break;
            case Glyph.Dash:
                ink.Stroke(x - r, y, x + r, y, colour, 2.2);
                break;
            case Glyph.Question:
                ink.Text(x, y, "?", Math.Max(Ink.SmallText, size * 1.3), bold: true, colour, HorizontalAlignment.Center);
                break;
            case Glyph.TriangleUp or Glyph.HollowTriangleUp:
                Polygon(ink, [new(x, y - r), new(x + r, y + r), new(x - r, y + r)], glyph == Glyph.TriangleUp, colour);
                break;
            case Glyph.TriangleDown or Glyph.HollowTriangleDown:
                Polygon(ink, [new(x, y + r), new(x + r, y - r), new(x - r, y - r)], glyph == Glyph.TriangleDown, colour);
                break;
            case Glyph.Square or Glyph.HollowSquare:
                Polygon(ink, [new(x - r, y - r), new(x + r, y - r), new(x + r, y + r), new(x - r, y + r)], glyph == Glyph.Square, colour);
                break;
            case Glyph.HollowDiamond:
                Polygon(ink, [new(x, y - r * 1.3), new(x + r * 1.3, y), new(x, y + r * 1.3), new(x - r * 1.3, y)], filled: false, colour);
                break;
        }
    }

    private static void Polygon(IRenderContext ink, ScreenPoint[] corners, bool filled, OxyColor colour) =>
        ink.DrawPolygon(corners, filled ? colour : OxyColors.White, colour, 1.1, Exact, null, LineJoin.Miter);
}
