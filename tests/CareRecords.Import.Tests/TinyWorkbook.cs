using System.Globalization;
using System.IO.Compression;
using System.Security;
using System.Text;

namespace CareRecords.Import.Tests;

/// <summary>An .xlsx of plain sheets: text, numbers, and dates (style 1).</summary>
internal static class TinyWorkbook
{
    public static byte[] Of(params (string Sheet, object?[][] Rows)[] sheets)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            Put(zip, "[Content_Types].xml", "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Default Extension=\"xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/></Types>");
            Put(zip, "_rels/.rels", Relationships("<Relationship Id=\"r1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument\" Target=\"xl/workbook.xml\"/>"));
            Put(zip, "xl/_rels/workbook.xml.rels", Relationships(string.Concat(sheets.Select((_, i) => $"<Relationship Id=\"s{i}\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet\" Target=\"worksheets/sheet{i}.xml\"/>"))
                + "<Relationship Id=\"st\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles\" Target=\"styles.xml\"/>"));
            Put(zip, "xl/workbook.xml", "<workbook xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\"><sheets>"
                + string.Concat(sheets.Select((s, i) => $"<sheet name=\"{SecurityElement.Escape(s.Sheet)}\" sheetId=\"{i + 1}\" r:id=\"s{i}\"/>")) + "</sheets></workbook>");
            Put(zip, "xl/styles.xml", "<styleSheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><cellXfs count=\"2\"><xf numFmtId=\"0\"/><xf numFmtId=\"22\" applyNumberFormat=\"1\"/></cellXfs></styleSheet>");
            for (var i = 0; i < sheets.Length; i++) Put(zip, $"xl/worksheets/sheet{i}.xml", Sheet(sheets[i].Rows));
        }

        return stream.ToArray();
    }

    private static string Sheet(object?[][] rows)
    {
        var xml = new StringBuilder("<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>");
        for (var r = 0; r < rows.Length; r++)
        {
            xml.Append(CultureInfo.InvariantCulture, $"<row r=\"{r + 1}\">");
            for (var c = 0; c < rows[r].Length; c++)
                xml.Append(rows[r][c] switch
                {
                    null => "",
                    DateTime at => string.Create(CultureInfo.InvariantCulture, $"<c r=\"{(char)('A' + c)}{r + 1}\" s=\"1\"><v>{at.ToOADate()}</v></c>"),
                    double number => string.Create(CultureInfo.InvariantCulture, $"<c r=\"{(char)('A' + c)}{r + 1}\"><v>{number}</v></c>"),
                    var text => $"<c r=\"{(char)('A' + c)}{r + 1}\" t=\"inlineStr\"><is><t xml:space=\"preserve\">{SecurityElement.Escape(text.ToString())}</t></is></c>",
                });
            xml.Append("</row>");
        }

        return xml.Append("</sheetData></worksheet>").ToString();
    }

    private static string Relationships(string inner) => $"<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">{inner}</Relationships>";

    private static void Put(ZipArchive zip, string name, string xml)
    {
        using var writer = new StreamWriter(zip.CreateEntry(name).Open());
        writer.Write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + xml);
    }
}
