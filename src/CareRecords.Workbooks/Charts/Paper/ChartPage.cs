using CareRecords.Findings;
using OxyPlot;
using OxyPlot.SkiaSharp;
using SkiaSharp;

namespace CareRecords.Workbooks.Charts.Paper;

/// <summary>A sample in the key: how it is drawn, about a centre, and what it means.</summary>
internal sealed record KeyItem(Action<IRenderContext, double, double> Sample, string Meaning, double SampleWidth = 10)
{
    public static KeyItem Of(Glyph glyph, OxyColor colour, string meaning, double size = 6) =>
        new((ink, x, y) => ink.Mark(glyph, x, y, size, colour), meaning);

    public static KeyItem Line(OxyColor colour, string meaning, double[]? dash = null, double thickness = 1.6) =>
        new((ink, x, y) => ink.Stroke(x - 12, y, x + 12, y, colour, thickness, dash), meaning, 26);

    public static KeyItem Box(OxyColor fill, OxyColor edge, string meaning) =>
        new((ink, x, y) => ink.Box(x - 8, y - 4, 16, 8, fill, edge), meaning, 18);

    /// <summary>Illness days, the same in every chart; none when there were none.</summary>
    public static IReadOnlyList<KeyItem> Illness(ChildFindings findings)
    {
        foreach (var day in findings.Days)
        {
            if (day.Episode is not null) return [IllnessDays];
        }
        return [];
    }

    private static KeyItem IllnessDays { get; } =
        new((ink, x, y) => ink.Hatch(new OxyRect(x - 9, y - 5, 18, 10)), "illness days", 20);
}

/// <summary>
/// A chart on its page: title in words, one line of small print, the key, and the body below. Sizes are points of the printed picture.
/// </summary>
internal sealed record ChartPage
{
    public const double FullWidth = 720;
    private const double Margin = 8;
    private const double TitleSize = 13;
    private const double KeyRow = 14;

    public required string Name { get; init; }
    public required string Title { get; init; }
    public required string AltText { get; init; }

    /// <summary>How it was counted, sample sizes, definitions; empty for none.</summary>
    public string SmallPrint { get; init; } = "";

    public IReadOnlyList<KeyItem> Key { get; init; } = [];
    public double Width { get; init; } = FullWidth;
    public required double BodyHeight { get; init; }

    /// <summary>Draws into the rectangle under the heading.</summary>
    public required Action<IRenderContext, OxyRect> Body { get; init; }

    private const double Scale = DrawnChart.PixelsPerInch / 72.0;

    /// <summary>Lays the page out; the picture is drawn when it is asked for.</summary>
    public DrawnChart Draw()
    {
        EmbeddedFontContext.LoadFonts();
        using var context = Paper();
        var heading = HeadingHeight(context);
        var (wide, high) = ((int)Math.Round(Width * Scale), (int)Math.Round((heading + BodyHeight) * Scale));
        return new DrawnChart(Name, new Lazy<byte[]>(() => Png(heading, wide, high)), wide, high, AltText, Title);
    }

    /// <summary>Lays pages out and begins to draw them in their order beside whatever else is done, which keeps a processor for itself; nothing has to wait for it.</summary>
    public static IReadOnlyList<DrawnChart> DrawAll(IEnumerable<ChartPage> pages)
    {
        List<DrawnChart> charts = [.. pages.Select(page => page.Draw())];
        var next = -1;
        for (var i = 0; i < Math.Max(1, Environment.ProcessorCount - 1); i++)
            _ = Task.Run(() =>
            {
                // A picture that cannot be drawn says so to whoever asks for it.
                while (Interlocked.Increment(ref next) is var at && at < charts.Count) _ = charts[at].Png;
            });
        return charts;
    }

    private byte[] Png(double heading, int wide, int high)
    {
        using var context = Paper();
        using var pixels = new BorrowedPixels(wide, high);
        using var bitmap = new SKBitmap();
        bitmap.InstallPixels(pixels.Pixmap);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        context.SkCanvas = canvas;
        Heading(context, draw: true);
        Body(context, new OxyRect(0, heading, Width, BodyHeight));
        canvas.Flush();
        return Encode(pixels.Pixmap);
    }

    private static EmbeddedFontContext Paper() => new() { RenderTarget = RenderTarget.PixelGraphic, UseTextShaping = false, DpiScale = (float)Scale };

    private double HeadingHeight(EmbeddedFontContext context) => Heading(context, draw: false);

    /// <summary>Lays out, and draws if asked, the title, the small print and the key; returns the height taken.</summary>
    private double Heading(IRenderContext ink, bool draw)
    {
        var y = Margin;
        foreach (var line in ink.Wrap(Title, Width - 2 * Margin, TitleSize, bold: true))
        {
            if (draw) ink.Text(Margin, y, line, TitleSize, bold: true, down: VerticalAlignment.Top);
            y += TitleSize * 1.25;
        }
        if (SmallPrint.Length > 0)
        {
            y += 1;
            foreach (var line in ink.Wrap(SmallPrint, Width - 2 * Margin, Ink.SmallText, bold: false))
            {
                if (draw) ink.Text(Margin, y, line, down: VerticalAlignment.Top);
                y += Ink.SmallText * 1.25;
            }
        }
        return Key.Count == 0 ? y + 4 : KeyRows(ink, y + 3, draw) + 4;
    }

    private double KeyRows(IRenderContext ink, double y, bool draw)
    {
        var x = Margin;
        foreach (var item in Key)
        {
            var width = item.SampleWidth + 4 + ink.Width(item.Meaning);
            if (x > Margin && x + width > Width - Margin)
            {
                x = Margin;
                y += KeyRow;
            }
            if (draw)
            {
                item.Sample(ink, x + item.SampleWidth / 2, y + KeyRow / 2);
                ink.Text(x + item.SampleWidth + 4, y + KeyRow / 2, item.Meaning);
            }
            x += width + 14;
        }
        return y + KeyRow;
    }

    // Rows of a chart are mostly the row above: that one filter is as small as all of them and three times as fast as none.
    private static byte[] Encode(SKPixmap pixels)
    {
        using var data = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.Up, 3));
        return data.ToArray();
    }
}
