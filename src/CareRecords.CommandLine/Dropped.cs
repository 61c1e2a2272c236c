namespace CareRecords.CommandLine;

/// <summary>
/// Paths alone, without a verb, as when a folder or some files are dropped on the program's icon: a review of them, written beside the first.
/// </summary>
internal static class Dropped
{
    private const string Ending = " - review";

    /// <summary>Whether the arguments are existing paths and nothing else. The name of a verb is the verb, even where a folder has that name too.</summary>
    public static bool Is(IReadOnlyList<string> args, Surroundings surroundings, IEnumerable<string> verbs) =>
        args.Count > 0 && !verbs.Contains(args[0], StringComparer.Ordinal) && args.All(a => !a.StartsWith('-') && Path.Exists(surroundings.FullPath(a)));

    /// <summary>The command that they mean.</summary>
    public static string[] AsReview(IReadOnlyList<string> paths, Surroundings surroundings) => ["review", .. paths, "--out", Beside(surroundings.FullPath(paths[0]))];

    /// <summary>A name beside the path that no file has yet.</summary>
    private static string Beside(string path)
    {
        var whole = Path.TrimEndingDirectorySeparator(path);
        var folder = Path.GetDirectoryName(whole) ?? whole;
        // A folder's name may hold a dot: "March.2026" has no extension to take off.
        var name = (Directory.Exists(whole) ? Path.GetFileName(whole) : Path.GetFileNameWithoutExtension(whole)) + Ending;
        var target = Path.Combine(folder, name + ".xlsx");
        for (var n = 2; Path.Exists(target); n++) target = Path.Combine(folder, FormattableString.Invariant($"{name} {n}.xlsx"));
        return target;
    }
}
