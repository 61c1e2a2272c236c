using CareRecords.Statistics;

namespace CareRecords.Findings;

/// <summary>Days of a step on which the plan was the same.</summary>
/// <param name="Value">The plan's number; null when it does not say.</param>
/// <param name="Days">The days, in order.</param>
internal sealed record PlanRun(double? Value, IReadOnlyList<DayFinding> Days);

/// <summary>The plan while a step was held: one number cannot stand for a step within which the plan changed.</summary>
internal static class PlanWithinStep
{
    /// <summary>The plan's runs over the days held, in order.</summary>
    public static IReadOnlyList<PlanRun> Of(IEnumerable<DayFinding> held, Func<DayFinding, double?> planned)
    {
        var runs = new List<(double? Value, List<DayFinding> Days)>();
        foreach (var day in held)
        {
            if (runs.Count == 0 || runs[^1].Value != planned(day)) runs.Add((planned(day), []));
            runs[^1].Days.Add(day);
        }

        return [.. runs.Select(r => new PlanRun(r.Value, r.Days))];
    }

    /// <summary>"4 until 30 Mar, then 3"; null when the plan did not change.</summary>
    public static string? InWords(IReadOnlyList<PlanRun> runs) => runs.Count < 2 ? null
        : string.Join(", then ", runs.Select((r, i) => Value(r.Value) + (i + 1 < runs.Count ? $" until {Words.ShortDay(r.Days[^1].Day)}" : "")));

    /// <summary>" (lower 4, upper 3, vibration 1)" where the parts differ; else nothing.</summary>
    public static string InWords(PartMinutes parts)
    {
        List<(string Name, double Minutes)> known = [.. new[] { ("lower", parts.Lower), ("upper", parts.Upper), ("vibration", parts.Vibration) }
            .Where(p => p.Item2 is not null).Select(p => (p.Item1, p.Item2!.Value))];
        return known.Select(p => p.Minutes).Distinct().Count() < 2 ? "" : $" ({string.Join(", ", known.Select(p => $"{p.Name} {Words.Number(p.Minutes)}"))})";
    }

    /// <summary>
    /// Where what was done differs from the plan by <paramref name="least"/> or more: the step's level where the plan stayed, else the middle of
    /// each run's days.
    /// </summary>
    public static IEnumerable<string> Differs(IReadOnlyList<PlanRun> runs, double? level, Func<DayFinding, double?> done, double least, string unit)
    {
        foreach (var run in runs)
        {
            var middle = runs.Count == 1 ? level : Quantiles.Median([.. run.Days.Select(done).OfType<double>()]) is { IsKnown: true } median ? median.Value : null;
            if (run.Value is not { } plan || middle is not { } was || Math.Abs(was - plan) < least) continue;
            var when = runs.Count == 1 ? ""
                : run.Days.Count == 1 ? $" on {Words.ShortDay(run.Days[0].Day)}" : $" from {Words.ShortDay(run.Days[0].Day)} to {Words.ShortDay(run.Days[^1].Day)}";
            yield return $"{Words.Number(was)} {unit}{when}, plan {Words.Number(plan)}";
        }
    }

    private static string Value(double? plan) => plan is { } value ? Words.Number(value) : "not said";
}
