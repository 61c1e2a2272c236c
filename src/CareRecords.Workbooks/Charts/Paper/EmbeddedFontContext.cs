using OxyPlot;
using OxyPlot.SkiaSharp;
using SkiaSharp;

namespace CareRecords.Workbooks.Charts.Paper;

/// <summary>
/// Draws text with the fonts inside this assembly, so that a machine without fonts, or with others, gives the same legible picture.
/// Naming <see cref="IRenderContext"/> again re-maps the interface's two text members; everything else is OxyPlot's.
/// </summary>
internal sealed class EmbeddedFontContext : SkiaRenderContext, IRenderContext
{
    private const double BoldFrom = 600;
    private static readonly Lazy<SKTypeface> Regular = new(() => Load("DejaVuSans.ttf"));
    private static readonly Lazy<SKTypeface> Bold = new(() => Load("DejaVuSans-Bold.ttf"));
    private readonly SKPaint _paint = new() { IsAntialias = true };

    /// <summary>
    /// Loads both fonts, and with them SkiaSharp's own statics. Its static constructors call one another, so they are run once on
    /// one thread before several threads draw.
    /// </summary>
    public static void LoadFonts()
    {
        _ = Regular.Value;
        _ = Bold.Value;
    }

    void IRenderContext.DrawText(
        ScreenPoint p, string text, OxyColor fill, string? fontFamily, double fontSize, double fontWeight, double rotation,
        HorizontalAlignment horizontalAlignment, VerticalAlignment verticalAlignment, OxySize? maxSize)
    {
        if (string.IsNullOrEmpty(text) || fill.IsInvisible()) return;
        var lineHeight = Prepare(fontSize, fontWeight, out var metrics);
        _paint.Color = new SKColor(fill.R, fill.G, fill.B, fill.A);
        _paint.TextAlign = horizontalAlignment switch
        {
            HorizontalAlignment.Center => SKTextAlign.Center,
            HorizontalAlignment.Right => SKTextAlign.Right,
            _ => SKTextAlign.Left,
        };
        var lines = text.Split('\n');
        var y = verticalAlignment switch
        {
            VerticalAlignment.Top => -metrics.Ascent,
            VerticalAlignment.Middle => -(metrics.Ascent + metrics.Descent + lineHeight * (lines.Length - 1)) / 2,
            _ => -metrics.Descent - lineHeight * (lines.Length - 1),
        };
        SkCanvas.Save();
        SkCanvas.Translate((float)(p.X * DpiScale), (float)(p.Y * DpiScale));
        SkCanvas.RotateDegrees((float)rotation);
        foreach (var line in lines)
        {
            SkCanvas.DrawText(line, 0, y, _paint);
            y += lineHeight;
        }
        SkCanvas.Restore();
    }

    OxySize IRenderContext.MeasureText(string text, string? fontFamily, double fontSize, double fontWeight)
    {
        if (string.IsNullOrEmpty(text)) return OxySize.Empty;
        var lineHeight = Prepare(fontSize, fontWeight, out _);
        var (widest, lines) = (0f, 0);
        foreach (var line in text.Split('\n'))
        {
            widest = Math.Max(widest, _paint.MeasureText(line));
            lines++;
        }
        return new OxySize(widest / DpiScale, lineHeight * lines / DpiScale);
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing) _paint.Dispose();
        base.Dispose(disposing);
    }

    private float Prepare(double size, double weight, out SKFontMetrics metrics)
    {
        _paint.Typeface = (weight >= BoldFrom ? Bold : Regular).Value;
        _paint.TextSize = (float)(size * DpiScale);
        return _paint.GetFontMetrics(out metrics);
    }

    private static SKTypeface Load(string file)
    {
        using var stream = typeof(EmbeddedFontContext).Assembly.GetManifestResourceStream("CareRecords.Workbooks.Fonts." + file)
            ?? throw new InvalidOperationException("The fonts are built into this assembly.");
        using var data = SKData.Create(stream);
        return SKTypeface.FromData(data);
    }
}
