using CareRecords.Records;

namespace CareRecords.Import.Files;

/// <summary>An input found: where it lies and the name it has in every source.</summary>
/// <param name="Path">Where to open it.</param>
/// <param name="Name">Its name relative to what was given; never an absolute path.</param>
internal sealed record FoundFile(string Path, string Name);

/// <summary>Finds the files among paths and folders.</summary>
internal static class InputFiles
{
    private static readonly HashSet<string> Readable =
        new([".csv", ".tsv", ".txt", ".md", ".xlsx", ".xls", ".xlsm"], StringComparer.OrdinalIgnoreCase);

    /// <summary>The extensions read, in a sentence.</summary>
    public const string Extensions = ".csv, .tsv, .txt, .md, .xlsx, .xls or .xlsm";

    /// <summary>Files to read and files left alone, each once, in the order given; a folder's files by name.</summary>
    /// <exception cref="InputException">A path does not exist or may not be opened.</exception>
    public static (IReadOnlyList<FoundFile> ToRead, IReadOnlyList<InputFile> LeftAlone) Find(IReadOnlyList<string> paths)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var names = new HashSet<string>(StringComparer.Ordinal);
        var toRead = new List<FoundFile>();
        var leftAlone = new List<InputFile>();
        foreach (var path in paths)
            foreach (var (file, name, named) in Under(path))
            {
                if (!seen.Add(Path.GetFullPath(file))) continue;
                var unique = names.Add(name) ? name : Renamed(name, names);
                if (Readable.Contains(Path.GetExtension(file)) && !IsLockFile(name)) toRead.Add(new FoundFile(file, unique));
                else leftAlone.Add(new InputFile(unique, "left alone", null, WhyLeft(name, named)));
            }

        return (toRead, leftAlone);
    }

    private static IEnumerable<(string File, string Name, bool Named)> Under(string path)
    {
        if (File.Exists(path)) return [(path, Path.GetFileName(path), true)];
        if (!Directory.Exists(path))
            throw new InputException($"There is no file or folder called {path}.", "Check the name, or give the folder that holds your notes.");
        try
        {
            var folder = Path.GetFullPath(path);
            return
            [
                .. Directory.EnumerateFiles(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true, AttributesToSkip = FileAttributes.System })
                    .Order(StringComparer.Ordinal)
                    .Select(file => (file, Path.GetRelativePath(folder, file).Replace('\\', '/'), false)),
            ];
        }
        catch (UnauthorizedAccessException denied)
        {
            throw new InputException($"The folder {path} may not be opened.", "Give yourself the right to read it, or copy the notes elsewhere.", denied);
        }
    }

    // Two inputs of the same name from different folders must stay apart in sources and counts.
    private static string Renamed(string name, HashSet<string> names)
    {
        for (var n = 2; ; n++)
        {
            var other = FormattableString.Invariant($"{name} ({n})");
            if (names.Add(other)) return other;
        }
    }

    private static bool IsLockFile(string name) =>
        Path.GetFileName(name) is var file && (file.StartsWith("~$", StringComparison.Ordinal) || file.StartsWith(".~lock", StringComparison.Ordinal));

    private static string WhyLeft(string name, bool named) =>
        IsLockFile(name) ? "a spreadsheet program's lock file"
        : named ? $"not a kind of file that is read ({Extensions}); save it as one of these"
        : $"not a kind of file that is read ({Extensions})";
}
