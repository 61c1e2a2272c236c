using CareRecords.Workbooks.Charts;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;
using OxyPlot.SkiaSharp;
using SkiaSharp;

namespace CareRecords.Workbooks.Tests.Charts;

[Collection("pictures")] // One at a time: each draws on every processor already.
public sealed class EmbeddedFontTests
{
    private const string Words = "Feed gap kept ≥ 30 min – 94 % (é, µ, ×, →)";

    [Theory]
    [InlineData(false, "DejaVuSans.ttf")]
    [InlineData(true, "DejaVuSans-Bold.ttf")]
    public void Text_is_the_ink_of_the_fonts_inside_the_assembly_and_of_no_other(bool bold, string file)
    {
        using var drawn = Draw(canvas =>
        {
            using var context = new EmbeddedFontContext { RenderTarget = RenderTarget.PixelGraphic, UseTextShaping = false, SkCanvas = canvas };
            IRenderContext ink = context;
            ink.DrawText(new ScreenPoint(10, 10), Words, OxyColors.Black, "no such family", 20, bold ? 700 : 400, 0, OxyPlot.HorizontalAlignment.Left, OxyPlot.VerticalAlignment.Top, null);
        });
        using var expected = Draw(canvas =>
        {
            using var typeface = TypefaceOf(file);
            using var paint = new SKPaint { Typeface = typeface, TextSize = 20, IsAntialias = true, Color = SKColors.Black };
            paint.GetFontMetrics(out var metrics);
            canvas.DrawText(Words, 10, 10 - metrics.Ascent, paint);
        });
        Assert.True(Ink(expected, new SKRectI(0, 0, expected.Width, expected.Height)) > 800, "the font itself draws ink");
        Assert.True(drawn.Bytes.AsSpan().SequenceEqual(expected.Bytes));
    }

    [Theory]
    [InlineData("DejaVuSans.ttf")]
    [InlineData("DejaVuSans-Bold.ttf")]
    public void The_fonts_have_every_character_that_the_charts_write(string file)
    {
        using var typeface = TypefaceOf(file);
        Assert.All("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,;:?!%()/–…≥≤±×→éøµ\u00A0", c => Assert.NotEqual(0, typeface.GetGlyphs(c.ToString())[0]));
    }

    [Fact]
    public void Every_chart_has_ink_where_its_title_stands()
    {
        var (log, findings) = InventedMonth.Of();
        foreach (var chart in ReviewCharts.DrawAll(log, findings))
        {
            using var bitmap = SKBitmap.Decode(chart.Png);
            Assert.Equal((chart.WidthPixels, chart.HeightPixels), (bitmap.Width, bitmap.Height));
            Assert.True(Ink(bitmap, new SKRectI(0, 0, bitmap.Width, 70)) > 2000, $"{chart.Name} has a title");
        }
    }

    private static SKTypeface TypefaceOf(string file)
    {
        using var stream = typeof(DrawnChart).Assembly.GetManifestResourceStream("CareRecords.Workbooks.Fonts." + file);
        Assert.NotNull(stream);
        using var data = SKData.Create(stream);
        return SKTypeface.FromData(data);
    }

    private static SKBitmap Draw(Action<SKCanvas> draw)
    {
        var bitmap = new SKBitmap(new SKImageInfo(640, 60, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        draw(canvas);
        canvas.Flush();
        return bitmap;
    }

    private static int Ink(SKBitmap bitmap, SKRectI area)
    {
        var dark = 0;
        for (var y = area.Top; y < area.Bottom; y++)
        {
            for (var x = area.Left; x < area.Right; x++)
            {
                if (bitmap.GetPixel(x, y).Red < 100) dark++;
            }
        }
        return dark;
    }
}
