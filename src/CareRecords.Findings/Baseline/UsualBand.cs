using CareRecords.Statistics;

namespace CareRecords.Findings;

/// <summary>
/// The child's own usual saturation and how far readings and daily medians stray from it on well days. Centre: the
/// Hodges-Lehmann centre of the daily medians (the median of all pairwise means), which whole-number readings do not pull to
/// a half; their median with fewer than six days, or more than <see cref="MostForPairs"/>. Spread of one reading: 1.4826 × the median absolute deviation from its day's median, at least
/// half a point (readings are whole numbers). Spread of a daily median of n readings: what n readings leave of that
/// (times √(π/2)), and what days differ beyond it.
/// </summary>
internal sealed record UsualBand(double Centre, Outcome<Estimate> Interval, double ReadingSpread, double DaySpread, int Days, int Readings)
{
    private const double LeastReadingSpread = 0.5;
    private const int MostForPairs = 1000;
    private const double MedianOverMean = 1.2533;

    /// <summary>A day is clearly below usual from this many spreads of its median, and never for less than one point.</summary>
    private const double ClearlyBelow = 2.33;

    /// <summary>A median from here up shows the child back at usual; between this and <see cref="MedianLow"/> it shows neither.</summary>
    public double BackAtUsual => Centre - 0.5;

    /// <summary>Lower edge of the usual band for one reading.</summary>
    public double ReadingLow => Centre - Math.Max(2, 2 * ReadingSpread);

    /// <summary>Upper edge of the usual band for one reading.</summary>
    public double ReadingHigh => Math.Min(100, Centre + Math.Max(2, 2 * ReadingSpread));

    /// <summary>A median of <paramref name="readings"/> readings of one day under this is clearly below usual.</summary>
    public double MedianLow(int readings)
    {
        var own = MedianOverMean * ReadingSpread / Math.Sqrt(readings);
        return Centre - Math.Max(1, ClearlyBelow * Math.Sqrt((own * own) + (DaySpread * DaySpread)));
    }

    /// <summary>The band of these readings, all at usual oxygen on well days; null without a reading.</summary>
    public static UsualBand? Of(IEnumerable<RestingReading> readings)
    {
        var days = readings.GroupBy(r => r.Day).Select(d => (Values: d.Select(r => r.SpO2).ToList(), Middle: Quantiles.Median([.. d.Select(r => r.SpO2)]).Value)).ToList();
        if (days.Count == 0) return null;
        List<double> middles = [.. days.Select(d => d.Middle)];
        List<double> strays = [.. days.Where(d => d.Values.Count > 1).SelectMany(d => d.Values.Select(v => v - d.Middle))];
        var reading = Math.Max(LeastReadingSpread, Quantiles.MedianAbsoluteDeviation(strays).Or(1));
        var between = Quantiles.MedianAbsoluteDeviation(middles).Value;
        var left = MedianOverMean * reading / Math.Sqrt(days.Average(d => d.Values.Count));
        var day = Math.Sqrt(Math.Max(0, (between * between) - (left * left)));
        var centre = middles.Count > MostForPairs ? MedianInterval.Of(middles) : SignedRank.Interval(middles);
        return new(centre.IsKnown ? centre.Value.Value : Quantiles.Median(middles).Value, centre, reading, day, days.Count, days.Sum(d => d.Values.Count));
    }
}
