using System.Globalization;
using System.IO.Compression;
using System.Xml;
using System.Xml.Linq;
using CareRecords.Workbooks.Building;
using CareRecords.Workbooks.Sheets;

namespace CareRecords.Workbooks.Finishing;

/// <summary>
/// The one pass over the saved package: pending rows are written where the library holds their pattern, every formula gets its stored value,
/// and the same content gives the same bytes.
/// </summary>
internal static class PackagePass
{
    private static readonly XNamespace Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private static readonly XNamespace PackageRelations = "http://schemas.openxmlformats.org/package/2006/relationships";

    /// <summary>Saves the book, with the charts on their sheet, to a stream that stays open.</summary>
    /// <exception cref="InvalidOperationException">A formula cell has no stored value, or a stored value has no formula cell.</exception>
    public static void Save(Book book, IReadOnlyList<PlacedChart> charts, Stream output)
    {
        using var package = new MemoryStream();
        book.Workbook.SaveAs(package);
        var pictures = ChartPass.Add(package, charts);
        package.Position = 0;
        using var from = new ZipArchive(package, ZipArchiveMode.Read, leaveOpen: true);
        var names = SheetNames(from);
        var styles = new StyleSheet(Load(from, "xl/styles.xml"));
        var given = 0;
        SteadyZip.Rewrite(from, output, part => part switch
        {
            "xl/styles.xml" => stream => WriteXml(stream, styles.Root.WriteTo),
            "xl/workbook.xml" => stream => WriteXml(stream, WithPrintAreas(WithPrintTitles(Load(from, part)), book.Pending).WriteTo),
            _ when names.TryGetValue(part, out var name) => stream =>
            {
                var sheet = new SheetPart(Load(from, part), name, [.. book.Pending.Where(r => r.Sheet == name)], book.Stored, styles);
                WriteXml(stream, sheet.Write);
                given += sheet.Given;
            }
            ,
            _ when pictures.TryGetValue(part, out var picture) => stream => stream.Write(picture.Png),
            _ when part.StartsWith("xl/tables/", StringComparison.Ordinal) => stream => WriteXml(stream, Grown(Load(from, part), book.Pending).WriteTo),
            _ => null,
        });
        if (given != book.Stored.Count) throw new InvalidOperationException($"{book.Stored.Count} values were kept for formulas and {given} formulas found.");
    }

    /// <summary>Names of the sheets by their part.</summary>
    private static Dictionary<string, string> SheetNames(ZipArchive from)
    {
        var targets = Load(from, "xl/_rels/workbook.xml.rels").Elements(PackageRelations + "Relationship")
            .ToDictionary(r => (string?)r.Attribute("Id") ?? "", r => PartName((string?)r.Attribute("Target") ?? ""));
        return Load(from, "xl/workbook.xml").Descendants(SheetPart.Namespace + "sheet")
            .ToDictionary(s => targets[(string?)s.Attribute(Relations + "id") ?? ""], s => (string?)s.Attribute("name") ?? "");
    }

    private static string PartName(string target) => target.StartsWith('/') ? target[1..] : "xl/" + target;

    /// <summary>The table over all of its rows; the library knows the first only.</summary>
    private static XElement Grown(XElement table, IReadOnlyList<PendingRows> pending)
    {
        if (pending.FirstOrDefault(r => r.Table == (string?)table.Attribute("name")) is not { Count: { } count } rows) return table;
        var reference = $"A{rows.FirstRow - 1}:{Address.Of(rows.FirstRow + count - 1, rows.Columns)}";
        table.SetAttributeValue("ref", reference);
        table.Element(SheetPart.Namespace + "autoFilter")?.SetAttributeValue("ref", reference);
        return table;
    }

    /// <summary>Rows repeated on every printed page, with the signs without which programs do not repeat them: 4:4 becomes $4:$4.</summary>
    private static XElement WithPrintTitles(XElement workbook)
    {
        foreach (var name in workbook.Descendants(SheetPart.Namespace + "definedName").Where(n => (string?)n.Attribute("name") == "_xlnm.Print_Titles"))
        {
            var at = name.Value.LastIndexOf('!') + 1;
            var ends = name.Value[at..].Split(':');
            if (ends.All(e => e.Length > 0 && e.All(char.IsAsciiDigit))) name.Value = name.Value[..at] + string.Join(':', ends.Select(e => "$" + e));
        }

        return workbook;
    }

    /// <summary>What is printed grows with the rows that the library does not hold: Days!$A$1:$U$4 with 26 days becomes $A$1:$U$29.</summary>
    private static XElement WithPrintAreas(XElement workbook, IReadOnlyList<PendingRows> pending)
    {
        foreach (var name in workbook.Descendants(SheetPart.Namespace + "definedName").Where(n => (string?)n.Attribute("name") == "_xlnm.Print_Area"))
        {
            var sheet = name.Value[..Math.Max(0, name.Value.LastIndexOf('!'))].Trim('\'').Replace("''", "'", StringComparison.Ordinal);
            var end = name.Value.LastIndexOf('$') + 1;
            var last = pending.Where(r => r.Sheet == sheet && r.Count is not null).Select(r => r.FirstRow + r.Count!.Value - 1).DefaultIfEmpty(0).Max();
            if (end > 0 && int.TryParse(name.Value[end..], NumberStyles.None, CultureInfo.InvariantCulture, out var row) && last > row) name.Value = name.Value[..end] + last.ToString(CultureInfo.InvariantCulture);
        }

        return workbook;
    }

    private static XElement Load(ZipArchive from, string part)
    {
        using var stream = (from.GetEntry(part) ?? throw new InvalidOperationException($"The package has no {part}.")).Open();
        return XElement.Load(stream, LoadOptions.PreserveWhitespace);
    }

    private static void WriteXml(Stream stream, Action<XmlWriter> write)
    {
        // Rows come as text whose characters are checked already.
        using var writer = XmlWriter.Create(stream, new XmlWriterSettings { Encoding = new System.Text.UTF8Encoding(false), CheckCharacters = false });
        write(writer);
    }
}
