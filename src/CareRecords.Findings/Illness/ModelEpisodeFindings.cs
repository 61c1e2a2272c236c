using CareRecords.Findings.Modelling;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Episodes by the model as findings: its onset, peak and recovery with their intervals, beside what the record shows of the same days.</summary>
internal static class ModelEpisodeFindings
{
    private const int RelapseDays = 7, MostSources = 12;

    private const string Estimated =
        "hidden Markov model over readings, flows and signs; interval calibrated on simulated children; over several episodes the record's bracket is taken, widened to it";

    private const string NotEstablished =
        "hidden Markov model over readings, flows and signs: recovery held for 48 hours is not established by the end of the record, censored there";

    /// <summary>The findings in order of onset, not yet numbered.</summary>
    public static IReadOnlyList<EpisodeFinding> Of(ChildRecords records, IllnessByRecord illness, IllnessModelResult model)
    {
        var found = new List<EpisodeFinding>();
        for (var i = 0; i < model.Episodes.Count; i++)
        {
            var until = i + 1 < model.Episodes.Count ? records.StartOf(records.From.PlusDays(model.Episodes[i + 1].OnsetDay)) : Instant.MaxValue;
            found.Add(One(records, illness, model.Episodes[i], until));
        }

        return found;
    }

    /// <summary>
    /// Numbers episodes and says which are relapses: begun within seven days of the recovery (the estimate, else the record's first moment known
    /// recovered) of the one before, or before it had recovered.
    /// </summary>
    public static IReadOnlyList<EpisodeFinding> Numbered(IEnumerable<EpisodeFinding> episodes)
    {
        var numbered = new List<EpisodeFinding>();
        foreach (var episode in episodes.OrderBy(e => e.Onset))
        {
            var previous = numbered.LastOrDefault();
            var recovered = previous?.Recovery.Estimate ?? previous?.Recovery.DaysHigh;
            var since = previous is not null && recovered is { } days ? Math.Max(0, Period.DaysBetween(previous.Onset, episode.Onset) - days) : (double?)null;
            numbered.Add(episode with
            {
                Id = FormattableString.Invariant($"E{numbered.Count + 1}"),
                DaysSincePreviousRecovery = since,
                RelapseOf = previous is not null && (since is null or <= RelapseDays) ? previous.Id : null,
            });
        }

        return numbered;
    }

    private static EpisodeFinding One(ChildRecords records, IllnessByRecord illness, ModelEpisode episode, Instant until)
    {
        LocalDate Day(int day) => LocalDate.Min(records.From.PlusDays(day), records.To);
        var (onset, last) = (Day(episode.OnsetDay), Day(Math.Max(episode.LastDay, episode.OnsetDay)));
        var days = illness.Days.Where(d => d.Day >= onset && d.Day <= last).ToList();
        var checks = days.SelectMany(d => records.On(d.Day)).OfType<Check>().ToList();
        var raised = checks.Where(c => illness.Oxygen.StateOf(c.OxygenLitresPerMinute, records.DayOf(c)) == FlowState.Above).ToList();
        return new EpisodeFinding
        {
            Id = "",
            Onset = onset,
            OnsetLow = Day(episode.OnsetLow),
            OnsetHigh = Day(episode.OnsetHigh),
            Evidence = Evidence(days) + (episode.OnsetLow == 0 ? "; it may have begun before the record does" : ""),
            Peak = raised.Count > 0 ? WorstDay(records, raised) : Day(episode.PeakDay),
            LowestSpO2 = checks.Min(c => c.SpO2),
            HighestOxygen = checks.Max(c => c.OxygenLitresPerMinute),
            MostSessions = days.Max(d => records.On(d.Day).OfType<Session>().Count()),
            Recovery = Recovery(records, illness, episode, onset, last, until),
            Sources = Sources(days, checks),
        };
    }

    private static RecoveryFinding Recovery(ChildRecords records, IllnessByRecord illness, ModelEpisode episode, LocalDate onset, LocalDate last, Instant until)
    {
        var begin = records.StartOf(onset);
        var bracket = RecoveryBracket.Of(illness.Moments, begin, records.StartOf(last.PlusDays(1)), until);
        var (lastIll, recovery) = (Math.Max(0, (bracket.LastIll - begin).TotalDays), episode.Recovery);
        if (recovery.Censored) return new(lastIll, null, null, recovery.Low, null, recovery.Level, true, NotEstablished) { RecordHigh = (bracket.FirstWell - begin)?.TotalDays, Curve = episode.Curve };

        // One low or high reading is not knowledge: the bracket is never narrower than what the model leaves open.
        var firstWell = bracket.FirstWell is { } first ? (first - begin).TotalDays : 0;
        return new(Math.Min(lastIll, recovery.Low), Math.Max(firstWell, recovery.High!.Value),
            recovery.Days, recovery.Low, recovery.High, recovery.Level, false, Estimated)
        { RecordLow = lastIll, RecordHigh = (bracket.FirstWell - begin)?.TotalDays, Curve = episode.Curve };
    }

    private static string Evidence(List<DayEvidence> days) => days.FirstOrDefault(d => d.Evidence.Count > 0) is { } first
        ? (first == days[0] ? "" : $"from {Words.Day(first.Day)}: ") + string.Join("; ", first.Evidence)
        : "saturation lower than usual, by the model";

    private static LocalDate WorstDay(ChildRecords records, List<Check> raised) =>
        records.DayOf(raised.OrderByDescending(c => c.OxygenLitresPerMinute).ThenBy(c => c.SpO2 ?? 100).First());

    private static List<SourceLine> Sources(List<DayEvidence> days, List<Check> checks)
    {
        List<SourceLine> shown = [.. days.SelectMany(d => d.Sources).Distinct().Take(MostSources)];
        return shown.Count > 0 ? shown : [.. checks.Where(c => c.SpO2 is not null).OrderBy(c => c.SpO2).Take(MostSources).SelectMany(c => c.Sources)];
    }
}
