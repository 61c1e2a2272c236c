using CareRecords.Records;

namespace CareRecords.Findings;

/// <summary>The child's own usual as a finding, and saturation flow by flow.</summary>
internal static class BaselineFinding
{
    private const int WellDaysForFirm = 14;

    public static (Baseline? Baseline, string? Missing) Of(ChildRecords records, IllnessByRecord illness)
    {
        if (illness.Readings.Count == 0)
            return (null, records.Checks.Any(c => c.SpO2 is not null) ? "no resting saturation was written, only during or after sessions" : "no saturation was written");
        if (illness.Band is not { } band)
            return (null, illness.Readings.Any(r => r.Flow == FlowState.Usual)
                ? "every day with a reading at usual oxygen is an illness day"
                : "no reading is known to be at usual oxygen");
        var oxygen = illness.Oxygen;
        var interval = band.Interval.IsKnown ? band.Interval.Value : null;
        var flow = oxygen.IsEverWritten || oxygen.Main is not null ? oxygen.Main : null;
        return (new(band.Centre, band.ReadingLow, band.ReadingHigh, interval?.Low, interval?.High, flow,
            records.Days.Any(d => oxygen.IsFromPlan(d) && oxygen.On(d) == flow), band.Days, band.Readings, band.Days < WellDaysForFirm, Method(oxygen)), null);
    }

    public static IReadOnlyList<SaturationAtFlow> ByFlow(ChildRecords records) =>
    [
        .. records.Checks.Where(c => c.SpO2 is not null).GroupBy(c => c.OxygenLitresPerMinute).OrderBy(g => g.Key is null).ThenBy(g => g.Key)
            .Select(g => At(records, g.Key, [.. g])),
    ];

    private static SaturationAtFlow At(ChildRecords records, double? flow, IReadOnlyList<Check> checks)
    {
        List<double> values = [.. checks.Select(c => c.SpO2!.Value)];
        double Quantile(double p) => Statistics.Quantiles.At(values, p).Value;
        return new(flow, values.Count, checks.Select(records.DayOf).Distinct().Count(), Quantile(0.5), Quantile(0.25), Quantile(0.75), values.Min(), values.Max());
    }

    private static string Method(UsualOxygen oxygen)
    {
        const string Core = "Hodges-Lehmann centre of the daily medians of resting readings at usual oxygen, over days that are not illness days by the record; "
            + "band: 2 robust spreads of one reading, at least 2 points";
        return Core + (oxygen switch
        {
            { IsEverWritten: false } => "; oxygen was never written, so every reading is taken as at usual oxygen",
            { WritesOnlyExceptions: true } => "; oxygen was written on few days, so readings without it are taken as at usual oxygen",
            { TakesUnwrittenAsUsual: true } => "; no other oxygen than the usual was written, so readings without it are taken as at usual oxygen",
            _ => "; readings without a written oxygen are left out",
        });
    }
}
