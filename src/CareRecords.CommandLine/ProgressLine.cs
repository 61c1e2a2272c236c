using System.Globalization;
using CareRecords.Import;

namespace CareRecords.CommandLine;

/// <summary>One line of progress on standard error, for a person who watches; nothing otherwise.</summary>
internal sealed class ProgressLine : IProgress<ImportProgress>
{
    private readonly TextWriter _error;

    private ProgressLine(TextWriter error) => _error = error;

    public static ProgressLine? For(Surroundings surroundings) =>
        surroundings.ErrorIsTerminal ? new ProgressLine(surroundings.Error) : null;

    public void Report(ImportProgress value) =>
        _error.Write(string.Create(CultureInfo.InvariantCulture, $"\rReading {value.FilesDone + 1} of {value.Files}: {value.LinesRead:N0} lines "));
}
