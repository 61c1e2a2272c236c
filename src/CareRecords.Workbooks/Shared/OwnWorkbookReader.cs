using System.Globalization;
using System.IO.Compression;
using System.Xml;

namespace CareRecords.Workbooks.Shared;

/// <summary>
/// Reads the cells of a workbook that stands as <see cref="PlainWorkbook"/> writes it: numbers, yes and no, words in the cell. At the first thing that
/// is otherwise (another program saved it) it gives up, and the general reader takes over. A study has thousands of files, nearly all unopened, and
/// this takes a third of the general reader's time.
/// </summary>
internal static class OwnWorkbookReader
{
    private const string Spreadsheet = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    /// <summary>The sheets in order; null when the workbook is not plain.</summary>
    /// <param name="zip">The package, its size already checked.</param>
    /// <param name="mostRows">Rows beyond which it gives up.</param>
    /// <param name="mostColumns">Columns beyond which it gives up.</param>
    /// <exception cref="XmlException">A part is damaged.</exception>
    /// <exception cref="InvalidDataException">The package is damaged.</exception>
    public static IReadOnlyList<PlainSheet>? TryRead(ZipArchive zip, int mostRows, int mostColumns)
    {
        if (zip.GetEntry("xl/sharedStrings.xml") is not null || zip.GetEntry("xl/workbook.xml") is not { } workbook || zip.GetEntry("xl/_rels/workbook.xml.rels") is not { } rels) return null;
        var targets = Targets(rels);
        var sheets = new List<PlainSheet>();
        foreach (var (name, id) in Names(workbook))
        {
            if (!targets.TryGetValue(id, out var part) || zip.GetEntry(part) is not { } entry || Rows(entry, mostRows, mostColumns) is not { } rows) return null;
            sheets.Add(new PlainSheet(name, rows));
        }

        return sheets.Count == 0 ? null : sheets;
    }

    private static Dictionary<string, string> Targets(ZipArchiveEntry rels)
    {
        var targets = new Dictionary<string, string>(StringComparer.Ordinal);
        using var xml = Open(rels);
        while (xml.Read())
        {
            if (xml.NodeType != XmlNodeType.Element || xml.LocalName != "Relationship" || xml.GetAttribute("Target") is not { } target) continue;
            targets[xml.GetAttribute("Id") ?? ""] = target.StartsWith('/') ? target[1..] : "xl/" + target;
        }

        return targets;
    }

    private static List<(string Name, string Id)> Names(ZipArchiveEntry workbook)
    {
        var names = new List<(string, string)>();
        using var xml = Open(workbook);
        while (xml.Read())
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "sheet" && xml.NamespaceURI == Spreadsheet) names.Add((xml.GetAttribute("name") ?? "", xml.GetAttribute("id", Relations) ?? ""));
        return names;
    }

    private static List<object?[]>? Rows(ZipArchiveEntry sheet, int mostRows, int mostColumns)
    {
        var rows = new List<object?[]>();
        var cells = new List<object?>();
        using var xml = Open(sheet);
        if (!xml.ReadToFollowing("sheetData", Spreadsheet)) return null;
        if (xml.IsEmptyElement) return rows;
        while (xml.Read() && xml.NodeType != XmlNodeType.EndElement)
        {
            if (xml.NodeType != XmlNodeType.Element) continue;
            if (xml.LocalName != "row" || !TryNumber(xml.GetAttribute("r"), out var number) || number <= rows.Count || number > mostRows) return null;
            while (rows.Count < number - 1) rows.Add([]);
            cells.Clear();
            if (!xml.IsEmptyElement && !TryCells(xml, cells, mostColumns)) return null;
            rows.Add([.. cells]);
        }

        return rows;
    }

    private static bool TryCells(XmlReader xml, List<object?> cells, int mostColumns)
    {
        while (xml.Read() && xml.NodeType != XmlNodeType.EndElement)
        {
            if (xml.NodeType != XmlNodeType.Element) continue;
            if (xml.LocalName != "c" || !TryColumn(xml.GetAttribute("r"), out var column) || column <= cells.Count || column > mostColumns) return false;
            while (cells.Count < column - 1) cells.Add(null);
            object? value = null;
            if (!xml.IsEmptyElement && !TryValue(xml, xml.GetAttribute("t"), out value)) return false;
            cells.Add(value);
        }

        return true;
    }

    /// <summary>Reads from the cell's start to its end.</summary>
    private static bool TryValue(XmlReader xml, string? type, out object? value)
    {
        value = null;
        if (!xml.Read() || xml.NodeType != XmlNodeType.Element) return false;
        if (type == "inlineStr")
        {
            if (xml.LocalName != "is" || !xml.Read() || xml.LocalName != "t" || !TryText(xml, out var words) || words.Contains("_x", StringComparison.Ordinal)) return false;
            value = words;
            if (!xml.Read() || xml.NodeType != XmlNodeType.EndElement) return false;
        }
        else
        {
            if (xml.LocalName != "v" || !TryText(xml, out var text)) return false;
            if (type == "b" && text is ("0" or "1")) value = text == "1";
            else if (type is (null or "n") && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)) value = number;
            else return false;
        }

        return xml.Read() && xml.NodeType == XmlNodeType.EndElement;
    }

    /// <summary>The text of an element that holds nothing else; the reader stands at its end afterwards.</summary>
    private static bool TryText(XmlReader xml, out string text)
    {
        text = "";
        if (xml.IsEmptyElement) return true;
        while (xml.Read() && xml.NodeType is XmlNodeType.Text or XmlNodeType.Whitespace or XmlNodeType.SignificantWhitespace) text = text.Length == 0 ? xml.Value : text + xml.Value;
        return xml.NodeType == XmlNodeType.EndElement;
    }

    private static bool TryColumn(string? address, out int column)
    {
        column = 0;
        if (address is null) return false;
        foreach (var c in address)
        {
            if (!char.IsAsciiLetterUpper(c)) break;
            column = (column * 26) + (c - 'A' + 1);
            if (column > 20_000) return false;
        }

        return column > 0;
    }

    private static bool TryNumber(string? text, out int number) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);

    private static XmlReader Open(ZipArchiveEntry entry) => XmlReader.Create(entry.Open(), new XmlReaderSettings { CloseInput = true, DtdProcessing = DtdProcessing.Prohibit });
}
