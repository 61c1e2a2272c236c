using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;

namespace CareRecords.Workbooks.Finishing;

/// <summary>
/// Rewrites the package so that the same content gives the same bytes: parts in order of name, one fixed entry time,
/// the core properties under a fixed name, and the package's own relationships renumbered.
/// </summary>
internal static partial class SteadyZip
{
    private const string CoreProperties = "package/services/metadata/core-properties/core.psmdcp";
    private static readonly DateTimeOffset EntryTime = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static void Rewrite(MemoryStream package, Stream output)
    {
        package.Position = 0;
        using var from = new ZipArchive(package, ZipArchiveMode.Read, leaveOpen: true);
        var random = from.Entries.FirstOrDefault(e => e.FullName.EndsWith(".psmdcp", StringComparison.Ordinal))?.FullName;
        var parts = from.Entries
            .Select(entry => (Name: entry.FullName == random ? CoreProperties : entry.FullName, Bytes: Read(entry)))
            .Select(part => (part.Name, Bytes: Steady(part.Name, part.Bytes, random)))
            .OrderBy(part => part.Name == "[Content_Types].xml" ? 0 : 1).ThenBy(part => part.Name, StringComparer.Ordinal);
        using var to = new ZipArchive(output, ZipArchiveMode.Create, leaveOpen: true);
        foreach (var (name, bytes) in parts)
        {
            var entry = to.CreateEntry(name, CompressionLevel.Optimal);
            entry.LastWriteTime = EntryTime;
            using var stream = entry.Open();
            stream.Write(bytes);
        }
    }

    private static byte[] Read(ZipArchiveEntry entry)
    {
        using var stream = entry.Open();
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static byte[] Steady(string name, byte[] bytes, string? random)
    {
        if (name is not ("_rels/.rels" or "[Content_Types].xml")) return bytes;
        var text = Encoding.UTF8.GetString(bytes);
        if (random is not null) text = text.Replace(random, CoreProperties, StringComparison.Ordinal);
        return Encoding.UTF8.GetBytes(name == "_rels/.rels" ? Renumber(text) : text);
    }

    /// <summary>Sorts the relationships by their target and numbers them; nothing refers to these ids.</summary>
    private static string Renumber(string relationships)
    {
        var found = Relationship().Matches(relationships).Select(m => m.Value).OrderBy(r => Target().Match(r).Value, StringComparer.Ordinal).ToList();
        if (found.Count == 0) return relationships;
        var numbered = found.Select((r, i) => Id().Replace(r, FormattableString.Invariant($" Id=\"rId{i + 1}\"")));
        var first = relationships.IndexOf("<Relationship ", StringComparison.Ordinal);
        var end = relationships.LastIndexOf("</Relationships>", StringComparison.Ordinal);
        return relationships[..first] + string.Concat(numbered) + relationships[end..];
    }

    [GeneratedRegex("<Relationship [^>]*/>")]
    private static partial Regex Relationship();

    [GeneratedRegex(" Target=\"[^\"]*\"")]
    private static partial Regex Target();

    [GeneratedRegex(" Id=\"[^\"]*\"")]
    private static partial Regex Id();
}
