using OxyPlot;

namespace CareRecords.Workbooks.Charts.Paper;

/// <summary>
/// The colours of the charts (Okabe and Ito, Color Universal Design, 2008). Text is black or blue; lines and markers are blue,
/// vermilion or green, which hold 3:1 on white (WCAG 2.2, 1.4.11); the light ones are fills with a dark edge only.
/// </summary>
internal static class ChartColours
{
    public static readonly OxyColor Black = OxyColors.Black;
    public static readonly OxyColor Blue = OxyColor.FromRgb(0x00, 0x72, 0xB2);
    public static readonly OxyColor Vermilion = OxyColor.FromRgb(0xD5, 0x5E, 0x00);
    public static readonly OxyColor Green = OxyColor.FromRgb(0x00, 0x9E, 0x73);

    /// <summary>Sky blue thinned to a background: only behind black text and dark edges.</summary>
    public static readonly OxyColor SkyWash = OxyColor.FromRgb(0xDD, 0xEF, 0xFA);

    /// <summary>Grey of edges and small print's rules; 4.5:1 on white, so that it may carry text too.</summary>
    public static readonly OxyColor Grey = OxyColor.FromRgb(0x59, 0x59, 0x59);

    public static readonly OxyColor Grid = OxyColor.FromRgb(0xDD, 0xDD, 0xDD);
    public static readonly OxyColor HatchFill = OxyColor.FromRgb(0xF3, 0xF3, 0xF3);
    public static readonly OxyColor HatchLine = OxyColor.FromRgb(0xC4, 0xC4, 0xC4);
}
