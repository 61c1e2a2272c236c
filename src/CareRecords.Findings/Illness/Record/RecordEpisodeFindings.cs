using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Episodes by the record as findings: what the first day showed, how bad it got, and when the record brackets recovery.</summary>
internal static class RecordEpisodeFindings
{
    private const int RelapseDays = 7;
    private const string Bracketed =
        "bracket from the record (48 hours in band on usual oxygen without a noted sign); the middle of the bracket is shown as the estimate, without an interval";

    public static IReadOnlyList<EpisodeFinding> Of(ChildRecords records, IllnessByRecord illness)
    {
        var found = new List<EpisodeFinding>();
        for (var i = 0; i < illness.Episodes.Count; i++)
        {
            var until = i + 1 < illness.Episodes.Count ? records.StartOf(illness.Days[illness.Episodes[i + 1].First].Day) : Instant.MaxValue;
            found.Add(One(records, illness, illness.Episodes[i], until, found.LastOrDefault()) with { Id = FormattableString.Invariant($"E{i + 1}") });
        }

        return found;
    }

    private static EpisodeFinding One(ChildRecords records, IllnessByRecord illness, RecordEpisode episode, Instant until, EpisodeFinding? previous)
    {
        var days = illness.Days.Skip(episode.First).Take(episode.Last - episode.First + 1).ToList();
        var (onset, last) = (days[0].Day, days[^1].Day);
        var begin = records.StartOf(onset);
        var bracket = RecoveryBracket.Of(illness.Moments, begin, records.StartOf(last.PlusDays(1)), until);
        var recovery = Recovery(bracket, begin, until < Instant.MaxValue);
        var checks = days.SelectMany(d => records.On(d.Day)).OfType<Check>().ToList();
        var since = previous?.Recovery.DaysHigh is { } days0 ? (begin - records.StartOf(previous.Onset)).TotalDays - days0 : (double?)null;
        return new EpisodeFinding
        {
            Id = "",
            Onset = onset,
            OnsetLow = illness.Days[episode.EarliestFirst].Day,
            OnsetHigh = onset,
            Evidence = string.Join("; ", days[0].Evidence) + (episode.EarliestFirst == 0 ? "; it may have begun before the record does" : ""),
            Peak = Peak(records, days),
            LowestSpO2 = checks.Min(c => c.SpO2),
            HighestOxygen = checks.Max(c => c.OxygenLitresPerMinute),
            MostSessions = days.Max(d => records.On(d.Day).OfType<Session>().Count()),
            RelapseOf = since <= RelapseDays || (previous is not null && since is null) ? previous!.Id : null,
            DaysSincePreviousRecovery = since,
            Recovery = recovery,
            Sources = [.. days.SelectMany(d => d.Sources).Distinct().Take(12)],
        };
    }

    private static RecoveryFinding Recovery(RecoveryBracket bracket, Instant onset, bool anotherFollows)
    {
        var low = Math.Max(0, (bracket.LastIll - onset).TotalDays);
        if (bracket.FirstWell is { } first)
        {
            var high = (first - onset).TotalDays;
            return new(low, high, (low + high) / 2, null, null, 0.95, false, Bracketed);
        }

        var why = anotherFollows
            ? "not established before the next episode began: censored there"
            : "not established by the end of the record: censored there";
        return new(low, null, null, null, null, 0.95, true, why);
    }

    /// <summary>The day with the most oxygen, and of several the lowest saturation.</summary>
    private static LocalDate? Peak(ChildRecords records, IReadOnlyList<DayEvidence> days) =>
        days.Select(d => (d.Day, Checks: records.On(d.Day).OfType<Check>().ToList())).Where(d => d.Checks.Count > 0)
            .OrderByDescending(d => d.Checks.Max(c => c.OxygenLitresPerMinute) ?? 0).ThenBy(d => d.Checks.Min(c => c.SpO2) ?? 100)
            .Select(d => (LocalDate?)d.Day).FirstOrDefault();
}
