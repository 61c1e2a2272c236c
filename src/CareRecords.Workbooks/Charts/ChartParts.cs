using CareRecords.Workbooks.Building;
using CareRecords.Workbooks.Charts.Native;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using A = DocumentFormat.OpenXml.Drawing;
using C = DocumentFormat.OpenXml.Drawing.Charts;
using Xdr = DocumentFormat.OpenXml.Drawing.Spreadsheet;

namespace CareRecords.Workbooks.Charts;

/// <summary>Puts pictures and native charts on a worksheet through the Open XML SDK, with relationship ids that do not change from run to run.</summary>
public static class ChartParts
{
    private const double EmuPerMillimetre = 36000;

    /// <summary>
    /// Adds the place of a drawn chart with its alternative text. The picture itself is left to whoever packs the parts: it may still be drawn, and
    /// through the SDK its megabytes would be packed, unpacked and packed again.
    /// </summary>
    /// <returns>The name of the empty part that the picture belongs in.</returns>
    /// <exception cref="ArgumentException">The sheet already has a picture of this name.</exception>
    public static string AddPicture(WorksheetPart sheet, DrawnChart chart, ChartAnchor anchor)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentNullException.ThrowIfNull(anchor);
        var drawing = DrawingOf(sheet);
        var id = Unused(drawing, "picture-" + chart.Name);
        var image = drawing.AddImagePart(ImagePartType.Png, id);
        var picture = new Xdr.Picture(
            new Xdr.NonVisualPictureProperties(
                Named(drawing, chart.Name, chart.AltText),
                new Xdr.NonVisualPictureDrawingProperties(new A.PictureLocks { NoChangeAspect = true })),
            new Xdr.BlipFill(new A.Blip { Embed = id }, new A.Stretch(new A.FillRectangle())),
            new Xdr.ShapeProperties(
                new A.Transform2D(new A.Offset { X = 0, Y = 0 }, new A.Extents { Cx = Emu(anchor.WidthMillimetres), Cy = Emu(anchor.HeightMillimetres) }),
                new A.PresetGeometry(new A.AdjustValueList()) { Preset = A.ShapeTypeValues.Rectangle }));
        Place(drawing, picture, anchor);
        return image.Uri.OriginalString.TrimStart('/');
    }

    /// <summary>Adds a native chart with its alternative text and its present values.</summary>
    /// <exception cref="ArgumentException">The chart has no series, or the sheet already has a chart of this name.</exception>
    public static void AddNativeChart(WorksheetPart sheet, NativeChart chart, ChartAnchor anchor)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentNullException.ThrowIfNull(anchor);
        if (chart.Series.Count == 0) throw new ArgumentException("A chart has one series at least.", nameof(chart));
        var drawing = DrawingOf(sheet);
        var id = Unused(drawing, "chart-" + chart.Name);
        var part = drawing.AddNewPart<ChartPart>(id);
        part.ChartSpace = ChartXml.Of(chart);
        part.ChartSpace.Save();
        var frame = new Xdr.GraphicFrame(
            new Xdr.NonVisualGraphicFrameProperties(Named(drawing, chart.Name, chart.AltText), new Xdr.NonVisualGraphicFrameDrawingProperties()),
            new Xdr.Transform(new A.Offset { X = 0, Y = 0 }, new A.Extents { Cx = 0, Cy = 0 }),
            new A.Graphic(new A.GraphicData(new C.ChartReference { Id = id }) { Uri = "http://schemas.openxmlformats.org/drawingml/2006/chart" }))
        {
            Macro = "",
        };
        Place(drawing, frame, anchor);
    }

    private static DrawingsPart DrawingOf(WorksheetPart sheet)
    {
        if (sheet.DrawingsPart is { } existing) return existing;
        const string id = "drawing-charts";
        var drawing = sheet.AddNewPart<DrawingsPart>(id);
        drawing.WorksheetDrawing = new Xdr.WorksheetDrawing();
        drawing.WorksheetDrawing.AddNamespaceDeclaration("a", "http://schemas.openxmlformats.org/drawingml/2006/main");
        var element = new Drawing { Id = id };
        foreach (var child in sheet.Worksheet.ChildElements)
        {
            if (!StandsAfterDrawing(child)) continue;
            sheet.Worksheet.InsertBefore(element, child);
            return drawing;
        }
        sheet.Worksheet.Append(element);
        return drawing;
    }

    /// <summary>The elements that the schema of a worksheet puts behind the drawing.</summary>
    private static bool StandsAfterDrawing(OpenXmlElement element) => element is LegacyDrawing or LegacyDrawingHeaderFooter
        or DrawingHeaderFooter or Picture or OleObjects or Controls or WebPublishItems or TableParts or WorksheetExtensionList;

    private static string Unused(DrawingsPart drawing, string id)
    {
        foreach (var part in drawing.Parts)
        {
            if (part.RelationshipId == id) throw new ArgumentException($"The sheet already has {id}.", nameof(id));
        }
        return id;
    }

    private static Xdr.NonVisualDrawingProperties Named(DrawingsPart drawing, string name, string altText) =>
        new() { Id = (uint)drawing.WorksheetDrawing.ChildElements.Count + 2, Name = name, Description = CellText.Fit(altText) };

    private static void Place(DrawingsPart drawing, OpenXmlElement content, ChartAnchor anchor)
    {
        var from = new Xdr.FromMarker(
            new Xdr.ColumnId(Text(anchor.Column - 1)), new Xdr.ColumnOffset("0"), new Xdr.RowId(Text(anchor.Row - 1)), new Xdr.RowOffset("0"));
        var size = new Xdr.Extent { Cx = Emu(anchor.WidthMillimetres), Cy = Emu(anchor.HeightMillimetres) };
        drawing.WorksheetDrawing.Append(new Xdr.OneCellAnchor(from, size, content, new Xdr.ClientData()));
    }

    private static long Emu(double millimetres) => (long)Math.Round(millimetres * EmuPerMillimetre);

    private static string Text(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
