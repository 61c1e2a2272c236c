using System.Diagnostics;
using CareRecords.Pooling;
using CareRecords.Workbooks.Pooled;
using CareRecords.Workbooks.Shared;

namespace CareRecords.Studies;

/// <summary>Pools a folder as the tool does, and measures time, processor and memory; the results go into another folder.</summary>
internal static class PoolRun
{
    public static int Run(string input, string output)
    {
        Directory.CreateDirectory(output);
        var clock = Stopwatch.StartNew();
        var files = SharedInputs.Count([input]);
        TimeSpan reading = default;
        using var tidy = new TidyWriter(Path.Combine(output, "tidy"));
        var pooled = Pooler.Pool(Timed(SharedInputs.Read([input]), () => reading = clock.Elapsed), new PoolOptions(), tidy.Add);
        tidy.Complete();
        using (var json = File.Create(Path.Combine(output, "pooled.json"))) PooledJson.Write(pooled, json);
        using (var book = File.Create(Path.Combine(output, "pooled.xlsx"))) PooledWorkbook.Write(pooled, book);
        using var process = Process.GetCurrentProcess();
        Console.WriteLine(FormattableString.Invariant(
            $"{files} inputs, {pooled.Children} children, {pooled.Refused.Count} left out; read in {reading.TotalSeconds:0.0} s ({files / reading.TotalSeconds:0} a second), all in {clock.Elapsed.TotalSeconds:0.0} s, processor {process.TotalProcessorTime.TotalSeconds:0.0} s, most memory {process.PeakWorkingSet64 / 1048576} MiB"));
        foreach (var refused in pooled.Refused.Take(10)) Console.WriteLine($"{refused.File}: {refused.Why}");
        return 0;
    }

    private static IEnumerable<SharedInput> Timed(IEnumerable<SharedInput> inputs, Action atEnd)
    {
        foreach (var input in inputs) yield return input;
        atEnd();
    }
}
