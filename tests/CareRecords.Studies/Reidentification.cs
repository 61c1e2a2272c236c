using CareRecords.Findings;
using CareRecords.Pooling;
using CareRecords.Records;
using CareRecords.Simulation;
using CareRecords.Statistics;
using NodaTime;

namespace CareRecords.Studies;

/// <summary>
/// Tries to find a family's shared file among many by what somebody might know of its days, and says how often that succeeds. It measures what a shared
/// file gives away; it is not a proof that nothing more can be done.
/// </summary>
public static class Reidentification
{
    /// <summary>A family as an attacker may know it, and the file it shared.</summary>
    private sealed record Family(CareLog Log, SharedFindings Shared, int[] SessionsByDay, int[] ReadingsByDay);

    /// <summary>How an attack went.</summary>
    /// <param name="Knows">What the attacker knows.</param>
    /// <param name="FoundAlone">Share of families whose file is the only one that fits.</param>
    /// <param name="RightGuess">Chance that a guess among the files that fit is right, mean over families.</param>
    public sealed record Attack(string Knows, double FoundAlone, double RightGuess);

    /// <summary>Runs every attack on a number of simulated families.</summary>
    public static IReadOnlyList<Attack> Of(int families, int days, int seed)
    {
        var all = Enumerable.Range(0, families).Select(n => FamilyOf(seed + n, days, n)).ToList();
        var random = new SeededRandom(seed);
        return
        [
            Measure("the whole of the notes", all, f => s => Same(f.SessionsByDay, Sessions(s)) && Same(f.ReadingsByDay, Readings(s))),
            Measure("how many sessions were done on each of 14 days in a row", all, f => Window(Sessions, f.SessionsByDay, 14, random)),
            Measure("how many sessions were done on each of 7 days in a row", all, f => Window(Sessions, f.SessionsByDay, 7, random)),
            Measure("how many sessions were done on each of 3 days in a row", all, f => Window(Sessions, f.SessionsByDay, 3, random)),
            Measure("days between the first two illnesses, give or take a day, and the age band", all, OnsetSpacing),
            Measure("first and last day of the record, and the age band", all, f => s => s.Child.Days == f.Shared.Child.Days && s.Child.AgeBand == f.Shared.Child.AgeBand),
            Measure("the age band and the study group", all, f => s => s.Child.AgeBand == f.Shared.Child.AgeBand && s.Child.StudyGroup == f.Shared.Child.StudyGroup),
        ];
    }

    /// <summary>Writes the attacks as rows of a table.</summary>
    internal static int Run(int families)
    {
        Console.WriteLine($"{families} simulated families of about two months:");
        Console.WriteLine("| what somebody knows | file found for certain | right guess |");
        Console.WriteLine("|---|---|---|");
        foreach (var attack in Of(families, 60, 9_000))
            Console.WriteLine(FormattableString.Invariant($"| {attack.Knows} | {attack.FoundAlone:0 %} | {attack.RightGuess:0 %} |"));
        return 0;
    }

    private static Family FamilyOf(int seed, int days, int n)
    {
        var (log, _) = SimulatedChild.Make(ManyFamilies.Options(1 + n) with { Seed = seed, Days = days + (seed % 11) });
        var shared = Sharing.Share(Reviewer.Review(log, new ReviewOptions { Draws = 200 }), new ShareOptions
        {
            Child = ChildCode.Random(),
            AgeBand = (AgeBand)(1 + (n % 3)),
            StudyGroup = StudyGroup.TryRead(n % 2 == 0 ? "A" : "B", out var group) ? group : null,
        });
        return new(log, shared, ByDay<Session>(log), ByDay<Check>(log, c => c.SpO2 is not null));
    }

    /// <summary>Counted again from the notes, not from the findings: the attacker has the notes and a pencil.</summary>
    private static int[] ByDay<T>(CareLog log, Func<T, bool>? counts = null)
        where T : CareEntry
    {
        var starts = new LocalTime(4, 0);
        var first = log.Entries.Min(e => CareDay.Of(e.When.Stated, starts));
        var last = log.Entries.Max(e => CareDay.Of(e.When.Stated, starts));
        var days = new int[Period.DaysBetween(first, last) + 1];
        foreach (var entry in log.Entries.OfType<T>().Where(e => counts?.Invoke(e) ?? true)) days[Period.DaysBetween(first, CareDay.Of(entry.When.Stated, starts))]++;
        return days;
    }

    private static Attack Measure(string knows, List<Family> families, Func<Family, Func<SharedFindings, bool>> fits)
    {
        var (alone, guess) = (0, 0.0);
        foreach (var family in families)
        {
            var test = fits(family);
            var candidates = families.Where(f => test(f.Shared)).ToList();
            if (!candidates.Contains(family)) continue;
            if (candidates.Count == 1) alone++;
            guess += 1.0 / candidates.Count;
        }

        return new(knows, (double)alone / families.Count, guess / families.Count);
    }

    private static Func<SharedFindings, bool> Window(Func<SharedFindings, int[]> series, int[] known, int length, SeededRandom random)
    {
        var from = random.Below(Math.Max(1, known.Length - length));
        var piece = known.AsSpan(from, Math.Min(length, known.Length)).ToArray();
        return shared => series(shared).AsSpan().IndexOf(piece) >= 0;
    }

    private static Func<SharedFindings, bool> OnsetSpacing(Family family)
    {
        var known = Spacing(family.Shared);
        return shared => shared.Child.AgeBand == family.Shared.Child.AgeBand
            && (known is null ? Spacing(shared) is null : Spacing(shared) is { } days && Math.Abs(days - known.Value) <= 1);
    }

    private static int? Spacing(SharedFindings shared) =>
        shared.Episodes.Where(e => e.Definition == EpisodeDefinition.Main).Select(e => e.OnsetDay).Take(2).ToArray() is [var first, var second] ? second - first : null;

    private static int[] Sessions(SharedFindings shared) => [.. shared.Days.Select(d => d.SessionsDone)];

    private static int[] Readings(SharedFindings shared) => [.. shared.Days.Select(d => d.Readings)];

    private static bool Same(int[] one, int[] other) => one.AsSpan().SequenceEqual(other);
}
