namespace CareRecords.Workbooks.Charts;

/// <summary>A chart drawn as a picture, 180 pixels to the inch: 1800 pixels are meant to be printed 254 mm wide, where no text is under 9 pt.</summary>
/// <param name="Name">A stable name for relationship ids and lists ("days-1", "saturation"): lower-case letters, digits and hyphens.</param>
/// <param name="Drawing">The picture, drawn when it is first asked for: its size is known before, so that sheets need not wait for it.</param>
/// <param name="WidthPixels">Width in pixels.</param>
/// <param name="HeightPixels">Height in pixels.</param>
/// <param name="AltText">What the chart tells, in a sentence or two.</param>
/// <param name="Title">What is seen, with its counts; the same words as stand in the picture.</param>
public sealed record DrawnChart(string Name, Lazy<byte[]> Drawing, int WidthPixels, int HeightPixels, string AltText, string Title)
{
    /// <summary>The picture as PNG, the same bytes for the same findings. Drawn now, or waited for where another thread draws it.</summary>
    public byte[] Png => Drawing.Value;

    /// <summary>Pixels to the inch at which the picture is meant to be printed.</summary>
    public const int PixelsPerInch = 180;
}
