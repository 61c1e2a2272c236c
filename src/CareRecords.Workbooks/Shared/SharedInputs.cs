using CareRecords.Pooling;

namespace CareRecords.Workbooks.Shared;

/// <summary>
/// Finds and reads what a pool is given: shared workbooks, folders of them (searched through), tidy folders. Files come in order of name, a few at a
/// time and a few ahead, so that memory does not grow with their number; each that is not a shared workbook becomes a refusal by name.
/// </summary>
public static class SharedInputs
{
    private const int FilesAtOnce = 32;

    private static readonly EnumerationOptions Everywhere = new() { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint };

    /// <summary>How many files and tidy folders there are to read, for a progress line.</summary>
    /// <param name="inputs">Files and folders.</param>
    public static int Count(IReadOnlyList<string> inputs) => Found(inputs).Count();

    /// <summary>Reads the inputs as they are asked for.</summary>
    /// <param name="inputs">Files and folders, as the user named them.</param>
    public static IEnumerable<SharedInput> Read(IReadOnlyList<string> inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        using var chunks = Found(inputs).Chunk(FilesAtOnce).GetEnumerator();
        // The next files are read while the caller takes in these.
        for (var next = Next(chunks); next is not null;)
        {
            var (some, read) = next.Result;
            next = Next(chunks);
            for (var i = 0; i < some.Length; i++)
            {
                if (read[i] is { } one) yield return one;
                else if (some[i].Kind == Kind.TidyFolder)
                    foreach (var child in TidyFolder.Read(some[i].Path)) yield return child;
                else yield return new RefusedInput(some[i].Path, some[i].Kind == Kind.EmptyFolder ? "holds no file" : "does not exist");
            }
        }
    }

    private static Task<((string Path, Kind Kind)[] Found, SharedInput?[] Read)>? Next(IEnumerator<(string Path, Kind Kind)[]> chunks)
    {
        if (!chunks.MoveNext()) return null;
        var some = chunks.Current;
        return Task.Run(() =>
        {
            var read = new SharedInput?[some.Length];
            Parallel.For(0, some.Length, i => read[i] = some[i].Kind == Kind.File ? ReadFile(some[i].Path) : null);
            return (some, read);
        });
    }

    private enum Kind
    {
        File,
        TidyFolder,
        EmptyFolder,
        Missing,
    }

    private static IEnumerable<(string Path, Kind Kind)> Found(IReadOnlyList<string> inputs) => inputs.SelectMany(FoundIn).DistinctBy(f => Path.GetFullPath(f.Path));

    private static IEnumerable<(string Path, Kind Kind)> FoundIn(string input)
    {
        if (File.Exists(input)) return [(input, Kind.File)];
        if (!Directory.Exists(input)) return [(input, Kind.Missing)];
        if (TidyFolder.IsOne(input)) return [(input, Kind.TidyFolder)];
        var folders = Directory.EnumerateDirectories(input, "*", Everywhere).Where(TidyFolder.IsOne).Order(StringComparer.Ordinal).ToList();
        var files = Directory.EnumerateFiles(input, "*", Everywhere).Where(f => !folders.Exists(tidy => IsIn(f, tidy))).Select(f => (f, Kind.File)).ToList();
        return files.Count + folders.Count == 0
            ? [(input, Kind.EmptyFolder)]
            : files.Concat(folders.Select(f => (f, Kind.TidyFolder))).OrderBy(f => f.Item1, StringComparer.Ordinal);
    }

    private static bool IsIn(string file, string folder) => file.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    private static SharedInput ReadFile(string path)
    {
        var name = Path.GetFileName(path);
        if (name.StartsWith("~$", StringComparison.Ordinal)) return new RefusedInput(path, "is a lock file of a spreadsheet program: close the workbook it belongs to, or leave it");
        return Path.GetExtension(path).Equals(".xlsx", StringComparison.OrdinalIgnoreCase)
            ? SharedWorkbook.Read(path)
            : new RefusedInput(path, "is not a workbook (.xlsx)");
    }
}
