using System.Globalization;
using System.Text;
using CareRecords.Findings;
using CareRecords.Pooling;
using CareRecords.Simulation;
using CareRecords.Workbooks.Shared;

namespace CareRecords.Benchmarks;

/// <summary>Shared workbooks of many children, made from a few: each has its own code and lacks another session, so that none repeats another.</summary>
internal static class SharedFolder
{
    private const int Simulated = 20;
    private static readonly byte[] Key = Encoding.ASCII.GetBytes("a key for invented children only");

    public static string Make(string folder, int count)
    {
        var path = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"shared-{count}"));
        if (Directory.Exists(path)) return path;
        var unfinished = path + ".part";
        Directory.CreateDirectory(unfinished);
        var few = Enumerable.Range(0, Simulated).AsParallel().AsOrdered().Select(Child).ToList();
        Parallel.For(0, count, i =>
        {
            using var file = File.Create(Path.Combine(unfinished, string.Create(CultureInfo.InvariantCulture, $"{i:00000}.xlsx")));
            SharedWorkbook.Write(Another(few[i % Simulated], i), file);
        });
        Directory.Move(unfinished, path);
        return path;
    }

    private static SharedFindings Child(int n)
    {
        var (log, _) = SimulatedChild.Make(new SimulationOptions { Seed = 900 + n, Days = 60 + (n % 4 * 15), GetsExtraOxygen = n % 3 == 0, FeedsWritten = 0.9, SignsWritten = 0.8 });
        return Sharing.Share(Reviewer.Review(log), new ShareOptions { Child = ChildCode.Random() });
    }

    private static SharedFindings Another(SharedFindings child, int i) => child with
    {
        Child = child.Child with
        {
            Code = ChildCode.FromKey(Key, string.Create(CultureInfo.InvariantCulture, $"invented family {i}")),
            StudyGroup = StudyGroup.TryRead(i % 3 == 0 ? "A" : "B", out var group) ? group : null,
        },
        Sessions = [.. child.Sessions.Where((_, s) => s != i / Simulated % child.Sessions.Count)],
    };
}
