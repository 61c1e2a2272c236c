using System.Diagnostics;
using System.Globalization;
using CareRecords.Pooling;
using CareRecords.Workbooks.Shared;

namespace CareRecords.Studies;

/// <summary>Writes shared workbooks into a folder and measures how fast they are read.</summary>
internal static class Speed
{
    public static int Run(string folder, int count)
    {
        Directory.CreateDirectory(folder);
        var clock = Stopwatch.StartNew();
        foreach (var (child, i) in SyntheticStudy.Children(new StudyOptions { Seed = 11, Children = count }).Select((c, i) => (c, i)))
        {
            using var file = File.Create(Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{i:00000}.xlsx")));
            SharedWorkbook.Write(child, file);
        }

        Console.WriteLine(FormattableString.Invariant($"written: {count / clock.Elapsed.TotalSeconds:0.0} a second"));
        var paths = Directory.GetFiles(folder);
        Console.WriteLine(FormattableString.Invariant($"mean size {paths.Average(p => new FileInfo(p).Length):0} bytes"));
        var before = Process.GetCurrentProcess().TotalProcessorTime;
        clock.Restart();
        var refused = paths.Select(p => SharedWorkbook.Read(p)).OfType<RefusedInput>().ToList();
        Console.WriteLine(FormattableString.Invariant($"read: {count / clock.Elapsed.TotalSeconds:0.0} a second, {refused.Count} refused, {refused.FirstOrDefault()?.Why}"));
        Console.WriteLine(FormattableString.Invariant($"processor: {(Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds / count:0.0} ms a file"));
        return 0;
    }
}
