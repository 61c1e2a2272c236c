using System.Text.Json;

namespace CareRecords.Findings;

/// <summary>Adherence in findings.json.</summary>
internal static class AdherenceJson
{
    public static void Write(Utf8JsonWriter json, AdherenceFindings adherence)
    {
        Group(json, adherence.Overall);
        Groups(json, "byWeek", adherence.ByWeek);
        Groups(json, "byState", adherence.ByState);
        json.Object("effort", adherence, a =>
        {
            json.Object("all", a.Effort.All, e => Effort(json, e));
            json.Object("well", a.Effort.Well, e => Effort(json, e));
            json.Object("illness", a.Effort.Illness, e => Effort(json, e));
        });
        Groups(json, "byTimeOfDay", adherence.ByTimeOfDay);
        Groups(json, "byWriter", adherence.ByWriter);
        json.Objects("rounding", adherence.Rounding, r =>
        {
            json.WriteNumber("minutes", r.Minutes);
            json.WriteNumber("feedGapFlips", r.FeedGapFlips);
            json.WriteNumber("inhalerGapFlips", r.InhalerGapFlips);
        });
        json.Objects("runCharts", adherence.RunCharts, c => RunChart(json, c));
        json.Objects("targetTests", adherence.TargetTests, t =>
        {
            json.WriteString("gap", t.Gap);
            json.Number("target", t.Target);
            json.Number("pValue", t.PValue);
        });
        json.Objects("reasons", adherence.Reasons, r =>
        {
            json.WriteString("reason", r.Reason);
            json.WriteNumber("times", r.Times);
        });
    }

    private static void Effort(Utf8JsonWriter json, Effort effort)
    {
        json.WriteNumber("days", effort.Days);
        json.Number("medianMinutes", effort.MedianMinutes);
        json.Number("leastMinutes", effort.LeastMinutes);
        json.Number("mostMinutes", effort.MostMinutes);
        json.WriteNumber("nightSessions", effort.NightSessions);
    }

    private static void Groups(Utf8JsonWriter json, string name, IReadOnlyList<AdherenceGroup> groups) => json.Objects(name, groups, g =>
    {
        json.WriteString("label", g.Label);
        if (g.From is not null) json.Day("from", g.From);
        if (g.To is not null) json.Day("to", g.To);
        Group(json, g);
    });

    private static void Group(Utf8JsonWriter json, AdherenceGroup group)
    {
        json.Object("feedGap", group.FeedGap, s => Share(json, s));
        json.Object("inhalerGap", group.InhalerGap, s => Share(json, s));
        json.Object("sessions", group.Sessions, d => Done(json, d));
        json.Object("daysAllDone", group.DaysAllDone, s => Share(json, s));
        json.Object("minutes", group.Minutes, d => Done(json, d));
    }

    public static void Share(Utf8JsonWriter json, ShareKept share)
    {
        json.WriteNumber("kept", share.Kept);
        json.WriteNumber("judged", share.Judged);
        json.WriteNumber("unknown", share.Unknown);
        json.Number("proportion", share.Proportion);
        json.Number("low", share.Low);
        json.Number("high", share.High);
        json.Number("level", share.Level);
        json.WriteString("method", share.Method);
        json.Number("plainLow", share.PlainLow);
        json.Number("plainHigh", share.PlainHigh);
        json.Number("worstCase", share.WorstCase);
        json.Number("bestCase", share.BestCase);
        json.Number("widthRatio", share.WidthRatio);
    }

    private static void Done(Utf8JsonWriter json, DoneOfPlanned done)
    {
        json.Number("done", done.Done);
        json.Number("planned", done.Planned);
        json.Number("proportion", done.Proportion);
        json.WriteNumber("daysCounted", done.DaysCounted);
        if (done.NotWritten is null) return;
        json.Number("plannedNotWritten", done.NotWritten);
        json.Number("worstCase", done.WorstCase);
    }

    private static void RunChart(Utf8JsonWriter json, RunChartFinding chart)
    {
        json.WriteString("series", chart.Series);
        json.Number("median", chart.Median);
        json.WriteNumber("usefulPoints", chart.UsefulPoints);
        json.WriteNumber("longestRun", chart.LongestRun);
        json.WriteNumber("longestRunLimit", chart.LongestRunLimit);
        json.WriteNumber("crossings", chart.Crossings);
        json.WriteNumber("crossingsLimit", chart.CrossingsLimit);
        json.Flag("signal", chart.Signal);
    }
}
