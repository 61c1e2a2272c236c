using CareRecords.Records;

namespace CareRecords.Findings;

/// <summary>The door: what was written down goes in, what may be said of it comes out.</summary>
public static class Reviewer
{
    /// <summary>Everything that is said of one child's records. The same log and options give the same findings everywhere.</summary>
    /// <param name="log">What was written down.</param>
    /// <param name="options">What to look at; null for everything.</param>
    /// <exception cref="NodaTime.TimeZones.DateTimeZoneNotFoundException">The log's zone is not an IANA zone.</exception>
    public static ChildFindings Review(CareLog log, ReviewOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(log);
        var records = ChildRecords.Of(log, options ?? new());
        var chest = new ChestMinutes(records.Sessions, records.Plan);
        var illness = new IllnessByRecord(records);
        var byRecord = RecordEpisodeFindings.Of(records, illness);
        var summary = IllnessSummary.Of(records, illness, byRecord, Modelling.DailySignals.Fit(records, illness));

        var medians = illness.Readings.Where(r => r.Flow == FlowState.Usual).GroupBy(r => r.Day)
            .ToDictionary(g => g.Key, g => (double?)Statistics.Quantiles.Median([.. g.Select(r => r.SpO2)]).Value);
        var sessions = SessionFindings.Of(records, chest);
        var days = DayFindings.Of(records, sessions, chest, day => medians.GetValueOrDefault(day));
        var steps = new TaperSteps(records, illness, days, summary.Episodes).Done();
        summary = summary.WithMaintenance(steps);
        summary = summary with { Course = IllnessCourse.Of(records, illness.Oxygen, summary.Episodes) };
        var places = new DayPlaces(records, summary.Episodes, steps);
        sessions = [.. sessions.Select(s => s with { Episode = places.EpisodeOn(s.CareDay), Step = places.StepOn(s.CareDay) })];
        days = [.. days.Select(d => d with { Episode = places.EpisodeOn(d.Day), Step = places.StepOn(d.Day) })];

        var (baseline, missing) = BaselineFinding.Of(records, illness);
        return new()
        {
            Span = new(records.From, records.To, log.Zone, records.Plan.DayStarts, days.Count(d => d.HasRecords), [.. days.Where(d => !d.HasRecords).Select(d => d.Day)]),
            Plan = PlanInForce.Of(records),
            Sessions = sessions,
            Days = days,
            Adherence = AdherenceSummary.Of(records, sessions, days, chest),
            Baseline = baseline,
            BaselineMissing = missing,
            Illness = summary,
            Taper = new(PlannedSteps.Of(records, chest), steps, Wean.InWords(steps, summary.Episodes)),
            Recovery = RecoveryCurve.Of(summary.Episodes, records.Options),
            SessionEffect = SessionEffects.Of(sessions, illness.Oxygen),
            SaturationByFlow = BaselineFinding.ByFlow(records),
            Quality = QualitySummary.Of(records, sessions),
            SinceLastReview = SinceLastReview.Of(records, sessions, days, summary.Episodes),
            Flags = Flags.Of(records, illness.Oxygen, sessions, steps),
        };
    }
}
