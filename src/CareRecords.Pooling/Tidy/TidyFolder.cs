namespace CareRecords.Pooling;

/// <summary>
/// A tidy folder: one table a kind, as CSV and as Parquet, with a data package that says what every column means. It holds the children's rows as
/// their shared workbooks do (nothing is suppressed in it) and is kept as they are kept. Pooling reads it back.
/// </summary>
public static class TidyFolder
{
    /// <summary>The file by which a tidy folder is known.</summary>
    public const string PackageFile = "datapackage.json";

    /// <summary>Whether a folder looks like a tidy folder.</summary>
    public static bool IsOne(string folder) => File.Exists(Path.Combine(folder, PackageFile));

    /// <summary>Writes children into a new folder; nothing is left behind when it fails.</summary>
    /// <param name="children">The children, read as they are asked for.</param>
    /// <param name="folder">A folder that does not exist yet, or is empty.</param>
    /// <exception cref="IOException">The folder exists and holds something, or cannot be written.</exception>
    public static void Write(IEnumerable<SharedFindings> children, string folder)
    {
        ArgumentNullException.ThrowIfNull(children);
        using var writer = new TidyWriter(folder);
        foreach (var child in children) writer.Add(child);
        writer.Complete();
    }

    /// <summary>Reads a tidy folder's children from its Parquet files, a group at a time.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="name">The name to call it by in messages.</param>
    public static IEnumerable<SharedInput> Read(string folder, string? name = null) => TidyReader.Read(folder, name ?? folder);
}
