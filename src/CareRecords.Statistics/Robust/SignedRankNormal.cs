namespace CareRecords.Statistics;

/// <summary>
/// The normal approximation of the signed-rank test with tie and continuity corrections, and the interval and centre that
/// invert it: z(θ) = (V(θ) − m(m+1)/4 ∓ ½)/sqrt(m(m+1)(2m+1)/24 − Σ(t³−t)/48) over the m differences other than θ.
/// Offered for comparison with other software when there are ties or zeros; <see cref="SignedRank"/> is exact.
/// Source: Hollander M, Wolfe DA (1973), pp. 27-45. Assumes independent symmetric differences, and more than about ten of
/// them. Smallest data: two different non-zero differences.
/// </summary>
public static class SignedRankNormal
{
    private const string Method = "signed-rank test, normal approximation";

    /// <summary>Tests that the differences centre on zero; the statistic is V, zeros are left out.</summary>
    /// <param name="differences">Finite differences.</param>
    /// <param name="alternative">Greater: differences tend to be positive.</param>
    public static Outcome<TestResult> Test(IReadOnlyCollection<double> differences, Alternative alternative = Alternative.TwoSided)
    {
        var d = Array.FindAll(Require.Finite(differences), x => x != 0);
        if (d.Length == 0)
        {
            return new TooLittleData(Method, 0, 1, "no difference other than zero");
        }

        var (v, excess, deviation) = Statistic(d, 0);
        var correction = alternative switch
        {
            Alternative.Greater => 0.5,
            Alternative.Less => -0.5,
            _ => 0.5 * Math.Sign(excess),
        };
        return new TestResult(v, Gaussian.PValue((excess - correction) / deviation, alternative), d.Length, Method);
    }

    /// <summary>The centre (without continuity correction) and the limits (with it) that the test does not reject.</summary>
    /// <param name="differences">Finite differences; zeros are left out.</param>
    /// <param name="level">The confidence level.</param>
    public static Outcome<Estimate> Interval(IReadOnlyCollection<double> differences, double level = 0.95)
    {
        Require.Level(level);
        var d = Array.FindAll(Require.Finite(differences), x => x != 0);
        Array.Sort(d);
        var z = Gaussian.Critical(level);
        if (d.Length == 0 || d[0] == d[^1] || Corrected(d, d[0]) < z || Corrected(d, d[^1]) > -z)
        {
            return new TooLittleData(Method, d.Length, 6, "even the extreme differences are not rejected at this level");
        }

        // Without the correction z changes sign at the median of the Walsh averages.
        var centre = Quantiles.OfSorted(SignedRank.WalshAverages(d));
        var low = Bisection.Falling(theta => Corrected(d, theta) - z, d[0], d[^1]);
        var high = Bisection.Falling(theta => Corrected(d, theta) + z, d[0], d[^1]);
        return new Estimate(centre, low, high, level, d.Length, "signed-rank interval, normal approximation");
    }

    internal static int Depth(int n, double z)
    {
        double count = n;
        var k = (count * (count + 1) / 4) - (z * Math.Sqrt(count * (count + 1) * ((2 * count) + 1) / 24));
        return Math.Max(1, (int)Math.Floor(k));
    }

    private static double Corrected(double[] d, double theta)
    {
        var (_, excess, deviation) = Statistic(d, theta);
        return (excess - (0.5 * Math.Sign(excess))) / deviation;
    }

    private static (double V, double Excess, double Deviation) Statistic(double[] d, double theta)
    {
        var shifted = Array.FindAll(Array.ConvertAll(d, x => x - theta), x => x != 0);
        double m = shifted.Length;
        var distances = Array.ConvertAll(shifted, Math.Abs);
        var ranks = Ranks.Of(distances);
        var v = ranks.Where((_, i) => shifted[i] > 0).Sum();
        var ties = Ranks.TieGroups(distances).Sum(t => ((double)t * t * t) - t);
        return (v, v - (m * (m + 1) / 4), Math.Sqrt((m * (m + 1) * ((2 * m) + 1) / 24) - (ties / 48)));
    }
}
