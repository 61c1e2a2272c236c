namespace CareRecords.CommandLine;

/// <summary>
/// Writes outputs whole or not at all: to a temporary name beside the target, moved into place when every output is ready.
/// An existing file is replaced only with <c>--force</c>, and never one of the inputs.
/// </summary>
internal sealed class SafeOutput(bool force, IReadOnlyCollection<string> inputs) : IDisposable
{
    private readonly List<(string Temporary, string Target)> _waiting = [];

    /// <summary>Checks, before any work is done, that the file may be written.</summary>
    /// <exception cref="UserMistakeException">It exists, is an input, or its folder does not exist.</exception>
    public string Claim(string target)
    {
        if (inputs.Contains(target, StringComparer.Ordinal))
            throw new UserMistakeException($"{target} is one of the inputs and is never changed: give another name with --out.");
        if (Directory.Exists(target))
            throw new UserMistakeException($"{target} is a folder: give the name of a file.");
        if (!force && File.Exists(target))
            throw new UserMistakeException($"{target} exists already: give another name, or --force to replace it.");
        var folder = Path.GetDirectoryName(target);
        if (folder is null || !Directory.Exists(folder))
            throw new UserMistakeException($"The folder {folder} does not exist: make it first, or give another name.");
        return target;
    }

    /// <summary>Writes one output to its temporary name.</summary>
    /// <exception cref="UserMistakeException">The file cannot be written.</exception>
    public void Write(string target, Action<Stream> write)
    {
        var temporary = $"{target}.part-{Environment.ProcessId}";
        _waiting.Add((temporary, target));
        WithPlainErrors(target, () =>
        {
            using var stream = new FileStream(temporary, FileMode.Create, FileAccess.ReadWrite);
            write(stream);
        });
    }

    /// <summary>Moves every output into place.</summary>
    /// <exception cref="UserMistakeException">A file cannot be written.</exception>
    public void MoveIntoPlace()
    {
        foreach (var (temporary, target) in _waiting)
            WithPlainErrors(target, () => File.Move(temporary, target, overwrite: force));
        _waiting.Clear();
    }

    /// <summary>Removes what was not moved into place.</summary>
    public void Dispose()
    {
        foreach (var (temporary, _) in _waiting) File.Delete(temporary);
    }

    private static void WithPlainErrors(string target, Action action)
    {
        try
        {
            action();
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new UserMistakeException($"{target} cannot be written ({failure.Message.TrimEnd('.')}): close it if it is open elsewhere, or give another name.");
        }
    }
}
