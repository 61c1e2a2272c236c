using CareRecords.Records;
using CareRecords.Statistics;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Everything against the plan, put together.</summary>
internal static class AdherenceSummary
{
    public static AdherenceFindings Of(ChildRecords records, IReadOnlyList<SessionFinding> sessions, IReadOnlyList<DayFinding> days, ChestMinutes chest)
    {
        var groups = new AdherenceGroups(records, sessions, days);
        var overall = groups.Overall();
        return new()
        {
            Overall = overall,
            ByWeek = groups.ByWeek(),
            ByState = groups.ByState(),
            Effort = (EffortOf(days, sessions), EffortOf([.. days.Where(d => d.Episode is null)], [.. sessions.Where(s => s.Episode is null)]),
                EffortOf([.. days.Where(d => d.Episode is not null)], [.. sessions.Where(s => s.Episode is not null)])),
            UsualParts = chest.UsualParts,
            Parts = (ChestMinutes.ByPart(sessions.Select(s => s.Session)), ChestMinutes.ByPart(sessions.Where(s => s.Episode is not null).Select(s => s.Session))),
            ByTimeOfDay = groups.ByTimeOfDay(),
            ByWriter = groups.ByWriter(),
            Rounding = [RoundingCheck.Of(records, sessions, 5), RoundingCheck.Of(records, sessions, 10)],
            RunCharts = Charts(records, days),
            TargetTests = Tests(records, overall),
            Reasons = Reasons(records),
        };
    }

    private static Effort EffortOf(IReadOnlyList<DayFinding> days, IReadOnlyList<SessionFinding> sessions)
    {
        double[] minutes = [.. days.Where(d => d.Minutes is not null && d.SessionsWithoutMinutes == 0).Select(d => d.Minutes!.Value)];
        var night = sessions.Count(s => s.Start.Hour is >= 22 or < 6);
        return minutes.Length == 0 ? new(0, null, null, null, night) : new(minutes.Length, Quantiles.Median(minutes).Value, minutes.Min(), minutes.Max(), night);
    }

    private static IReadOnlyList<TargetTest> Tests(ChildRecords records, AdherenceGroup overall)
    {
        if (records.Plan.Number(PlanItem.TargetShareKept, records.To) is not ({ } percent and >= 0 and <= 100)) return [];
        var target = percent / 100;
        TargetTest Test(string gap, ShareKept share) =>
            new(gap, target, BinomialTest.Against(share.Kept, share.Judged, target).TryGet(out var test) ? test.PValue : null);
        return [Test("feed gap", overall.FeedGap), Test("inhaler gap", overall.InhalerGap)];
    }

    /// <summary>Run charts of days. Sessions start anew where the plan's number last changed: a planned step is no signal.</summary>
    private static IReadOnlyList<RunChartFinding> Charts(ChildRecords records, IReadOnlyList<DayFinding> days)
    {
        var since = records.Log.Plan.Rows.Where(r => r.Item == PlanItem.SessionsPerDay && r.From is not null && r.From <= records.To).Max(r => r.From) ?? records.From;
        var sinceInWords = since > records.From ? $" since the plan last changed on {Words.Day(since)}" : "";
        return
        [
            .. Chart(RunSeriesKind.Sessions, since > records.From ? since : null, $"sessions a day{sinceInWords}", days.Where(d => d.HasRecords && d.Day >= since).Select(d => (double)d.SessionsDone)),
            .. Chart(RunSeriesKind.FeedGapsKept, null, "share of feed gaps kept a day, per cent", days.Where(d => d.FeedGaps.Kept + d.FeedGaps.NotKept > 0)
                .Select(d => 100.0 * d.FeedGaps.Kept / (d.FeedGaps.Kept + d.FeedGaps.NotKept))),
            .. Chart(RunSeriesKind.Saturation, null, "median saturation at usual oxygen a day, per cent", days.Where(d => d.MedianSpO2AtUsualOxygen is not null).Select(d => d.MedianSpO2AtUsualOxygen!.Value)),
        ];
    }

    private static IEnumerable<RunChartFinding> Chart(RunSeriesKind kind, LocalDate? since, string series, IEnumerable<double> points)
    {
        double[] values = [.. points];
        if (values.Length == 0) yield break;
        yield return RunChart.Signals(values).TryGet(out var s)
            ? new(kind, since, series, s.Centre, s.Useful, s.LongestRun, s.LongestRunLimit, s.Crossings, s.CrossingsLimit, s.Any)
            : new(kind, since, series, Quantiles.Median(values).Value, values.Count(v => v != Quantiles.Median(values).Value), 0, 0, 0, 0, null);
    }

    private static IReadOnlyList<(string Reason, int Times)> Reasons(ChildRecords records)
    {
        var omitted = records.Omitted.Select(o => o.Reason is { } reason ? $"not done: {reason.Trim()}" : "not done, no reason written");
        var shortened = records.Sessions.Where(s => !string.IsNullOrWhiteSpace(s.StoppedEarly))
            .Select(s => s.StoppedEarly!.Trim() is "yes" or "y" ? "stopped early, no reason written" : $"stopped early: {s.StoppedEarly.Trim()}");
        var vomited = records.Sessions.Where(s => s.Vomited == true && string.IsNullOrWhiteSpace(s.StoppedEarly)).Select(_ => "vomited during a session");
        return [.. omitted.Concat(shortened).Concat(vomited).GroupBy(r => r).Select(g => (g.Key, g.Count())).OrderByDescending(r => r.Item2).ThenBy(r => r.Key, StringComparer.Ordinal)];
    }
}
