using System.Text.Json;
using CareRecords.CommandLine;

namespace CareRecords.EndToEnd.Tests;

/// <summary>One run of the whole tool inside the test, in a folder of its own that goes away afterwards.</summary>
internal sealed class ToolRun : IDisposable
{
    private readonly StringWriter _output = new() { NewLine = "\n" };
    private readonly StringWriter _error = new() { NewLine = "\n" };

    public ToolRun() => Directory.CreateDirectory(Folder);

    /// <summary>The working folder of the run.</summary>
    public string Folder { get; } = Path.Combine(Path.GetTempPath(), "carerecords-" + Guid.NewGuid().ToString("N"));

    public string Output => _output.ToString();

    public string Error => _error.ToString();

    /// <summary>The repository's root: the folder above this one that holds the solution.</summary>
    public static string Root { get; } = FindRoot(AppContext.BaseDirectory);

    public int Run(params string[] args) => Tool.Run(args, new Surroundings
    {
        Output = _output,
        Error = _error,
        ErrorIsTerminal = false,
        WorkingFolder = Folder,
        FindMachineZone = () => "Europe/London",
    });

    public string PathOf(string name) => Path.Combine(Folder, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(PathOf(name), text);
        return PathOf(name);
    }

    public JsonElement Json(string name) => JsonDocument.Parse(File.ReadAllBytes(PathOf(name))).RootElement;

    public static string Demo(string folder) => Path.Combine(Root, "demo-data", folder);

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private static string FindRoot(string folder) =>
        File.Exists(Path.Combine(folder, "CareRecords.sln")) ? folder : FindRoot(Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("No solution above the tests."));
}
