using A = DocumentFormat.OpenXml.Drawing;
using C = DocumentFormat.OpenXml.Drawing.Charts;

namespace CareRecords.Workbooks.Charts.Native;

/// <summary>Text of native charts. Sizes are hundredths of a point.</summary>
internal static class TextXml
{
    public const int TitleSize = 1100;
    public const int SmallSize = 900;
    private const int QuarterTurn = -5400000;

    public static C.Title Title(string text, int size, bool bold, bool quarterTurn = false) => new(
        new C.ChartText(new C.RichText(
            quarterTurn ? new A.BodyProperties { Rotation = QuarterTurn, Vertical = A.TextVerticalValues.Horizontal } : new A.BodyProperties(),
            new A.ListStyle(),
            new A.Paragraph(
                new A.ParagraphProperties(Black(new A.DefaultRunProperties { FontSize = size, Bold = bold })),
                new A.Run(new A.RunProperties(Fill()) { Language = "en-GB", FontSize = size, Bold = bold }, new A.Text(text))))),
        new C.Overlay { Val = false });

    public static C.TextProperties Properties(int size) => new(
        new A.BodyProperties(),
        new A.ListStyle(),
        new A.Paragraph(
            new A.ParagraphProperties(Black(new A.DefaultRunProperties { FontSize = size, Bold = false })),
            new A.EndParagraphRunProperties { Language = "en-GB" }));

    private static A.DefaultRunProperties Black(A.DefaultRunProperties properties)
    {
        properties.Append(Fill());
        return properties;
    }

    private static A.SolidFill Fill() => new(new A.RgbColorModelHex { Val = "000000" });
}
