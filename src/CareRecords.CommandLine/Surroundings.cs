namespace CareRecords.CommandLine;

/// <summary>What the tool is given from outside: the console, the folder it stands in and the computer's zone. Tests hand in their own.</summary>
internal sealed record Surroundings
{
    /// <summary>Where results go.</summary>
    public required TextWriter Output { get; init; }

    /// <summary>Where everything else goes: progress and what must be mended.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>Whether a person watches <see cref="Error"/>; progress is shown only then.</summary>
    public required bool ErrorIsTerminal { get; init; }

    /// <summary>The folder that relative paths start from.</summary>
    public required string WorkingFolder { get; init; }

    /// <summary>Finds the computer's IANA zone; asked only when something is read, for the zones take time to load.</summary>
    public required Func<string> FindMachineZone { get; init; }

    /// <summary>A path as the person gave it, made absolute from the working folder.</summary>
    public string FullPath(string path) => Path.GetFullPath(path, WorkingFolder);
}
