using CareRecords.Records;
using CareRecords.Statistics;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Steps as done, each with its episode, what went before and what followed.</summary>
internal sealed class TaperSteps(ChildRecords records, IllnessByRecord illness, IReadOnlyList<DayFinding> days, IReadOnlyList<EpisodeFinding> episodes)
{
    private const int LongestLinkDays = 60;
    private const double SameSessions = 0.5;
    private const double SameMinutes = 0.25;

    public IReadOnlyList<TaperStep> Done()
    {
        List<DailyLoad> load = [.. days.Where(d => d.SessionsDone > 0).Select(d => new DailyLoad(d.Day, d.SessionsDone, d.MinutesPerArea))];
        var segments = LoadSegments.Of(load);
        var stability = new Stability(records, illness);
        var outcomes = new StepOutcomes(records, illness.Oxygen, days, episodes);
        var steps = new List<TaperStep>();
        for (var i = 0; i < segments.Count; i++)
        {
            var theirs = load[segments[i].First..segments[i].End];
            var to = i + 1 < segments.Count ? load[segments[i + 1].First].Day.PlusDays(-1) : records.To;
            steps.Add(Step(i, theirs, to, steps.LastOrDefault(), stability));
        }

        return [.. steps.Select((s, i) =>
        {
            var (outcome, what) = outcomes.After(steps, i, StepOutcomes.MainDays);
            return s with { FollowedBy = outcome, FollowedByWhat = what, FollowedWithin14 = outcomes.After(steps, i, 14).Outcome, FollowedWithin30 = outcomes.After(steps, i, 30).Outcome };
        })];
    }

    private TaperStep Step(int index, List<DailyLoad> load, LocalDate to, TaperStep? previous, Stability stability)
    {
        var from = load[0].Day;
        var sessions = Quantiles.Median([.. load.Select(d => (double)d.Sessions)]).Value;
        double? minutes = Quantiles.Median([.. load.Where(d => d.MinutesPerArea is not null).Select(d => d.MinutesPerArea!.Value)]) is { IsKnown: true } m ? m.Value : null;
        var episode = episodes.LastOrDefault(e => e.Onset <= from && Period.DaysBetween(e.Onset, from) <= LongestLinkDays);
        var held = days.Where(d => from <= d.Day && d.Day <= to).ToList();
        var (plannedSessions, plannedMinutes) = (MostDays(held.Select(d => d.SessionsPlanned)), MostDays(held.Select(d => d.MinutesPerAreaPlanned)));
        var (planOfSessions, planOfMinutes) = (PlanWithinStep.Of(held, d => d.SessionsPlanned), PlanWithinStep.Of(held, d => d.MinutesPerAreaPlanned));
        var parts = ChestMinutes.ByPart(held.SelectMany(d => records.On(d.Day)).OfType<Session>());
        var first = records.On(from).OfType<Session>().Select(records.Placed).DefaultIfEmpty(records.StartOf(from)).Min();
        var stable = stability.Before(first);
        return new()
        {
            Id = FormattableString.Invariant($"S{index + 1}"),
            From = from,
            To = to,
            SessionsPerDay = sessions,
            MinutesPerArea = minutes,
            PlannedSessionsPerDay = plannedSessions,
            PlannedMinutesPerArea = plannedMinutes,
            PlannedSessionsInWords = PlanWithinStep.InWords(planOfSessions),
            PlannedMinutesInWords = PlanWithinStep.InWords(planOfMinutes),
            Parts = parts,
            Direction = previous is null ? StepDirection.Same : Direction(previous, sessions, minutes),
            Episode = episode?.Id,
            DayOfEpisode = episode is null ? null : Period.DaysBetween(episode.Onset, from),
            StableHoursBefore = stable?.Hours,
            StableInWords = stable?.InWords,
            FollowedBy = StepOutcome.Unknown,
            DiffersFromPlan = Joined(
                PlanWithinStep.Differs(planOfSessions, sessions, d => d.SessionsDone > 0 ? d.SessionsDone : null, SameSessions, "sessions a day"),
                PlanWithinStep.Differs(planOfMinutes, minutes, d => d.MinutesPerArea, SameMinutes, "minutes an area" + PlanWithinStep.InWords(parts))),
        };
    }

    /// <summary>By sessions; with as many sessions, by minutes; where they disagree, by their product.</summary>
    private static StepDirection Direction(TaperStep previous, double sessions, double? minutes)
    {
        var bySessions = Sign(sessions - previous.SessionsPerDay, SameSessions);
        var byMinutes = minutes is { } now && previous.MinutesPerArea is { } then ? Sign(now - then, SameMinutes) : 0;
        var way = bySessions == 0 ? byMinutes
            : byMinutes == -bySessions ? Sign((sessions * minutes!.Value) - (previous.SessionsPerDay * previous.MinutesPerArea!.Value), 0)
            : bySessions;
        return way > 0 ? StepDirection.Up : way < 0 ? StepDirection.Down : StepDirection.Same;
    }

    private static int Sign(double change, double least) => change > 0 && change >= least ? 1 : change < 0 && -change >= least ? -1 : 0;

    private static double? MostDays(IEnumerable<double?> planned) =>
        planned.GroupBy(p => p).OrderByDescending(g => g.Count()).Select(g => g.Key).FirstOrDefault();

    private static string? Joined(params IEnumerable<string>[] parts) => string.Join("; ", parts.SelectMany(p => p)) is { Length: > 0 } words ? words : null;
}
