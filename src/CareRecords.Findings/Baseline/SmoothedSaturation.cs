using CareRecords.Records;
using CareRecords.Statistics;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>
/// Saturation at usual oxygen with the noise of single readings taken down: at each such reading the median of those within
/// twelve hours of it, and whether that median is clearly below usual for that many readings, back at usual, or neither.
/// </summary>
internal sealed record SmoothedSaturation(Instant At, Check Check, double Median, int Readings, bool IsBelow, bool IsBack)
{
    private static readonly Duration Reach = Duration.FromHours(12);

    public static IReadOnlyList<SmoothedSaturation> Of(IReadOnlyList<RestingReading> readings, UsualBand band)
    {
        var usual = readings.Where(r => r.Flow == FlowState.Usual).ToList();
        var smoothed = new List<SmoothedSaturation>(usual.Count);
        var (first, end) = (0, 0);
        foreach (var reading in usual)
        {
            while (usual[first].At < reading.At - Reach) first++;
            while (end < usual.Count && usual[end].At <= reading.At + Reach) end++;
            var median = Quantiles.Median([.. usual[first..end].Select(r => r.SpO2)]).Value;
            smoothed.Add(new(reading.At, reading.Check, median, end - first, median < band.MedianLow(end - first), median >= band.BackAtUsual));
        }

        return smoothed;
    }
}
