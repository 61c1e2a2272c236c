using System.Globalization;
using System.Text;
using CareRecords.Findings;
using CareRecords.Pooling;
using CareRecords.Simulation;
using CareRecords.Statistics;
using CareRecords.Workbooks.Shared;

namespace CareRecords.Studies;

/// <summary>Makes demo-data/many-families: simulated children, reviewed and shared the way a family's records are.</summary>
internal static class ManyFamilies
{
    private const int Children = 24;
    private static readonly byte[] DemoKey = Encoding.ASCII.GetBytes("a key for invented children only");
    private static readonly string[] Ages = ["<1", "1-4", "5-9"];

    public static int Run(string folder)
    {
        Directory.CreateDirectory(folder);
        var draw = new SeededRandom(24);
        for (var n = 1; n <= Children; n++)
        {
            var (log, truth) = SimulatedChild.Make(Options(n));
            var shared = Sharing.Share(Reviewer.Review(FamilyHabits.Of(log, truth, n)), new ShareOptions
            {
                Child = ChildCode.FromKey(DemoKey, string.Create(CultureInfo.InvariantCulture, $"invented family {n}")),
                AgeBand = AgeBands.TryRead(Ages[n % 3], out var band) ? band : null,
                StudyGroup = StudyGroup.TryRead(draw.Uniform() < 0.5 ? "A" : "B", out var group) ? group : null,
            });
            var path = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"family-{n:00}.xlsx"));
            using (var file = File.Create(path)) SharedWorkbook.Write(shared, file);
            Console.WriteLine(FormattableString.Invariant($"{path}: {new FileInfo(path).Length} bytes, {shared.Sessions.Count} sessions, {shared.Episodes.Count(e => e.Definition == EpisodeDefinition.Main)} episodes, {shared.Steps.Count} steps"));
        }

        return 0;
    }

    /// <summary>Families differ in how long and how fully they write, and in how ill their child is.</summary>
    internal static SimulationOptions Options(int n) => new()
    {
        Seed = 4_100 + n,
        Days = 56 + (n % 5 * 7),
        FirstDay = new NodaTime.LocalDate(2026, 1, 12).PlusDays(n * 3),
        ChecksPerDay = 3 + (n % 2),
        GetsExtraOxygen = n % 3 == 0,
        FeedsWritten = 0.85 + (0.05 * (n % 4)),
        DaysNotWritten = 0.02 * (n % 6),
        SignsWritten = 0.8,
        Illnesses = 1 + (n % 2),
        RoundedTo = n % 4 == 0 ? 5 : 1,
    };
}
