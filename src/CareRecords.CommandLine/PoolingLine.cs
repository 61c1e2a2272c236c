using System.Globalization;

namespace CareRecords.CommandLine;

/// <summary>
/// One line of progress on standard error while a pool is read, worked out and written, for a person who watches. A tidy folder is one input and holds many
/// children, so the count of what was read can pass the count of inputs: no total is said then.
/// </summary>
internal sealed class PoolingLine : IProgress<int>, IDisposable
{
    private const int Every = 20;

    private readonly TextWriter _error;
    private readonly int _inputs;
    private int _read;
    private int _shown;

    private PoolingLine(TextWriter error, int inputs)
    {
        (_error, _inputs) = (error, inputs);
        Show(Reading());
    }

    /// <summary>The line for these inputs; null where nobody watches.</summary>
    /// <param name="surroundings">Where to.</param>
    /// <param name="inputs">Counts files and tidy folders; asked only where somebody watches.</param>
    public static PoolingLine? For(Surroundings surroundings, Func<int> inputs) => surroundings.ErrorIsTerminal ? new(surroundings.Error, inputs()) : null;

    /// <summary>Told the number of workbooks and tidy children looked at.</summary>
    public void Report(int value)
    {
        _read = value;
        if (value % Every == 0) Show(Reading());
    }

    /// <summary>The same inputs, with the line told when the last was read.</summary>
    public IEnumerable<T> UpToTheLast<T>(IEnumerable<T> inputs)
    {
        foreach (var input in inputs) yield return input;
        Show(Reading() + ". Working out the figures ...");
    }

    /// <summary>Says that the outputs are being written.</summary>
    public void Writing() => Show(Reading() + ". Writing ...");

    /// <summary>Ends the line, so that what comes next stands on its own, a mistake too.</summary>
    public void Dispose()
    {
        Show(Reading() + ".");
        _error.WriteLine();
    }

    private string Reading() => _read > _inputs
        ? string.Create(CultureInfo.InvariantCulture, $"Read {_read:N0} workbooks and children of tidy folders")
        : string.Create(CultureInfo.InvariantCulture, $"Read {_read:N0} of {_inputs:N0}");

    /// <summary>Blanks cover what is left of a longer text before.</summary>
    private void Show(string text)
    {
        _error.Write("\r" + text.PadRight(_shown));
        _shown = text.Length;
    }
}
