namespace CareRecords.Statistics;

/// <summary>
/// The distribution-free interval for a median (the sign test turned round): the k-th smallest and k-th largest values,
/// k the largest with P(Binomial(n, ½) &lt; k) ≤ (1 − level)/2. Its coverage is at least the level.
/// Source: Thompson WR (1936), Ann Math Stat 7:122-128. Assumes independent draws from one distribution. Smallest data:
/// the number for which the extremes themselves reach the level (6 for 95 %); fewer is <see cref="TooLittleData"/>.
/// </summary>
public static class MedianInterval
{
    private const string Method = "median, distribution-free interval";

    /// <summary>The median with its interval, in the unit of the data.</summary>
    /// <param name="values">Finite values in any order.</param>
    /// <param name="level">The confidence level.</param>
    public static Outcome<Estimate> Of(IReadOnlyCollection<double> values, double level = 0.95)
    {
        Require.Level(level);
        var sorted = Require.SortedFinite(values);
        var n = sorted.Length;
        var tail = (1 - level) / 2;
        var smallest = (int)Math.Ceiling(1 - Math.Log2(1 - level) - 1e-12);
        if (n < smallest)
        {
            return new TooLittleData(Method, n, smallest, "the smallest and largest values do not reach the confidence level");
        }

        var k = BinomialLaw.Quantile(tail, n, 0.5);

        // P(X <= k − 1) must not exceed the tail.
        while (BinomialLaw.AtMost(k - 1, n, 0.5) > tail * (1 + 1e-12))
        {
            k--;
        }

        while (BinomialLaw.AtMost(k, n, 0.5) <= tail * (1 + 1e-12))
        {
            k++;
        }

        return new Estimate(Quantiles.OfSorted(sorted), sorted[k - 1], sorted[n - k], level, n, Method);
    }

    /// <summary>The sign test that the median is <paramref name="median"/>; values equal to it are left out.</summary>
    /// <param name="values">Finite values in any order.</param>
    /// <param name="median">The median under the null hypothesis.</param>
    /// <param name="alternative">Greater: values tend to lie above it.</param>
    /// <returns>The statistic is the number of values above the median.</returns>
    public static Outcome<TestResult> SignTest(IReadOnlyCollection<double> values, double median = 0, Alternative alternative = Alternative.TwoSided)
    {
        var copy = Require.Finite(values);
        var above = copy.Count(x => x > median);
        var informative = copy.Count(x => x != median);
        return informative == 0
            ? new TooLittleData("sign test", 0, 1, "no value differs from the median asked about")
            : BinomialTest.Against(above, informative, 0.5, alternative).Then(r => r with { Method = "sign test" });
    }
}
