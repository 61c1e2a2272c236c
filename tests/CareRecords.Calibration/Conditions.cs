using System.Globalization;
using CareRecords.Simulation;

namespace CareRecords.Calibration;

/// <summary>A kind of child to try the model on.</summary>
/// <param name="Group">The table that it belongs to.</param>
/// <param name="Name">What is special of it.</param>
/// <param name="Make">Makes the child of a seed.</param>
/// <param name="Together">The row in which it is also counted with others; null for none.</param>
internal sealed record Condition(string Group, string Name, Func<int, KnownChild> Make, string? Together = null);

/// <summary>The kinds of children, and a run over one kind.</summary>
internal static class Conditions
{
    /// <summary>Seeds from here on are for the report; work on the model used seeds under it.</summary>
    public const int ReportSeed = 5_000_000;

    public const string Asked = "The conditions asked for", ChecksAndNoise = "Checks a day and noise", Unlike = "Children of the second generator";

    public static IReadOnlyList<Condition> All { get; } =
    [
        .. from noise in new[] { 0.7, 1.0, 1.4 }
           from oxygen in new[] { false, true }
           select Simulated(Asked, "4 checks, noise " + Text(noise) + Extra(oxygen), new() { Seed = 0, Noise = noise, GetsExtraOxygen = oxygen }) with { Together = "**all of the above with 4 checks, noise 0.7 to 1.4, half with extra oxygen**" },
        .. from oxygen in new[] { false, true }
           select Simulated(Asked, "2 checks, noise 2, 10 % of feeds not written" + Extra(oxygen), new() { Seed = 0, Noise = 2, ChecksPerDay = 2, FeedsWritten = 0.9, GetsExtraOxygen = oxygen }) with { Together = "**both of the above with 2 checks, noise 2**" },
        .. from checks in new[] { 1, 2, 4, 8 }
           from noise in new[] { 0.7, 1.4, 2 }
           select Simulated(ChecksAndNoise, Text(checks) + " checks, noise " + Text(noise), new() { Seed = 0, Noise = noise, ChecksPerDay = checks }),
        Simulated(ChecksAndNoise, "2 checks, none at sessions, noise 1.4", new() { Seed = 0, Noise = 1.4, ChecksPerDay = 2, SessionsWithChecks = 0 }),
        Simulated(ChecksAndNoise, "4 checks, noise 1.4, errors correlated 0.5", new() { Seed = 0, Noise = 1.4, NoiseCorrelation = 0.5 }),
        Simulated(ChecksAndNoise, "2 checks, noise 2, errors correlated 0.5, 10 % of days missing", new() { Seed = 0, Noise = 2, ChecksPerDay = 2, NoiseCorrelation = 0.5, DaysNotWritten = 0.1 }),
        Simulated(ChecksAndNoise, "4 checks, noise 1.4, 10 % of days missing", new() { Seed = 0, Noise = 1.4, DaysNotWritten = 0.1 }),
        Simulated(ChecksAndNoise, "4 checks, noise 1, extra oxygen, 3 flows in 10 written", new() { Seed = 0, GetsExtraOxygen = true, OxygenWritten = 0.3 }),
        Simulated(ChecksAndNoise, "4 checks, noise 1, sessions lift by 1.5 points", new() { Seed = 0, SessionLift = 1.5 }),
        Simulated(ChecksAndNoise, "30 days, 4 checks, noise 1.4", new() { Seed = 0, Noise = 1.4, Days = 30 }),
        .. from noise in new[] { 1.0, 2 }
           from oxygen in new[] { false, true }
           let options = new SimulationOptions { Seed = 0, Noise = noise, ChecksPerDay = noise > 1.5 ? 2 : 4, GetsExtraOxygen = oxygen }
           select new Condition(ChecksAndNoise, "record cut in the last illness, noise " + Text(noise) + Extra(oxygen),
               seed => KnownChild.From(options with { Seed = seed }).CutInLastIllness(seed)),
        .. OtherChildren.Shapes.Select(shape => Other("return: " + shape, new() { Seed = 0, Shape = shape })),
        Other("6 readings, noise 2", new() { Seed = 0, Noise = 2, ChecksPerDay = 6 }),
        Other("noise 1.4, 10 % of days missing, signs written", new() { Seed = 0, Noise = 1.4, DaysMissing = 0.1, SignsWritten = 0.5 }),
        Other("extra oxygen, 7 flows in 10 written", new() { Seed = 0, Oxygen = true }),
        Other("extra oxygen, 3 flows in 10 written, usual not in the plan", new() { Seed = 0, Oxygen = true, OxygenWritten = 0.3, PlanStatesOxygen = false }),
        Other("extra oxygen, only raised flows written, noise 1.4", new() { Seed = 0, Oxygen = true, OxygenWritten = -0.7, Noise = 1.4 }),
        Other("the same, noise 2, usual not in the plan", new() { Seed = 0, Oxygen = true, OxygenWritten = -0.7, Noise = 2, PlanStatesOxygen = false }),
        Other("usual drifts by ±1 point", new() { Seed = 0, Drift = 1 }),
        Other("evenings 1.5 points lower", new() { Seed = 0, Circadian = 1.5 }),
        Other("5 % of readings 3 to 6 points low", new() { Seed = 0, Outliers = 0.05 }),
        Other("errors forgotten in 6 h, noise 1.4", new() { Seed = 0, ErrorHours = 6, Noise = 1.4 }),
        Other("errors forgotten in 24 h, noise 1", new() { Seed = 0, ErrorHours = 24 }),
        Other("mild: 2 to 4 points deep", new() { Seed = 0, Depth = 3 }),
        Other("usual near 100", new() { Seed = 0, Top = 100 }),
        Other("30 days", new() { Seed = 0, Days = 30 }),
    ];

    /// <summary>The conditions whose names hold all of the words.</summary>
    public static IEnumerable<Condition> Named(string[] words) => All.Where(c => words.All(w => c.Name.Contains(w, StringComparison.Ordinal)));

    /// <summary>Tries the model on a number of children of a kind.</summary>
    public static Score Run(Condition condition, int children, int seed)
    {
        var score = new Score();
        var tried = Enumerable.Range(seed, children).AsParallel().AsOrdered().Select(condition.Make).Select(child => (Child: child, Found: child.Review()));
        foreach (var (child, found) in tried) score.Add(child, found);

        return score;
    }

    private static Condition Simulated(string group, string name, SimulationOptions options) => new(group, name, seed => KnownChild.From(options with { Seed = seed }));

    private static Condition Other(string name, OtherOptions options) => new(Unlike, name, seed => OtherChildren.Make(options with { Seed = seed }));

    private static string Text(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Extra(bool oxygen) => oxygen ? ", extra oxygen" : ", no extra oxygen";
}
