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


    /// <param name="from">The package.</param>
    /// <param name="output">Where the new one goes; it stays open.</param>
    /// <param name="rewriting">How a part is written anew; null for one that is copied.</param>
    public static void Rewrite(ZipArchive from, Stream output, Func<string, Action<Stream>?> rewriting)
    {
        var random = from.Entries.FirstOrDefault(e => e.FullName.EndsWith(".psmdcp", StringComparison.Ordinal))?.FullName;
        var parts = from.Entries.Select(entry => (Name: entry.FullName == random ? CoreProperties : entry.FullName, Entry: entry))
            .OrderBy(part => PlaceOf(part.Name)).ThenBy(part => part.Name, StringComparer.Ordinal);
        using var to = new ZipArchive(output, ZipArchiveMode.Create, leaveOpen: true);
        foreach (var (name, entry) in parts)
        {
            var target = to.CreateEntry(name, LevelOf(name));
            target.LastWriteTime = EntryTime;
            using var stream = target.Open();
            if (rewriting(name) is { } write) write(stream);
            else stream.Write(Steady(name, Read(entry), random));
        }
    }

    /// <summary>Styles follow the sheets, which add to them while they are written; pictures come last, for they may still be drawn.</summary>
    private static int PlaceOf(string name) => name switch
    {
        "[Content_Types].xml" => 0,
        "xl/styles.xml" => 2,
        _ when IsPicture(name) => 3,
        _ => 1,
    };

    private static bool IsPicture(string name) => name.EndsWith(".png", StringComparison.Ordinal);

    /// <summary>Pictures are packed already. Sheets are long and alike from row to row: the fast level takes a third of the time for a few hundredths of the size.</summary>
    private static CompressionLevel LevelOf(string name) =>
        IsPicture(name) ? CompressionLevel.NoCompression
        : name.StartsWith("xl/worksheets/", StringComparison.Ordinal) ? CompressionLevel.Fastest
        : CompressionLevel.Optimal;

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
