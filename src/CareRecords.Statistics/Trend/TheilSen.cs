namespace CareRecords.Statistics;

/// <summary>How the limits of the Theil-Sen slope are read off the sorted pairwise slopes.</summary>
public enum SlopeLimits
{
    /// <summary>Between neighbouring slopes, at ranks (N−C)/2 and (N+C)/2 + 1 (Gilbert RO 1987).</summary>
    Interpolated,

    /// <summary>At those ranks rounded to whole ones (Sen 1968).</summary>
    Rounded,
}

/// <summary>A Theil-Sen line.</summary>
/// <param name="Slope">The median of pairwise slopes with its interval; an end is infinite when there are too few slopes for it.</param>
/// <param name="Intercept">Median of y − slope·x: as many points above the line as below.</param>
/// <param name="InterceptOfMedians">Median of y less slope times median of x.</param>
public sealed record TheilSenLine(Estimate Slope, double Intercept, double InterceptOfMedians);

/// <summary>
/// The Theil-Sen slope: the median of the slopes of all pairs of points with different x; limits from the null
/// distribution of Kendall's S (C = z·√Var S, corrected for ties).
/// Source: Theil H (1950), Proc K Ned Akad Wet A 53:386-392; Sen PK (1968), J Am Stat Assoc 63:1379-1389; Gilbert RO (1987),
/// Statistical Methods for Environmental Pollution Monitoring, section 16.5.
/// Assumes independent errors of one distribution about a line. Smallest data: 3 points, two different x. The work grows
/// with the square of the number of points (5 000 points: 12.5 million slopes).
/// </summary>
public static class TheilSen
{
    private const int Smallest = 3;

    /// <summary>The line through points in any order.</summary>
    /// <param name="x">Finite positions or times.</param>
    /// <param name="y">Finite values.</param>
    /// <param name="level">The confidence level.</param>
    /// <param name="limits">How the limits are read off.</param>
    public static Outcome<TheilSenLine> Fit(
        IReadOnlyList<double> x, IReadOnlyList<double> y, double level = 0.95, SlopeLimits limits = SlopeLimits.Interpolated)
    {
        Require.Level(level);
        var (a, b) = Require.Pairs(x, y);
        var slopes = Slopes(a, b);
        if (a.Length < Smallest || slopes.Length == 0)
        {
            return new TooLittleData("Theil-Sen slope", a.Length, Smallest, "a slope with an interval needs three points, not all at one x");
        }

        var (low, high) = Ranks(a, b, slopes.Length, level);
        if (limits == SlopeLimits.Rounded)
        {
            (low, high) = (Math.Round(low), Math.Round(high));
        }

        var slope = Quantiles.OfSorted(slopes);
        var estimate = new Estimate(slope, AtRank(slopes, low), AtRank(slopes, high), level, a.Length, "Theil-Sen slope");
        double[] lifted = [.. a.Zip(b, (u, v) => v - (slope * u))];
        return new TheilSenLine(estimate, Quantiles.Median(lifted).Value, Quantiles.Median(b).Value - (slope * Quantiles.Median(a).Value));
    }

    /// <summary>The ranks, from 1, at which the limits lie; not rounded.</summary>
    internal static (double Low, double High) Ranks(double[] x, double[] y, int slopes, double level)
    {
        var c = Gaussian.Critical(level) * Math.Sqrt(SenVariance(x, y));
        return ((slopes - c) / 2, ((slopes + c) / 2) + 1);
    }

    /// <summary>Sen's variance: the tie corrections of both sides without their products.</summary>
    internal static double SenVariance(double[] x, double[] y)
    {
        static double Correction(double[] values) => Statistics.Ranks.TieGroups(values).Sum(t => t * (t - 1.0) * ((2.0 * t) + 5));
        double n = x.Length;
        return Math.Max(0, ((n * (n - 1) * ((2 * n) + 5)) - Correction(x) - Correction(y)) / 18);
    }

    internal static double[] Slopes(double[] x, double[] y)
    {
        List<double> slopes = [];
        for (var i = 0; i < x.Length; i++)
        {
            for (var j = i + 1; j < x.Length; j++)
            {
                if (x[j] != x[i])
                {
                    slopes.Add((y[j] - y[i]) / (x[j] - x[i]));
                }
            }
        }

        slopes.Sort();
        return [.. slopes];
    }

    private static double AtRank(double[] sorted, double rank)
    {
        if (rank < 1 || rank > sorted.Length)
        {
            return rank < 1 ? double.NegativeInfinity : double.PositiveInfinity;
        }

        var below = (int)Math.Floor(rank);
        var part = rank - below;
        return part == 0 ? sorted[below - 1] : sorted[below - 1] + (part * (sorted[below] - sorted[below - 1]));
    }
}
