using System.IO.Compression;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace CareRecords.Workbooks.Finishing;

/// <summary>XML of a package's own parts (Open Packaging Conventions, ECMA-376 part 2).</summary>
internal static class PackageXml
{
    /// <summary>Relationships inside a document: their types begin with it, and attributes that name them are in it.</summary>
    public const string Office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    public static readonly XNamespace Relations = "http://schemas.openxmlformats.org/package/2006/relationships";
    public static readonly XNamespace Types = "http://schemas.openxmlformats.org/package/2006/content-types";

    private static readonly XmlWriterSettings Plain = new() { Encoding = new UTF8Encoding(false), CheckCharacters = false };

    /// <summary>The root of a part.</summary>
    public static XElement Load(ZipArchiveEntry entry)
    {
        using var stream = entry.Open();
        return XElement.Load(stream, LoadOptions.PreserveWhitespace);
    }

    /// <summary>Writes a part. Rows come as text whose characters are checked already.</summary>
    public static void Write(Stream stream, Action<XmlWriter> write)
    {
        using var writer = XmlWriter.Create(stream, Plain);
        write(writer);
    }

    /// <summary>A relationship to a part.</summary>
    public static XElement Relationship(string id, string type, string part) =>
        new(Relations + "Relationship", new XAttribute("Type", type), new XAttribute("Target", "/" + part), new XAttribute("Id", id));

    /// <summary>Where the relationships of a part stand: xl/worksheets/_rels/sheet1.xml.rels.</summary>
    public static string RelationsOf(string part) => part.Insert(part.LastIndexOf('/') + 1, "_rels/") + ".rels";
}
