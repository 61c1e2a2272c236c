using CareRecords.Records;
using CareRecords.Statistics;

namespace CareRecords.Findings;

/// <summary>How complete, how exact and how contemporaneous the records are.</summary>
internal static class QualitySummary
{
    public static QualityFindings Of(ChildRecords records, IReadOnlyList<SessionFinding> sessions)
    {
        KindCompleteness Kind(string kind, IReadOnlyList<CareEntry> entries) =>
            new(kind, entries.Count, entries.Select(records.DayOf).Distinct().Count(), entries.Count(e => e.When.IsApproximate));
        return new()
        {
            Days = records.Days.Count(),
            DaysWithRecords = records.Days.Count(records.HasRecords),
            ByKind = [Kind("sessions", records.Sessions), Kind("feeds", records.Feeds), Kind("medicines", records.Doses), Kind("checks", records.Checks), Kind("signs", records.Signs)],
            ClockMinutes = Heaping(records),
            LateEntries = LateLook.Of(records),
            ReadingsWithoutOxygen = records.Checks.Count(c => c.SpO2 is not null && c.OxygenLitresPerMinute is null),
            Missing = [.. WhatIsMissing(records, sessions)],
        };
    }

    private static DigitPreference Heaping(ChildRecords records)
    {
        List<int> minutes = [.. records.Entries.SelectMany(e => new[] { e.Start, e.End }).Where(t => t is { Precision: TimePrecision.Exact, IsExact: true }).Select(t => t!.Stated.Minute)];
        return MinuteHeaping.Of(minutes).TryGet(out var h)
            ? new(h.Count, h.Fives.Value / 500, h.Quarters.Value / 1500, h.Fives.Value)
            : new(0, null, null, null);
    }

    private static IEnumerable<string> WhatIsMissing(ChildRecords records, IReadOnlyList<SessionFinding> sessions)
    {
        var days = records.Days.Count();
        var unwritten = records.Days.Count(d => !records.HasRecords(d));
        if (unwritten > 0) yield return $"Nothing was written on {Words.Count(unwritten, "day", "days")} of {days}.";
        var noFeed = sessions.Count(s => s.FeedGap.Verdict == GapVerdict.Unknown);
        if (noFeed > 0) yield return $"The feed gap cannot be told for {noFeed} of {Words.Count(sessions.Count, "session", "sessions")}.";
        var noInhaler = sessions.Count(s => s.InhalerGap.Verdict == GapVerdict.Unknown);
        if (noInhaler > 0) yield return $"The inhaler gap cannot be told for {noInhaler} of {Words.Count(sessions.Count, "session", "sessions")}.";
        var noEnd = records.Feeds.Count(f => f.End is null);
        if (noEnd > 0) yield return $"{Words.Count(noEnd, "feed has", "feeds have")} no end written.";
        var readings = records.Checks.Count(c => c.SpO2 is not null);
        var noFlow = records.Checks.Count(c => c.SpO2 is not null && c.OxygenLitresPerMinute is null);
        if (readings == 0) yield return "No saturation was written.";
        else if (noFlow > 0) yield return $"{noFlow} of {Words.Count(readings, "saturation", "saturations")} have no oxygen beside them.";
        var noMinutes = sessions.Count(s => s.Minutes is null);
        if (noMinutes > 0) yield return $"{Words.Count(noMinutes, "session has", "sessions have")} no minutes written.";
        if (records.Log.Plan.Rows.Count == 0) yield return "There is no plan: limits are starting values, and nothing can be counted against a plan.";
        else if (records.Days.All(d => records.Plan.Number(PlanItem.SessionsPerDay, d) is null)) yield return "The plan does not say how many sessions a day.";
    }
}
