namespace CareRecords.Statistics;

/// <summary>
/// Turnbull's innermost intervals, the only places where the nonparametric estimate can put mass: a left end followed at
/// once by a right end in the sorted list of all ends. Each observation covers a contiguous range of them.
/// </summary>
internal sealed class InnermostIntervals
{
    private InnermostIntervals(CensoredInterval[] places, (int First, int Last, int Count)[] ranges) => (Places, Ranges) = (places, ranges);

    public CensoredInterval[] Places { get; }

    /// <summary>The distinct ranges of places that observations cover, and how many observations cover each.</summary>
    public (int First, int Last, int Count)[] Ranges { get; }

    public static InnermostIntervals Of(CensoredInterval[] intervals)
    {
        // An end sorts by time, then: left end of an exact time, right ends, open left ends (so (1,2] and (2,3] are apart).
        var ends = intervals.SelectMany(i => new[] { LeftEnd(i), RightEnd(i) }).Distinct().Order().ToArray();
        List<CensoredInterval> places = [];
        List<((double, int) Left, (double, int) Right)> keys = [];
        for (var e = 0; e + 1 < ends.Length; e++)
        {
            if (ends[e].Order != 0 && ends[e + 1].Order == 0)
            {
                places.Add(new(ends[e].Time, ends[e + 1].Time));
                keys.Add((ends[e], ends[e + 1]));
            }
        }

        var lefts = keys.ConvertAll(k => k.Left);
        var rights = keys.ConvertAll(k => k.Right);
        var ranges = intervals.Select(i => (First: AtOrAfter(lefts, LeftEnd(i)), Last: AtOrBefore(rights, RightEnd(i))))
            .GroupBy(r => r)
            .Select(g => (g.Key.First, g.Key.Last, g.Count()))
            .Order()
            .ToArray();
        return new([.. places], ranges);
    }

    private static (double Time, int Order) LeftEnd(CensoredInterval i) => (i.Left, i.IsExact ? -1 : 1);

    private static (double Time, int Order) RightEnd(CensoredInterval i) => (i.Right, 0);

    private static int AtOrAfter(List<(double, int)> sorted, (double, int) end)
    {
        var index = sorted.BinarySearch(end);
        return index >= 0 ? index : ~index;
    }

    private static int AtOrBefore(List<(double, int)> sorted, (double, int) end)
    {
        var index = sorted.BinarySearch(end);
        return index >= 0 ? index : ~index - 1;
    }
}
