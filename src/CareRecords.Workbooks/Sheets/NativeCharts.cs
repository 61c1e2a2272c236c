using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Building;
using CareRecords.Workbooks.Charts;
using NodaTime;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The native charts of days and weeks: they follow the cells.</summary>
internal static class NativeCharts
{
    public static IReadOnlyList<NativeChart> All(CareLog log, ChildFindings findings, TablePlace days, TablePlace weeks)
    {
        List<NativeChart> charts = [];
        if (findings.Days.Count > 0)
        {
            charts.Add(Sessions(findings.Days, days));
            charts.Add(Saturation(log, findings, days));
            charts.Add(Oxygen(log, findings, days));
        }

        if (findings.Adherence.ByWeek.Count > 0)
        {
            charts.Add(WeeklyShare(findings.Adherence, weeks, "feed gap", g => g.FeedGap));
            charts.Add(WeeklyShare(findings.Adherence, weeks, "inhaler gap", g => g.InhalerGap));
        }

        return charts;
    }

    private static NativeChart Sessions(IReadOnlyList<DayFinding> days, TablePlace place) => ByDay("daily-sessions", NativeChartKind.Line) with
    {
        Title = $"Sessions written each care day, and planned (follows the cells; {days.Count} days)",
        AltText = $"Sessions written on each of {days.Count} care days as circles, none on days without notes; sessions planned as a dashed line. Written: {days.Sum(d => d.SessionsDone)} in all.",
        ValueAxisTitle = "sessions a day",
        ValueNumberFormat = "0",
        ValueMin = 0,
        Series =
        [
            Points(days, place, "sessions done" + DaysSheet.Chart, "done", d => d.HasRecords ? d.SessionsDone : null),
            Series(days, place, "sessions planned" + DaysSheet.Chart, "planned", d => d.SessionsPlanned) with { Marker = NativeMarker.None, Dash = NativeDash.Dash, Colour = "000000" },
        ],
    };

    private static NativeChart Saturation(CareLog log, ChildFindings findings, TablePlace place) => ByDay("daily-saturation", NativeChartKind.Line) with
    {
        Title = $"Daily saturation (follows the cells; {findings.Days.Sum(d => d.Readings)} readings)",
        AltText = "Each care day's median saturation at usual oxygen as circles, and its lowest reading at any flow as triangles. Days without a reading stay empty.",
        Limit = Limit(findings.Days, place, DaysSheet.StopBelow, "plan: stop below", d => log.Plan.NumberFor(PlanItem.StopSaturation, d.Day)),
        ValueAxisTitle = "SpO2, %",
        ValueNumberFormat = "0",
        ValueMin = Math.Floor(Math.Min(findings.Days.Min(d => d.LowestSpO2) ?? 80, findings.Days.Min(d => log.Plan.NumberFor(PlanItem.StopSaturation, d.Day)) ?? 100) / 5) * 5,
        ValueMax = 100,
        Series =
        [
            Points(findings.Days, place, "median SpO2 at usual oxygen, %" + DaysSheet.Chart, "median at usual oxygen", d => d.MedianSpO2AtUsualOxygen),
            Points(findings.Days, place, "lowest SpO2, %" + DaysSheet.Chart, "lowest, any oxygen", d => d.LowestSpO2) with { Marker = NativeMarker.Triangle, Colour = "D55E00" },
        ],
    };

    private static NativeChart Oxygen(CareLog log, ChildFindings findings, TablePlace place) => ByDay("daily-oxygen", NativeChartKind.Column) with
    {
        Title = "Highest oxygen written each care day (follows the cells)",
        AltText = $"Columns of the highest oxygen flow written on each care day, in litres a minute. Highest of all: {FindingWords.Flow(findings.Days.Max(d => d.HighestOxygen))}. Days on which no flow was written stay empty.",
        Limit = Limit(findings.Days, place, DaysSheet.UsualOxygen, "usual oxygen", d => log.Plan.NumberFor(PlanItem.UsualOxygen, d.Day) ?? findings.Baseline?.Oxygen),
        ValueAxisTitle = "oxygen, L/min",
        ValueNumberFormat = "0.0",
        ValueMin = 0,
        Series = [Series(findings.Days, place, "highest oxygen, L/min" + DaysSheet.Chart, "highest oxygen", d => d.HighestOxygen)],
    };

    private static NativeChart WeeklyShare(AdherenceFindings adherence, TablePlace place, string gap, Func<AdherenceGroup, ShareKept> share)
    {
        var overall = share(adherence.Overall);
        var name = char.ToUpperInvariant(gap[0]) + gap[1..];
        return new NativeChart
        {
            Name = "weekly-" + gap.Replace(' ', '-'),
            Kind = NativeChartKind.Line,
            Title = $"{name} kept, by week, with 95 % limits (follows the cells; {overall.Judged} sessions judged)",
            AltText = $"Share of judged sessions whose {gap} was kept, by week, with Wilson's 95 % limits. Over all weeks {overall.Kept} of {overall.Judged} judged; {overall.Unknown} cannot be told.",
            CategoryAxisTitle = "week from",
            CategoryNumberFormat = "d mmm",
            CategoriesAreDates = false,
            ValueAxisTitle = "share kept",
            ValueNumberFormat = "0%",
            ValueMin = 0,
            ValueMax = 1,
            Series =
            [
                Week(adherence, place, $"{gap} share kept{DaysSheet.Chart}", "share kept", g => share(g).Proportion),
                Week(adherence, place, $"{gap} share low{DaysSheet.Chart}", "95 % from", g => share(g).PlainLow) with { Marker = NativeMarker.Triangle, Dash = NativeDash.Dot, Colour = "000000" },
                Week(adherence, place, $"{gap} share high{DaysSheet.Chart}", "95 % to", g => share(g).PlainHigh) with { Marker = NativeMarker.Diamond, Dash = NativeDash.Dot, Colour = "000000" },
            ],
        };
    }

    /// <summary>A limit of the plan day by day; null where the plan never states it, and where it is nought, which is the axis itself.</summary>
    private static NativeLimit? Limit(IReadOnlyList<DayFinding> days, TablePlace place, string heading, string label, Func<DayFinding, double?> value) =>
        days.Any(d => value(d) is > 0) ? new NativeLimit(label, place.Range(heading), [.. days.Select(value)]) : null;

    private static NativeChart ByDay(string name, NativeChartKind kind) => new()
    {
        Name = name,
        Kind = kind,
        Title = "",
        AltText = "",
        CategoryAxisTitle = "care day",
        CategoryNumberFormat = "d mmm",
        CategoriesAreDates = true,
        ValueAxisTitle = "",
        Series = [],
    };

    /// <summary>Markers without a line: some programs draw a line down to nought where a day has no value.</summary>
    private static NativeSeries Points(IReadOnlyList<DayFinding> days, TablePlace place, string heading, string name, Func<DayFinding, double?> value) =>
        Series(days, place, heading, name, value) with { Dash = NativeDash.None };

    private static NativeSeries Series(IReadOnlyList<DayFinding> days, TablePlace place, string heading, string name, Func<DayFinding, double?> value) => new()
    {
        Name = name,
        CategoriesRef = place.Range("care day"),
        ValuesRef = place.Range(heading),
        CategoryNumbers = [.. days.Select(d => (double?)Serial(d.Day))],
        Values = [.. days.Select(value)],
    };

    private static NativeSeries Week(AdherenceFindings adherence, TablePlace place, string heading, string name, Func<AdherenceGroup, double?> value) => new()
    {
        Name = name,
        CategoriesRef = place.Range("week from"),
        ValuesRef = place.Range(heading),
        CategoryNumbers = [.. adherence.ByWeek.Select(w => w.From is { } from ? Serial(Weeks.MondayOf(from)) : (double?)null)],
        Values = [.. adherence.ByWeek.Select(value)],
    };

    private static double Serial(LocalDate day) => day.ToDateTimeUnspecified().ToOADate();
}
