using System.Globalization;
using System.IO.Compression;
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
    /// <summary>The order in which formulas were last worked out: the library's knows its own cells only, and every program makes one.</summary>
    private const string CalculationChain = "xl/calcChain.xml";

    /// <summary>Saves the book, with the charts on their sheet, to a stream that stays open.</summary>
    /// <exception cref="InvalidOperationException">A formula cell has no stored value, or a stored value has no formula cell.</exception>
    public static void Save(Book book, IReadOnlyList<PlacedChart> charts, Stream output)
    {
        var drawn = Task.Run(() => SheetDrawing.Of(charts)); // Beside the saving.
        using var package = new MemoryStream();
        book.Workbook.SaveAs(package);
        var drawing = drawn.GetAwaiter().GetResult();
        package.Position = 0;
        using var from = new ZipArchive(package, ZipArchiveMode.Read, leaveOpen: true);
        var names = SheetNames(from);
        var chartSheet = charts.Count == 0 ? null : names.Single(n => n.Value == WorkbookLayout.Sheet.Charts).Key;
        var relationsOfCharts = chartSheet is null ? null : PackageXml.RelationsOf(chartSheet);
        var styles = new StyleSheet(Load(from, "xl/styles.xml"));
        var given = 0;
        var added = drawing.Parts.Keys.Concat(relationsOfCharts is null || from.GetEntry(relationsOfCharts) is not null ? [] : [relationsOfCharts]);
        SteadyZip.Rewrite(from.Entries.Where(e => e.FullName != CalculationChain), added, output, (part, entry) => part switch
        {
            "[Content_Types].xml" => As(WithTypes(entry, drawing)),
            SteadyZip.CoreProperties => As(WithLanguage(entry)),
            "xl/styles.xml" => As(styles.Root),
            "xl/workbook.xml" => As(WithPrintAreas(WithPrintTitles(Root(entry)), book.Pending)),
            "xl/_rels/workbook.xml.rels" => As(WithoutCalculationChain(Root(entry))),
            _ when part == relationsOfCharts => As(WithDrawing(entry)),
            _ when names.TryGetValue(part, out var name) => stream =>
            {
                var sheet = new SheetPart(Root(entry), name, [.. book.Pending.Where(r => r.Sheet == name)], book.Stored, styles) { Drawing = part == chartSheet ? SheetDrawing.Id : null };
                PackageXml.Write(stream, sheet.Write);
                given += sheet.Given;
            }
            ,
            _ when drawing.Parts.TryGetValue(part, out var write) => write,
            _ when part.StartsWith("xl/tables/", StringComparison.Ordinal) => As(Grown(Root(entry), book.Pending)),
            _ => null,
        });
        if (given != book.Stored.Count) throw new InvalidOperationException($"{book.Stored.Count} values were kept for formulas and {given} formulas found.");
    }

    private static Action<Stream> As(XElement root) => stream => PackageXml.Write(stream, root.WriteTo);

    private static XElement Root(ZipArchiveEntry? entry) => PackageXml.Load(entry ?? throw new InvalidOperationException("The package lacks a part."));

    private static XElement Load(ZipArchive from, string part) => PackageXml.Load(from.GetEntry(part) ?? throw new InvalidOperationException($"The package has no {part}."));

    /// <summary>Names of the sheets by their part.</summary>
    private static Dictionary<string, string> SheetNames(ZipArchive from)
    {
        var targets = Load(from, "xl/_rels/workbook.xml.rels").Elements(PackageXml.Relations + "Relationship")
            .ToDictionary(r => (string?)r.Attribute("Id") ?? "", r => PartName((string?)r.Attribute("Target") ?? ""));
        return Load(from, "xl/workbook.xml").Descendants(SheetPart.Namespace + "sheet")
            .ToDictionary(s => targets[(string?)s.Attribute((XNamespace)PackageXml.Office + "id") ?? ""], s => (string?)s.Attribute("name") ?? "");
    }

    private static string PartName(string target) => target.StartsWith('/') ? target[1..] : "xl/" + target;

    private static XElement WithTypes(ZipArchiveEntry? entry, SheetDrawing drawing)
    {
        var types = Root(entry);
        types.Elements(PackageXml.Types + "Override").Where(t => (string?)t.Attribute("PartName") == "/" + CalculationChain).Remove();
        drawing.AddContentTypes(types);
        return types;
    }

    private static XElement WithoutCalculationChain(XElement relations)
    {
        relations.Elements().Where(r => PartName((string?)r.Attribute("Target") ?? "") == CalculationChain).Remove();
        return relations;
    }

    private static XElement WithDrawing(ZipArchiveEntry? entry)
    {
        var relations = entry is null ? new XElement(PackageXml.Relations + "Relationships") : PackageXml.Load(entry);
        relations.Add(SheetDrawing.Relationship);
        return relations;
    }

    /// <summary>The core properties with the language of the words, which the library does not write.</summary>
    private static XElement WithLanguage(ZipArchiveEntry? entry)
    {
        var properties = Root(entry);
        properties.SetElementValue((XNamespace)"http://purl.org/dc/elements/1.1/" + "language", "en-GB");
        return properties;
    }

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
}
