using NodaTime;

namespace CareRecords.Findings;

/// <summary>The way down after an illness: when it was done, and how it went, in the trade's words and without causes.</summary>
internal static class Wean
{
    private const double Slack = 0.25;

    /// <summary>
    /// Days from onset to the first step that is back at (or under) the load of the step before the onset, after a step
    /// above it; null when the load never rose, when it lasts, or when the next episode came first.
    /// </summary>
    public static double? BackToMaintenanceDays(EpisodeFinding episode, EpisodeFinding? next, IReadOnlyList<TaperStep> steps)
    {
        var before = steps.LastOrDefault(s => s.From < episode.Onset);
        if (before is null) return null;
        var raised = false;
        foreach (var step in steps.Where(s => s.From >= episode.Onset && (next is null || s.From < next.Onset)))
        {
            var atMaintenance = step.SessionsPerDay <= before.SessionsPerDay + Slack
                && (step.MinutesPerArea is not { } m || before.MinutesPerArea is not { } b || m <= b + Slack);
            if (raised && atMaintenance) return Period.DaysBetween(episode.Onset, step.From);
            raised |= !atMaintenance;
        }

        return null;
    }

    public static string InWords(IReadOnlyList<TaperStep> steps, IReadOnlyList<EpisodeFinding> episodes)
    {
        if (steps.Count == 0) return "No session was written, so there are no steps.";
        if (steps.Count == 1) return $"One level throughout: {Load(steps[0])}.";
        var parts = episodes.Select(e => Of(e, [.. steps.Where(s => s.Episode == e.Id)])).OfType<string>().ToList();
        return parts.Count > 0
            ? string.Join(" ", parts)
            : $"{Words.Count(steps.Count, "step", "steps")}, from {Load(steps[0])} to {Load(steps[^1])}; none follows an episode.";
    }

    private static string? Of(EpisodeFinding episode, IReadOnlyList<TaperStep> steps)
    {
        var down = steps.Where(s => s.Direction == StepDirection.Down).ToList();
        if (down.Count == 0) return null;
        var top = steps.MaxBy(s => s.SessionsPerDay)!;
        int After(StepOutcome outcome) => down.Count(s => s.FollowedBy == outcome);
        var (setbacks, steady, unknown) = (After(StepOutcome.Setback), After(StepOutcome.Steady), After(StepOutcome.Unknown));
        var held = down.Select(s => s.DaysHeld).ToList();
        var each = down.Count == 1 ? $"held {Words.Count(held[0], "day", "days")}" : held.Min() == held.Max() ? $"each held {Words.Count(held[0], "day", "days")}" : FormattableString.Invariant($"held {held.Min()} to {held.Max()} days");
        return $"{episode.Id}: from {Load(top)} down to {Load(down[^1])} in {Words.Count(down.Count, "step", "steps")}, the first on day {down[0].DayOfEpisode} of the episode, {each}; "
            + $"within seven days {setbacks} followed by a setback, {steady} steady, {unknown} cannot yet be told.";
    }

    private static string Load(TaperStep step) =>
        $"{Words.Number(step.SessionsPerDay)} {(step.SessionsPerDay == 1 ? "session" : "sessions")} a day" + (step.MinutesPerArea is { } m ? $" of {Words.Number(m)} minutes an area" : "");
}
