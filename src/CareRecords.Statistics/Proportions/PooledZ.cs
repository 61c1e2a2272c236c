namespace CareRecords.Statistics;

/// <summary>
/// The two-sample z test of equal proportions with the pooled proportion in the standard error:
/// z = (p1 − p2) / sqrt(p(1−p)(1/n1 + 1/n2)). Prefer <see cref="FisherExact"/> for small counts.
/// Source: Montgomery DC, Introduction to Statistical Quality Control, Wiley (attributes charts).
/// Assumes independent trials and counts large enough for the normal approximation. Smallest data: one trial in each
/// group, and at least one success and one failure in all.
/// </summary>
public static class PooledZ
{
    private const string Method = "two-sample z test, pooled proportion";

    /// <summary>Tests first proportion against second; the statistic is z.</summary>
    /// <param name="successes1">Successes in the first group.</param>
    /// <param name="trials1">Trials in the first group.</param>
    /// <param name="successes2">Successes in the second group.</param>
    /// <param name="trials2">Trials in the second group.</param>
    /// <param name="alternative">Greater: the first proportion is larger.</param>
    public static Outcome<TestResult> Test(int successes1, int trials1, int successes2, int trials2, Alternative alternative = Alternative.TwoSided)
    {
        Require.Counts(successes1, trials1);
        Require.Counts(successes2, trials2);
        var (successes, trials) = (successes1 + successes2, trials1 + trials2);
        if (trials1 == 0 || trials2 == 0 || successes == 0 || successes == trials)
        {
            return new TooLittleData(Method, trials, 2, "a group without trials, or no variation at all");
        }

        var p = (double)successes / trials;
        var difference = ((double)successes1 / trials1) - ((double)successes2 / trials2);
        var z = difference / Math.Sqrt(p * (1 - p) * ((1.0 / trials1) + (1.0 / trials2)));
        return new TestResult(z, Gaussian.PValue(z, alternative), trials, Method);
    }
}
