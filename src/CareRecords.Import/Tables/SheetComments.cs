using System.IO.Compression;
using System.Xml;

namespace CareRecords.Import.Tables;

/// <summary>A comment on a cell.</summary>
/// <param name="Column">Zero-based column.</param>
/// <param name="Text">Its words, without the name of who wrote it.</param>
internal readonly record struct CellComment(int Column, string Text);

/// <summary>The comments of a workbook.</summary>
/// <param name="BySheet">By sheet name and one-based row.</param>
/// <param name="Lost">What could not be read, a sentence for each sheet (null: the whole workbook).</param>
internal sealed record CommentsRead(IReadOnlyDictionary<string, Dictionary<int, List<CellComment>>> BySheet, IReadOnlyList<(string? Sheet, string Why)> Lost)
{
    /// <summary>No comments, nothing lost.</summary>
    public static CommentsRead None { get; } = new(new Dictionary<string, Dictionary<int, List<CellComment>>>(), []);
}

/// <summary>
/// Reads the comments on the cells of an .xlsx, which the workbook library leaves out: from the parts of the package that ECMA-376 calls
/// comments, found through the relations of each sheet. What is damaged or too large is said, sheet by sheet.
/// </summary>
internal static class SheetComments
{
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const long LargestPart = 16 << 20;
    private const int MostComments = 100_000;
    private const int LongestName = 40;

    // The last row that a sheet can have (ECMA-376).
    private const int LastRow = 1 << 20;

    /// <summary>The comments, and what of them was lost.</summary>
    public static CommentsRead Read(Stream stream)
    {
        try
        {
            stream.Position = 0;
            using var zip = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true);
            if (!zip.Entries.Any(e => e.FullName.Contains("comments", StringComparison.OrdinalIgnoreCase))) return CommentsRead.None;
            var found = new Dictionary<string, Dictionary<int, List<CellComment>>>();
            var lost = new List<(string? Sheet, string Why)>();
            var targets = Targets(zip, "xl/_rels/workbook.xml.rels", "xl/").ToDictionary(t => t.Id, t => t.Path);
            foreach (var (name, id) in Sheets(zip))
            {
                if (targets.GetValueOrDefault(id) is not { } sheet) continue;
                var byRow = new Dictionary<int, List<CellComment>>();
                if (Take(zip, sheet, byRow) is { } why) lost.Add((name, why));
                if (byRow.Count > 0) found[name] = byRow;
            }

            return new CommentsRead(found, lost);
        }
        catch (Exception damage) when (IsDamage(damage))
        {
            return new CommentsRead(CommentsRead.None.BySheet, [(null, "the part of the workbook that holds them is damaged")]);
        }
    }

    // Takes the comments of one sheet; gives what stopped it. Those read before damage stand.
    private static string? Take(ZipArchive zip, string sheet, Dictionary<int, List<CellComment>> byRow)
    {
        var slash = sheet.LastIndexOf('/');
        var left = MostComments;
        try
        {
            foreach (var (_, path, type) in Relationships(zip, $"{sheet[..slash]}/_rels{sheet[slash..]}.rels", sheet[..(slash + 1)]).Where(r => r.Type.EndsWith("/comments", StringComparison.Ordinal)).ToList())
            {
                if (zip.GetEntry(path) is not { } entry) return "the part of the workbook that holds them is missing";
                if (entry.Length > LargestPart) return FormattableString.Invariant($"they are larger than {LargestPart >> 20} MB");
                foreach (var (cell, text) in Comments(zip, path))
                {
                    if (left-- <= 0) return FormattableString.Invariant($"there are more than {MostComments}; the first of them were read");
                    if (Position(cell) is not { } at || WithoutName(text) is not { Length: > 0 } words) continue;
                    if (!byRow.TryGetValue(at.Row, out var row)) byRow[at.Row] = row = [];
                    row.Add(new CellComment(at.Column, words));
                }
            }

            return null;
        }
        catch (Exception damage) when (IsDamage(damage))
        {
            return byRow.Count > 0 ? "the part of the workbook that holds them is damaged; those before the damage were read" : "the part of the workbook that holds them is damaged";
        }
    }

    // A zip entry or its XML that is not what it claims to be; ArgumentException for a name in it that is no path or comes twice, NotSupportedException for a way of packing that is not known.
    private static bool IsDamage(Exception exception) => exception is InvalidDataException or XmlException or IOException or ArgumentException or NotSupportedException;

    private static IEnumerable<(string Cell, string Text)> Comments(ZipArchive zip, string path)
    {
        using var xml = Open(zip, path);
        if (xml is null) yield break;
        var (cell, text) = ((string?)null, new System.Text.StringBuilder());
        while (xml.Read())
        {
            if (xml is { NodeType: XmlNodeType.Element, LocalName: "comment" }) (cell, text) = (xml.GetAttribute("ref"), text.Clear());
            else if (xml is { NodeType: XmlNodeType.Text or XmlNodeType.SignificantWhitespace or XmlNodeType.Whitespace } && cell is not null && text.Length < short.MaxValue) text.Append(xml.Value);
            else if (xml is { NodeType: XmlNodeType.EndElement, LocalName: "comment" } && cell is not null) yield return (cell, text.ToString());
        }
    }

    // "Mum:" on a line of its own is who wrote it.
    private static string WithoutName(string text)
    {
        var end = text.IndexOf('\n', StringComparison.Ordinal);
        return (end > 0 && end <= LongestName && text[..end].TrimEnd().EndsWith(':') ? text[end..] : text).Trim();
    }

    private static (int Row, int Column)? Position(string cell)
    {
        var (column, i) = (0, 0);
        for (; i < cell.Length && char.IsAsciiLetterUpper(cell[i]) && i < 4; i++) column = column * 26 + (cell[i] - 'A' + 1);
        return column > 0 && int.TryParse(cell.AsSpan(i), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var row) && row is > 0 and <= LastRow ? (row, column - 1) : null;
    }

    private static IEnumerable<(string Name, string Id)> Sheets(ZipArchive zip)
    {
        using var xml = Open(zip, "xl/workbook.xml");
        while (xml?.Read() == true)
            if (xml is { NodeType: XmlNodeType.Element, LocalName: "sheet" } && xml.GetAttribute("name") is { } name && xml.GetAttribute("id", Relations) is { } id)
                yield return (name, id);
    }

    private static IEnumerable<(string Id, string Path)> Targets(ZipArchive zip, string part, string folder) =>
        Relationships(zip, part, folder).Select(r => (r.Id, r.Path)).DistinctBy(r => r.Id);

    private static IEnumerable<(string Id, string Path, string Type)> Relationships(ZipArchive zip, string part, string folder)
    {
        using var xml = Open(zip, part);
        while (xml?.Read() == true)
            if (xml is { NodeType: XmlNodeType.Element, LocalName: "Relationship" } && xml.GetAttribute("Id") is { } id && xml.GetAttribute("Target") is { } target)
                yield return (id, Resolved(folder, target), xml.GetAttribute("Type") ?? "");
    }

    private static string Resolved(string folder, string target)
    {
        if (target.StartsWith('/')) return target[1..];
        var parts = new List<string>(folder.Split('/', StringSplitOptions.RemoveEmptyEntries));
        foreach (var part in target.Split('/'))
            if (part == ".." && parts.Count > 0) parts.RemoveAt(parts.Count - 1);
            else parts.Add(part);
        return string.Join('/', parts);
    }

    private static XmlReader? Open(ZipArchive zip, string path) =>
        zip.GetEntry(path) is { Length: <= LargestPart } entry
            ? XmlReader.Create(entry.Open(), new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, MaxCharactersInDocument = LargestPart, CloseInput = true })
            : null;
}
