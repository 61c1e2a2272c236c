using System.Reflection;
using System.Runtime.InteropServices;

namespace CareRecords.CommandLine;

/// <summary>
/// The published single file carries the drawing library as a resource. It is unpacked only when a chart is drawn, into the folder for temporary
/// files, and taken away at once where the system allows that. A build that is not published finds the library beside the program instead.
/// </summary>
internal static class NativeParts
{
    private const string ResourcePrefix = "native.";

    private const string DrawingAssembly = "SkiaSharp,";

    /// <summary>Every imported function asks anew: it must be given the same copy, for the library keeps state.</summary>
    private static readonly Dictionary<string, nint> Loaded = new(StringComparer.Ordinal);

    /// <summary>
    /// Gives the drawing assembly the carried library as soon as it is loaded. Without that the system looks in five places first, in vain, for each
    /// of the eighty functions that a chart needs.
    /// </summary>
    public static void Offer() => AppDomain.CurrentDomain.AssemblyLoad += (_, loaded) =>
    {
        if (loaded.LoadedAssembly.FullName is { } name && name.StartsWith(DrawingAssembly, StringComparison.Ordinal))
            NativeLibrary.SetDllImportResolver(loaded.LoadedAssembly, (library, _, _) => Find(library));
    };

    /// <summary>The library; 0 leaves it to the system's own search.</summary>
    private static nint Find(string name)
    {
        lock (Loaded)
        {
            if (!Loaded.TryGetValue(name, out var library)) Loaded[name] = library = Load(name);
            return library;
        }
    }

    private static nint Load(string name)
    {
        using var carried = Assembly.GetExecutingAssembly().GetManifestResourceStream(ResourcePrefix + Path.GetFileNameWithoutExtension(name));
        if (carried is null) return 0;
        return OperatingSystem.IsWindows() ? LoadKept(carried, name) : LoadAndTakeAway(carried, name);
    }

    /// <summary>A loaded library lives on without its name in the folder.</summary>
    private static nint LoadAndTakeAway(Stream carried, string name)
    {
        var folder = Directory.CreateTempSubdirectory("carerecords-");
        try
        {
            var file = Path.Combine(folder.FullName, name);
            Write(carried, file);
            return NativeLibrary.Load(file);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Windows keeps hold of a loaded file: one copy a version stays in the user's own temporary folder and is used again.</summary>
    private static nint LoadKept(Stream carried, string name)
    {
        var version = Assembly.GetExecutingAssembly().ManifestModule.ModuleVersionId.ToString("N");
        var folder = Directory.CreateDirectory(Path.Combine(Path.GetTempPath(), "carerecords-" + version));
        var file = Path.Combine(folder.FullName, name + ".dll");
        if (!File.Exists(file))
        {
            var unfinished = $"{file}.{Environment.ProcessId}";
            Write(carried, unfinished);
            File.Move(unfinished, file, overwrite: true);
        }

        return NativeLibrary.Load(file);
    }

    private static void Write(Stream carried, string file)
    {
        using var target = File.Create(file);
        carried.CopyTo(target);
    }
}
