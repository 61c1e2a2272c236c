using System.IO.Compression;
using System.IO.Pipelines;
using System.Text;
using System.Text.RegularExpressions;

namespace CareRecords.Workbooks.Finishing;

/// <summary>
/// Rewrites the package so that the same content gives the same bytes: parts in order of name, one fixed entry time,
/// the core properties under a fixed name, and the package's own relationships renumbered.
/// </summary>
internal static partial class SteadyZip
{
    /// <summary>Where the core properties stand; the library gives them another name each time.</summary>
    public const string CoreProperties = "package/services/metadata/core-properties/core.psmdcp";

    private static readonly DateTimeOffset EntryTime = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>What may wait to be packed of one part; then its making waits.</summary>
    private static readonly PipeOptions Waiting = new(pauseWriterThreshold: 1 << 18, resumeWriterThreshold: 1 << 17, minimumSegmentSize: 1 << 15, useSynchronizationContext: false);

    /// <summary>Packs the parts while those that follow are made on another processor.</summary>
    /// <param name="from">The parts of the package that stay.</param>
    /// <param name="added">Names of parts that it has not.</param>
    /// <param name="output">Where the new one goes; it stays open.</param>
    /// <param name="rewriting">How a part is written anew, from what the package has of it; null for one that is copied.</param>
    public static void Rewrite(IEnumerable<ZipArchiveEntry> from, IEnumerable<string> added, Stream output, Func<string, ZipArchiveEntry?, Action<Stream>?> rewriting)
    {
        List<(string Name, ZipArchiveEntry? Entry)> all = [.. from.Select(entry => (entry.FullName, (ZipArchiveEntry?)entry)), .. added.Select(name => (name, (ZipArchiveEntry?)null))];
        var random = all.Select(part => part.Name).FirstOrDefault(name => name.EndsWith(".psmdcp", StringComparison.Ordinal));
        var parts = all.Select(part => (Name: part.Name == random ? CoreProperties : part.Name, part.Entry, Pipe: new Pipe(Waiting)))
            .OrderBy(part => PlaceOf(part.Name)).ThenBy(part => part.Name, StringComparer.Ordinal).ToList();
        // A thread of its own, for it waits for the packing and for pictures.
        var making = Task.Factory.StartNew(() =>
        {
            foreach (var (name, entry, pipe) in parts)
                Make(pipe.Writer, stream =>
                {
                    if (rewriting(name, entry) is { } write) write(stream);
                    else stream.Write(Steady(name, Read(entry!), random));
                });
        }, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            var piece = new byte[1 << 16];
            using var to = new ZipArchive(output, ZipArchiveMode.Create, leaveOpen: true);
            foreach (var (name, _, pipe) in parts)
            {
                var target = to.CreateEntry(name, LevelOf(name));
                target.LastWriteTime = EntryTime;
                using var stream = target.Open();
                CopyInEqualPieces(pipe.Reader.AsStream(leaveOpen: true), stream, piece);
            }
        }
        finally
        {
            // Where packing stopped, nobody takes what is still being made.
            foreach (var (_, _, pipe) in parts) pipe.Reader.Complete();
            making.Wait();
        }
    }

    /// <summary>What comes out of the packer depends on the pieces that go in, and a pipe gives as much as happens to be there.</summary>
    private static void CopyInEqualPieces(Stream from, Stream to, byte[] piece)
    {
        while (from.ReadAtLeast(piece, piece.Length, throwOnEndOfStream: false) is > 0 and var length) to.Write(piece, 0, length);
    }

    /// <summary>Makes one part. What goes wrong is told where the part is packed.</summary>
    private static void Make(PipeWriter writer, Action<Stream> write)
    {
        try
        {
            using (var stream = writer.AsStream(leaveOpen: true)) write(stream);
            writer.Complete();
        }
        catch (Exception e)
        {
            writer.Complete(e);
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
        if (name != "_rels/.rels") return bytes;
        var text = Encoding.UTF8.GetString(bytes);
        if (random is not null) text = text.Replace(random, CoreProperties, StringComparison.Ordinal);
        return Encoding.UTF8.GetBytes(Renumber(text));
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
