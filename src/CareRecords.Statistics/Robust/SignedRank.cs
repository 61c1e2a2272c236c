namespace CareRecords.Statistics;

/// <summary>
/// Wilcoxon's signed-rank test of a centre of zero for differences, with the Hodges-Lehmann estimate (the median of the
/// Walsh averages (dᵢ+dⱼ)/2, i ≤ j) and its interval.
/// The test leaves out zeros and gives ties their midranks; its P is exact (all sign patterns) up to
/// <see cref="LargestExact"/> values and the tie-corrected normal approximation with continuity correction beyond. The
/// interval takes the k-th smallest and k-th largest Walsh averages of all differences, zeros included, k from the exact
/// null distribution, so it covers at least the level when there are no ties and about that with ties.
/// Source: Wilcoxon F (1945), Biometrics Bull 1:80-83; Hodges JL, Lehmann EL (1963), Ann Math Stat 34:598-611; Hollander M,
/// Wolfe DA (1973), pp. 26-45. Assumes independent differences, symmetric about their centre. Smallest data: one non-zero
/// difference for the test, 6 differences for a 95 % interval.
/// </summary>
public static class SignedRank
{
    /// <summary>Up to this many non-zero differences the null distribution is enumerated.</summary>
    public const int LargestExact = 400;

    private const string Method = "Hodges-Lehmann, signed-rank interval";

    /// <summary>Tests that the differences centre on zero. The statistic V is the sum of the ranks of positive differences.</summary>
    /// <param name="differences">Finite differences; zeros are left out of the count.</param>
    /// <param name="alternative">Greater: differences tend to be positive.</param>
    public static Outcome<TestResult> Test(IReadOnlyCollection<double> differences, Alternative alternative = Alternative.TwoSided)
    {
        var d = Array.FindAll(Require.Finite(differences), x => x != 0);
        if (d.Length == 0)
        {
            return new TooLittleData("signed-rank test", 0, 1, "no difference other than zero");
        }

        if (d.Length > LargestExact)
        {
            return SignedRankNormal.Test(d, alternative);
        }

        var ranks = Ranks.Of(Array.ConvertAll(d, Math.Abs));
        var v = ranks.Where((_, i) => d[i] > 0).Sum();
        var law = new SignedRankLaw(ranks);
        var p = alternative switch
        {
            Alternative.Greater => law.AtLeast(v),
            Alternative.Less => law.AtMost(v),
            _ => Math.Min(1, 2 * Math.Min(law.AtLeast(v), law.AtMost(v))),
        };
        return new TestResult(v, p, d.Length, "exact signed-rank test");
    }

    /// <summary>The Hodges-Lehmann estimate of the centre with its interval, in the unit of the differences.</summary>
    /// <param name="differences">Finite differences, zeros included.</param>
    /// <param name="level">The confidence level.</param>
    public static Outcome<Estimate> Interval(IReadOnlyCollection<double> differences, double level = 0.95)
    {
        Require.Level(level);
        var d = Require.Finite(differences);
        var n = d.Length;
        var smallest = (int)Math.Ceiling(1 - Math.Log2(1 - level) - 1e-12);
        if (n < smallest)
        {
            return new TooLittleData(Method, n, smallest, "even the extreme Walsh averages do not reach the confidence level");
        }

        var walsh = WalshAverages(d);
        var k = n <= LargestExact
            ? ExactDepth(n, (1 - level) / 2)
            : SignedRankNormal.Depth(n, Gaussian.Critical(level));
        return new Estimate(Quantiles.OfSorted(walsh), walsh[k - 1], walsh[^k], level, n, Method);
    }

    /// <summary>All n(n+1)/2 Walsh averages, sorted.</summary>
    internal static double[] WalshAverages(double[] d)
    {
        var walsh = new double[d.Length * (d.Length + 1) / 2];
        var next = 0;
        for (var i = 0; i < d.Length; i++)
        {
            for (var j = i; j < d.Length; j++)
            {
                walsh[next++] = 0.5 * (d[i] + d[j]);
            }
        }

        Array.Sort(walsh);
        return walsh;
    }

    /// <summary>The largest k with P(V &lt;= k − 1) at or below the tail.</summary>
    private static int ExactDepth(int n, double tail)
    {
        var law = new SignedRankLaw(Enumerable.Range(1, n).Select(i => (double)i));
        var k = 1;
        while (law.AtMost(k) <= tail)
        {
            k++;
        }

        return k;
    }
}
