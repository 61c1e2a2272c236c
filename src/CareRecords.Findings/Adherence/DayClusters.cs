using CareRecords.Statistics;

namespace CareRecords.Findings;

/// <summary>
/// The day-cluster bootstrap of a share: whole care days are drawn again with replacement, so that sessions of one day,
/// which go well or badly together, count as one draw. Percentile limits.
/// Source: Davison AC, Hinkley DV (1997), Bootstrap Methods and their Application, section 3.8. Assumes independent days.
/// Smallest data: <see cref="SmallestDays"/> days with a judged session.
/// </summary>
internal static class DayClusters
{
    /// <summary>Fewer days than this say too little of how days differ.</summary>
    public const int SmallestDays = 8;

    private const int FewestDraws = 400;

    /// <summary>Days drawn in all: years of records take fewer draws, whose limits are steadier.</summary>
    private const int MostWork = 1_000_000;

    public static Statistics.Interval? Of(IReadOnlyList<(int Kept, int Judged)> days, ReviewOptions options, double level)
    {
        if (days.Count < SmallestDays) return null;
        var random = new SeededRandom(options.Seed);
        var (keptOn, judgedOn) = (new int[days.Count], new int[days.Count]);
        for (var i = 0; i < days.Count; i++) (keptOn[i], judgedOn[i]) = days[i];
        var shares = new double[Math.Clamp(MostWork / days.Count, Math.Min(FewestDraws, options.Draws), options.Draws)];
        for (var draw = 0; draw < shares.Length; draw++)
        {
            var (kept, judged) = (0, 0);
            for (var i = 0; i < keptOn.Length; i++)
            {
                var day = random.Below(keptOn.Length);
                kept += keptOn[day];
                judged += judgedOn[day];
            }

            shares[draw] = (double)kept / judged;
        }

        var tail = (1 - level) / 2;
        return new(Quantiles.At(shares, tail).Value, Quantiles.At(shares, 1 - tail).Value, level);
    }
}
