namespace CareRecords.Statistics;

/// <summary>A stretch of a series on one level.</summary>
/// <param name="First">Index of its first point, from 0.</param>
/// <param name="End">Index after its last point.</param>
/// <param name="Level">Its level, when the cost has one.</param>
public sealed record Segment(int First, int End, double? Level)
{
    /// <summary>How many points.</summary>
    public int Length => End - First;
}

/// <summary>A series cut into stretches.</summary>
/// <param name="Segments">The stretches in order, together the whole series.</param>
/// <param name="Cost">The sum of their costs.</param>
/// <param name="Objective">Cost plus the penalty for each change; equal to the cost when the number was given.</param>
public sealed record SegmentedSeries(IReadOnlyList<Segment> Segments, double Cost, double Objective)
{
    /// <summary>For each change, how many points lie before it.</summary>
    public IReadOnlyList<int> Changes => [.. Segments.Skip(1).Select(s => s.First)];
}

/// <summary>
/// The best of all segmentations, found exactly by dynamic programming: with a penalty β for each change (optimal
/// partitioning: F(t) = min over s of F(s) + cost(s, t) + β) or with a given number of changes. Of equally good ones the
/// one with the longest last stretch. β = 2·log n or 3·log n are common; log n finds too many changes.
/// Source: Jackson B et al. (2005), IEEE Signal Process Lett 12:105-108; Auger IE, Lawrence CE (1989), Bull Math Biol
/// 51:39-54. Assumes points independent given the levels: correlated noise is cut into spurious stretches.
/// Smallest data: one stretch of the smallest length. The work grows with the square of the number of points.
/// </summary>
public static class Segmentation
{
    private const double Tie = 1e-12;

    /// <summary>The best segmentation with a penalty for each change.</summary>
    /// <param name="cost">The series with its cost.</param>
    /// <param name="penalty">β, 0 or more.</param>
    /// <param name="smallestLength">The fewest points of a stretch.</param>
    public static Outcome<SegmentedSeries> Penalized(SegmentCost cost, double penalty, int smallestLength = 1)
    {
        ArgumentNullException.ThrowIfNull(cost);
        ArgumentOutOfRangeException.ThrowIfLessThan(smallestLength, 1);
        if (!(penalty >= 0) || double.IsInfinity(penalty))
        {
            throw new ArgumentOutOfRangeException(nameof(penalty), penalty, "A penalty is a finite number, 0 or more.");
        }

        if (cost.Count < smallestLength)
        {
            return TooShort(cost.Count, smallestLength);
        }

        var best = new double[cost.Count + 1];
        Array.Fill(best, double.PositiveInfinity);
        best[0] = -penalty;
        var from = new int[cost.Count + 1];
        for (var t = smallestLength; t <= cost.Count; t++)
        {
            for (var s = 0; s <= t - smallestLength; s++)
            {
                var value = best[s] + cost.Of(s, t) + penalty;
                if (value < best[t] - Tie || double.IsPositiveInfinity(best[t]))
                {
                    (best[t], from[t]) = (value, s);
                }
            }
        }

        List<int> bounds = [cost.Count];
        while (bounds[0] > 0)
        {
            bounds.Insert(0, from[bounds[0]]);
        }

        return Series(cost, bounds, penalty);
    }

    /// <summary>The best segmentation with exactly so many changes.</summary>
    /// <param name="cost">The series with its cost.</param>
    /// <param name="changes">How many changes, 0 or more.</param>
    /// <param name="smallestLength">The fewest points of a stretch.</param>
    public static Outcome<SegmentedSeries> WithChanges(SegmentCost cost, int changes, int smallestLength = 1)
    {
        ArgumentNullException.ThrowIfNull(cost);
        ArgumentOutOfRangeException.ThrowIfNegative(changes);
        ArgumentOutOfRangeException.ThrowIfLessThan(smallestLength, 1);
        var n = cost.Count;
        if (n < (changes + 1L) * smallestLength)
        {
            return TooShort(n, (int)Math.Min(int.MaxValue, (changes + 1L) * smallestLength));
        }

        // best[k][t]: the first t points in k + 1 stretches.
        double[][] best = [.. Enumerable.Range(0, changes + 1).Select(_ => Enumerable.Repeat(double.PositiveInfinity, n + 1).ToArray())];
        int[][] from = [.. Enumerable.Range(0, changes + 1).Select(_ => new int[n + 1])];
        for (var t = smallestLength; t <= n; t++)
        {
            best[0][t] = cost.Of(0, t);
        }

        for (var k = 1; k <= changes; k++)
        {
            for (var t = (k + 1) * smallestLength; t <= n; t++)
            {
                for (var s = k * smallestLength; s <= t - smallestLength; s++)
                {
                    var value = best[k - 1][s] + cost.Of(s, t);
                    if (value < best[k][t] - Tie || double.IsPositiveInfinity(best[k][t]))
                    {
                        (best[k][t], from[k][t]) = (value, s);
                    }
                }
            }
        }

        List<int> bounds = [n];
        for (var k = changes; k >= 1; k--)
        {
            bounds.Insert(0, from[k][bounds[0]]);
        }

        bounds.Insert(0, 0);
        return Series(cost, bounds, 0);
    }

    private static TooLittleData TooShort(int count, int smallest) => new("segmentation", count, smallest, "the series is too short for the stretches asked for");

    private static SegmentedSeries Series(SegmentCost cost, List<int> bounds, double penalty)
    {
        Segment[] segments = [.. bounds.Zip(bounds.Skip(1), (a, b) => new Segment(a, b, cost.Level(a, b)))];
        var sum = segments.Sum(s => cost.Of(s.First, s.End));
        return new(segments, sum, sum + (penalty * (segments.Length - 1)));
    }
}
