using System.Globalization;
using System.Text;
using System.Xml.Linq;
using CareRecords.Workbooks.Building;
using CareRecords.Workbooks.Charts;
using CareRecords.Workbooks.Charts.Native;
using CareRecords.Workbooks.Sheets;

namespace CareRecords.Workbooks.Finishing;

/// <summary>
/// The pictures and native charts of a sheet, which the workbook library cannot write, as parts of the package: the drawing that places them (ECMA-376
/// part 1, 20.5), its relationships, the charts. A picture may still be drawn: its part waits for it.
/// </summary>
internal sealed class SheetDrawing
{
    /// <summary>The id by which the sheet refers to its drawing; these ids do not change from run to run.</summary>
    public const string Id = "drawing-charts";

    private const string Part = "xl/drawings/drawing1.xml";
    private const double EmuPerMillimetre = 36000;

    private static readonly XNamespace Xdr = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
    private static readonly XNamespace A = "http://schemas.openxmlformats.org/drawingml/2006/main";
    private static readonly XNamespace C = "http://schemas.openxmlformats.org/drawingml/2006/chart";
    private static readonly XNamespace R = PackageXml.Office;

    private readonly Dictionary<string, Action<Stream>> _parts = [];
    private readonly List<(string Name, string Type)> _types = [];
    private readonly XElement _drawing = new(Xdr + "wsDr", Prefix("xdr", Xdr), Prefix("a", A), Prefix("r", R));
    private readonly XElement _relations = new(PackageXml.Relations + "Relationships");
    private readonly HashSet<string> _names = [];
    private readonly List<DrawnChart> _pictures = [];
    private int _charts;

    private SheetDrawing()
    {
    }

    /// <summary>How each part is written, by its name.</summary>
    public IReadOnlyDictionary<string, Action<Stream>> Parts => _parts;

    /// <summary>Adds what the package's list of content types has to say of them.</summary>
    public void AddContentTypes(XElement types)
    {
        if (_pictures.Count > 0) types.AddFirst(new XElement(PackageXml.Types + "Default", new XAttribute("Extension", "png"), new XAttribute("ContentType", "image/png")));
        types.Add(_types.Select(t => new XElement(PackageXml.Types + "Override", new XAttribute("PartName", "/" + t.Name), new XAttribute("ContentType", t.Type))));
    }

    /// <summary>What the sheet's relationships have to say of it.</summary>
    public static XElement Relationship => PackageXml.Relationship(Id, PackageXml.Office + "/drawing", Part);

    /// <exception cref="ArgumentException">Two of them have the same name, or a chart has no series.</exception>
    public static SheetDrawing Of(IReadOnlyList<PlacedChart> charts)
    {
        var made = new SheetDrawing();
        foreach (var chart in charts)
        {
            if (chart.Drawn is { } drawn) made.Add(drawn, chart.Anchor);
            if (chart.Native is { } native) made.Add(native, chart.Anchor);
        }

        if (charts.Count == 0) return made;
        made._types.Add((Part, "application/vnd.openxmlformats-officedocument.drawing+xml"));
        made._parts[Part] = stream => PackageXml.Write(stream, made._drawing.WriteTo);
        made._parts[PackageXml.RelationsOf(Part)] = stream => PackageXml.Write(stream, made._relations.WriteTo);
        return made;
    }

    private void Add(DrawnChart chart, ChartAnchor anchor)
    {
        var id = Unused("picture-" + chart.Name);
        _pictures.Add(chart);
        var part = FormattableString.Invariant($"xl/media/image{_pictures.Count}.png");
        _parts[part] = stream =>
        {
            // Pictures are packed last. What is not drawn by then is drawn here too, from the last one back, until both meet.
            for (var i = _pictures.Count - 1; i >= 0; i--) _ = _pictures[i].Png;
            stream.Write(chart.Png);
        };
        _relations.Add(PackageXml.Relationship(id, PackageXml.Office + "/image", part));
        Place(anchor, new XElement(Xdr + "pic",
            new XElement(Xdr + "nvPicPr", Named(chart.Name, chart.AltText), new XElement(Xdr + "cNvPicPr", new XElement(A + "picLocks", new XAttribute("noChangeAspect", 1)))),
            new XElement(Xdr + "blipFill", new XElement(A + "blip", new XAttribute(R + "embed", id)), new XElement(A + "stretch", new XElement(A + "fillRect"))),
            new XElement(Xdr + "spPr",
                new XElement(A + "xfrm", Offset(A), Size(A + "ext", anchor.WidthMillimetres, anchor.HeightMillimetres)),
                new XElement(A + "prstGeom", new XAttribute("prst", "rect"), new XElement(A + "avLst")))));
    }

    private void Add(NativeChart chart, ChartAnchor anchor)
    {
        if (chart.Series.Count == 0) throw new ArgumentException("A chart has one series at least.", nameof(chart));
        var id = Unused("chart-" + chart.Name);
        var part = FormattableString.Invariant($"xl/charts/chart{++_charts}.xml");
        var text = Encoding.UTF8.GetBytes("<?xml version=\"1.0\" encoding=\"utf-8\"?>" + ChartXml.Of(chart).OuterXml);
        _parts[part] = stream => stream.Write(text);
        _types.Add((part, "application/vnd.openxmlformats-officedocument.drawingml.chart+xml"));
        _relations.Add(PackageXml.Relationship(id, PackageXml.Office + "/chart", part));
        Place(anchor, new XElement(Xdr + "graphicFrame", new XAttribute("macro", ""),
            new XElement(Xdr + "nvGraphicFramePr", Named(chart.Name, chart.AltText), new XElement(Xdr + "cNvGraphicFramePr")),
            new XElement(Xdr + "xfrm", Offset(A), Size(A + "ext", 0, 0)),
            new XElement(A + "graphic", new XElement(A + "graphicData", new XAttribute("uri", C.NamespaceName), new XElement(C + "chart", Prefix("c", C), new XAttribute(R + "id", id))))));
    }

    private string Unused(string id) => _names.Add(id) ? id : throw new ArgumentException($"The sheet already has {id}.", nameof(id));

    private XElement Named(string name, string altText) =>
        new(Xdr + "cNvPr", new XAttribute("id", _names.Count + 1), new XAttribute("name", name), new XAttribute("descr", CellText.Fit(altText)));

    private void Place(ChartAnchor anchor, XElement content) => _drawing.Add(anchor.FromEdges is { } edges
        ? new XElement(Xdr + "absoluteAnchor", new XElement(Xdr + "pos", new XAttribute("x", Emu(edges.Left)), new XAttribute("y", Emu(edges.Top))),
            Size(Xdr + "ext", anchor.WidthMillimetres, anchor.HeightMillimetres), content, new XElement(Xdr + "clientData"))
        : new XElement(Xdr + "oneCellAnchor",
        new XElement(Xdr + "from", new XElement(Xdr + "col", anchor.Column - 1), new XElement(Xdr + "colOff", 0), new XElement(Xdr + "row", anchor.Row - 1), new XElement(Xdr + "rowOff", 0)),
        Size(Xdr + "ext", anchor.WidthMillimetres, anchor.HeightMillimetres), content, new XElement(Xdr + "clientData")));

    private static XElement Offset(XNamespace of) => new(of + "off", new XAttribute("x", 0), new XAttribute("y", 0));

    private static XElement Size(XName name, double widthMillimetres, double heightMillimetres) => new(name, new XAttribute("cx", Emu(widthMillimetres)), new XAttribute("cy", Emu(heightMillimetres)));

    private static string Emu(double millimetres) => ((long)Math.Round(millimetres * EmuPerMillimetre)).ToString(CultureInfo.InvariantCulture);

    private static XAttribute Prefix(string prefix, XNamespace of) => new(XNamespace.Xmlns + prefix, of.NamespaceName);
}
