using NodaTime;

namespace CareRecords.Findings;

/// <summary>What followed a step within seven, fourteen and thirty days; no cause is meant.</summary>
internal sealed class StepOutcomes(ChildRecords records, UsualOxygen oxygen, IReadOnlyList<DayFinding> days, IReadOnlyList<EpisodeFinding> episodes)
{
    public const int MainDays = 7;

    private readonly Dictionary<LocalDate, DayFinding> _days = days.ToDictionary(d => d.Day);

    /// <summary>What followed, from the steps as done in order, the step's place among them and how many days to look.</summary>
    public (StepOutcome Outcome, string What) After(IReadOnlyList<TaperStep> steps, int index, int lookDays)
    {
        var step = steps[index];
        var end = step.From.PlusDays(lookDays);
        var setbacks = new List<string>();
        if (steps.Skip(index + 1).FirstOrDefault(s => s.Direction == StepDirection.Up) is { } next && next.From <= end)
            setbacks.Add($"a step up on {Words.Day(next.From)}");
        if (episodes.FirstOrDefault(e => e.Onset > step.From && e.Onset <= end) is { } episode)
            setbacks.Add($"{episode.Id} began on {Words.Day(episode.Onset)}");
        if (OxygenUp(step.From, end) is { } up)
            setbacks.Add($"oxygen up to {Words.Flow(up.Flow)} on {Words.Day(up.Day)}");
        if (setbacks.Count > 0) return (StepOutcome.Setback, string.Join("; ", setbacks));
        if (end > records.To) return (StepOutcome.Unknown, $"the record ends within {lookDays} days");
        var written = Enumerable.Range(1, lookDays).Count(i => _days.TryGetValue(step.From.PlusDays(i), out var day) && day.HasRecords);
        return 2 * written <= lookDays
            ? (StepOutcome.Unknown, $"only {Words.Count(written, "day", "days")} of {lookDays} were written")
            : (StepOutcome.Steady, $"no step up, no new episode, no oxygen up in {lookDays} days");
    }

    /// <summary>The first day on which more oxygen than usual, and than on the step's day and the day before, was written.</summary>
    private (LocalDate Day, double Flow)? OxygenUp(LocalDate from, LocalDate end)
    {
        var at = new[] { from.PlusDays(-1), from }.Max(d => _days.GetValueOrDefault(d)?.HighestOxygen);
        for (var day = from.PlusDays(1); day <= end; day = day.PlusDays(1))
        {
            if (_days.GetValueOrDefault(day)?.HighestOxygen is not { } flow) continue;
            if (oxygen.StateOf(flow, day) == FlowState.Above && flow > (at ?? oxygen.On(day))) return (day, flow);
        }

        return null;
    }
}
