using System.Xml;
using System.Xml.Linq;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Finishing;

/// <summary>Writes a sheet part anew: the pending rows in the place of their pattern, the value of every formula, links, columns in order.</summary>
internal sealed class SheetPart(XElement sheet, string name, IReadOnlyList<PendingRows> pending, IReadOnlyDictionary<(string Sheet, string Address), StoredValue> stored, StyleSheet styles)
{
    public static readonly XNamespace Namespace = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    /// <summary>More links than this on a sheet and some programs refuse the file (65,530); the rest are plain text.</summary>
    private const int MostLinks = 60_000;

    /// <summary>What stands after the links in a sheet part, in order (ECMA-376 part 1, 18.3.1.99): a program repairs a sheet whose elements are out of order.</summary>
    private static readonly string[] AfterLinks =
    [
        "printOptions", "pageMargins", "pageSetup", "headerFooter", "rowBreaks", "colBreaks", "customProperties", "cellWatches", "ignoredErrors", "smartTags", "drawing",
        "legacyDrawing", "legacyDrawingHF", "drawingHF", "picture", "oleObjects", "controls", "webPublishItems", "tableParts", "extLst",
    ];

    private readonly List<(string At, string Place, string Shown)> _links = [];
    private int _linksOfLibrary;

    /// <summary>The relationship of the sheet's drawing, which the library does not write; null where there is none.</summary>
    public string? Drawing { get; init; }

    /// <summary>Values given to formulas that the library holds.</summary>
    public int Given { get; private set; }

    /// <exception cref="InvalidOperationException">A formula cell has no stored value.</exception>
    public void Write(XmlWriter writer)
    {
        foreach (var cell in sheet.Descendants(Namespace + "c")) GiveValue(cell);
        SetDimension();
        SortColumns();
        PlaceDrawing();
        _linksOfLibrary = sheet.Element(Namespace + "hyperlinks")?.Elements().Count() ?? 0;
        writer.WriteStartDocument();
        writer.WriteStartElement(sheet.GetPrefixOfNamespace(Namespace), sheet.Name.LocalName, Namespace.NamespaceName);
        foreach (var attribute in sheet.Attributes())
        {
            if (attribute.IsNamespaceDeclaration && attribute.Value == Namespace.NamespaceName) continue;
            writer.WriteAttributeString(attribute.IsNamespaceDeclaration ? "xmlns" : sheet.GetPrefixOfNamespace(attribute.Name.Namespace), attribute.Name.LocalName, attribute.Name.NamespaceName, attribute.Value);
        }

        var linksAreWritten = false;
        foreach (var part in sheet.Elements())
        {
            var isLinks = part.Name.LocalName == "hyperlinks";
            if (!linksAreWritten && (isLinks || AfterLinks.Contains(part.Name.LocalName)))
            {
                WriteLinks(writer, isLinks ? part.Elements() : []);
                linksAreWritten = true;
            }

            if (part.Name.LocalName == "sheetData") WriteRows(writer, part);
            else if (!isLinks) part.WriteTo(writer);
        }

        if (!linksAreWritten) WriteLinks(writer, []);
        writer.WriteEndElement();
        writer.WriteEndDocument();
    }

    private void GiveValue(XElement cell)
    {
        if (cell.Element(Namespace + "f") is not { } formula) return;
        var address = (string?)cell.Attribute("r") ?? "";
        if (!stored.TryGetValue((name, address), out var value)) throw new InvalidOperationException($"The formula in {name}!{address} has no stored value.");
        if (value.IsArray)
        {
            formula.SetAttributeValue("t", "array");
            formula.SetAttributeValue("ref", address);
        }

        var (type, text) = CellValueText.Of(value.Value);
        cell.SetAttributeValue("t", type);
        cell.SetElementValue(Namespace + "v", text);
        Given++;
    }

    private void SetDimension()
    {
        if (sheet.Element(Namespace + "dimension") is not { } dimension) return;
        var (row, column) = Address.LastOf((string?)dimension.Attribute("ref") ?? "A1");
        foreach (var rows in pending)
        {
            if (rows.Count is not { } count)
            {
                dimension.Remove();
                return;
            }

            (row, column) = (Math.Max(row, rows.FirstRow + count - 1), Math.Max(column, rows.Columns));
        }

        dimension.SetAttributeValue("ref", "A1:" + Address.Of(row, column));
    }

    /// <summary>Column definitions stand in order of their columns; the library puts the rest of the sheet first.</summary>
    private void SortColumns()
    {
        if (sheet.Element(Namespace + "cols") is { } columns) columns.ReplaceNodes(columns.Elements().OrderBy(c => (int?)c.Attribute("min") ?? 0).ToList());
    }

    private void PlaceDrawing()
    {
        if (Drawing is null) return;
        var drawing = new XElement(Namespace + "drawing", new XAttribute((XNamespace)PackageXml.Office + "id", Drawing));
        if (sheet.Elements().FirstOrDefault(e => Array.IndexOf(AfterLinks, e.Name.LocalName) > Array.IndexOf(AfterLinks, "drawing")) is { } after) after.AddBeforeSelf(drawing);
        else sheet.Add(drawing);
    }

    private void WriteRows(XmlWriter writer, XElement data)
    {
        writer.WriteStartElement(data.GetPrefixOfNamespace(Namespace), "sheetData", Namespace.NamespaceName);
        var prefix = data.GetPrefixOfNamespace(Namespace) is { Length: > 0 } p ? p + ":" : "";
        var byRow = pending.ToDictionary(r => r.FirstRow);
        var ofLibrary = data.Elements().ToDictionary(r => (int?)r.Attribute("r") ?? 0);
        var next = 1;
        foreach (var (number, row) in ofLibrary)
        {
            if (byRow.Remove(number, out var rows)) next = WritePending(writer, rows, ofLibrary, prefix);
            else if (number >= next) row.WriteTo(writer);
        }

        if (byRow.Count > 0) throw new InvalidOperationException($"The sheet {name} has no row to take the looks of its rows from.");
        writer.WriteEndElement();
    }

    /// <summary>Writes the rows, and right of them what the library holds there.</summary>
    /// <returns>The row after them.</returns>
    private int WritePending(XmlWriter writer, PendingRows rows, Dictionary<int, XElement> ofLibrary, string prefix)
    {
        var looks = new int[rows.Columns];
        foreach (var cell in ofLibrary[rows.FirstRow].Elements())
            if (ColumnOf(cell) is var column && column <= looks.Length) looks[column - 1] = (int?)cell.Attribute("s") ?? 0;
        var styles = new int[rows.Columns];
        var text = new RowText(prefix, rows.Columns);
        char[] buffer = [];
        var at = rows.FirstRow;
        foreach (var (height, cells) in rows.Write())
        {
            for (var c = 0; c < cells.Length; c++) styles[c] = StyleOf(cells[c], looks[c], at, c + 1);
            var row = text.Of(at, height, cells, styles, ofLibrary.TryGetValue(at, out var library) ? Beside(library, rows) : "");
            if (buffer.Length < row.Length) buffer = new char[2 * row.Length];
            row.CopyTo(0, buffer, row.Length);
            writer.WriteRaw(buffer, 0, row.Length);
            at++;
        }

        return at;
    }

    private string Beside(XElement row, PendingRows rows)
    {
        var beside = row.Elements().Where(c => ColumnOf(c) > rows.Columns).ToList();
        var isPattern = (int?)row.Attribute("r") == rows.FirstRow;
        if (!isPattern && beside.Count < row.Elements().Count()) throw new InvalidOperationException($"Row {(int?)row.Attribute("r")} of {name} holds cells where a table's rows stand.");
        return string.Concat(beside.Select(c => c.ToString(SaveOptions.DisableFormatting)));
    }

    private static int ColumnOf(XElement cell) => Address.LastOf((string?)cell.Attribute("r") ?? "").Column;

    private int StyleOf(CellContent cell, int look, int row, int column)
    {
        var words = cell.Formula is null ? cell.Value as string : null;
        var leads = cell.Link is not null && _linksOfLibrary + _links.Count < MostLinks;
        if (leads) _links.Add((Address.Of(row, column), cell.Link!, words ?? ""));
        return styles.Variant(look, leads, words is not null && CellText.LooksLikeFormula(words));
    }

    private void WriteLinks(XmlWriter writer, IEnumerable<XElement> ofLibrary)
    {
        if (_linksOfLibrary + _links.Count == 0) return;
        var prefix = sheet.GetPrefixOfNamespace(Namespace);
        writer.WriteStartElement(prefix, "hyperlinks", Namespace.NamespaceName);
        foreach (var link in ofLibrary) link.WriteTo(writer);
        foreach (var (at, place, shown) in _links)
        {
            writer.WriteStartElement(prefix, "hyperlink", Namespace.NamespaceName);
            writer.WriteAttributeString("ref", at);
            writer.WriteAttributeString("location", place);
            if (shown.Length > 0) writer.WriteAttributeString("display", CellText.Fit(shown));
            writer.WriteEndElement();
        }

        writer.WriteEndElement();
    }
}
