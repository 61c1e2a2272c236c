using System.Diagnostics;
using System.Globalization;

namespace CareRecords.Benchmarks;

/// <summary>One run of a whole process: seconds by the clock, seconds of processor, peak memory in MiB.</summary>
internal sealed record Measured(double Wall, double Processor, double Memory)
{
    private const string Python = "/usr/bin/python3";

    /// <summary>Where the scripts lie.</summary>
    public static string Script(string name) => Path.Combine(AppContext.BaseDirectory, "Yardstick", name);

    /// <summary>The command that runs a script.</summary>
    public static string[] Yardstick(string script, params string[] args) => [Python, Script(script), .. args];

    /// <exception cref="InvalidOperationException">The command failed.</exception>
    public static Measured Run(IReadOnlyList<string> command)
    {
        var start = new ProcessStartInfo(Python, [Script("measure.py"), .. command]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start) ?? throw new InvalidOperationException("No process.");
        var error = process.StandardError.ReadToEndAsync();
        var figures = process.StandardOutput.ReadToEnd().Split(' ', StringSplitOptions.TrimEntries);
        process.WaitForExit();
        if (process.ExitCode != 0) throw new InvalidOperationException($"{string.Join(' ', command)} ended with {process.ExitCode}: {error.Result}");
        return new Measured(Number(figures[0]), Number(figures[1]), Number(figures[2]) / 1024);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
