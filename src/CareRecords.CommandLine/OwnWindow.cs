using System.Runtime.InteropServices;
using System.Runtime.Versioning;

namespace CareRecords.CommandLine;

/// <summary>
/// On Windows a folder dropped on the icon opens a window for the program alone, which closes with it: it is kept open until somebody has read what it says.
/// </summary>
internal static partial class OwnWindow
{
    public static void KeepOpen(TextWriter error)
    {
        if (!OperatingSystem.IsWindows() || Console.IsInputRedirected || Console.IsOutputRedirected || !IsOurs()) return;
        error.WriteLine("Press Enter to close this window.");
        Console.In.ReadLine();
    }

    /// <summary>Whether no shell shares the window.</summary>
    [SupportedOSPlatform("windows")]
    private static bool IsOurs() => GetConsoleProcessList(new uint[2], 2) == 1;

    [DllImport("kernel32.dll", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern uint GetConsoleProcessList([Out] uint[] processes, uint count);
}
