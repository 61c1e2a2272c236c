using System.IO.Compression;

namespace CareRecords.Workbooks.Tests.Shared;

/// <summary>A workbook's bytes: the file itself, and every part of it unpacked, with the parts' names.</summary>
internal static class Package
{
    public static IReadOnlyList<(string Name, byte[] Bytes)> Parts(byte[] file)
    {
        using var zip = new ZipArchive(new MemoryStream(file), ZipArchiveMode.Read);
        return [("the file itself", file), .. zip.Entries.Select(e => (e.FullName, Unpacked(e)))];
    }

    /// <summary>Copies a workbook, changing the text of the parts that the change does not leave as they are.</summary>
    public static byte[] Changed(byte[] file, Func<string, string, string> change)
    {
        using var output = new MemoryStream();
        using (var from = new ZipArchive(new MemoryStream(file), ZipArchiveMode.Read))
        using (var to = new ZipArchive(output, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var part in from.Entries)
            {
                using var target = new StreamWriter(to.CreateEntry(part.FullName).Open());
                target.Write(change(part.FullName, System.Text.Encoding.UTF8.GetString(Unpacked(part))));
            }
        }

        return output.ToArray();
    }

    private static byte[] Unpacked(ZipArchiveEntry entry)
    {
        using var source = entry.Open();
        using var bytes = new MemoryStream();
        source.CopyTo(bytes);
        return bytes.ToArray();
    }
}
