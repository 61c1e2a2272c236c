namespace CareRecords.Statistics;

/// <summary>
/// Wilson's score interval for a proportion, without continuity correction:
/// (2x + z² ± z·sqrt(z² + 4x(n−x)/n)) / (2(n + z²)), x successes of n trials, z the normal critical value.
/// Source: Wilson EB (1927), J Am Stat Assoc 22:209-212; Newcombe RG (1998), Stat Med 17:857-872, method 3.
/// Assumes independent trials with one chance of success. Smallest data: one trial.
/// </summary>
public static class Wilson
{
    private const string Method = "Wilson score interval";

    /// <summary>The proportion of successes with its interval, 0 to 1.</summary>
    /// <param name="successes">How many trials succeeded, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">How many trials there were; none gives <see cref="TooLittleData"/>.</param>
    /// <param name="level">The confidence level.</param>
    public static Outcome<Estimate> Interval(int successes, int trials, double level = 0.95)
    {
        Require.Counts(successes, trials);
        Require.Level(level);
        if (trials == 0)
        {
            return new TooLittleData(Method, 0, 1, "no trials");
        }

        var (low, high) = Limits(successes, trials, level);
        return new Estimate((double)successes / trials, low, high, level, trials, Method);
    }

    internal static (double Low, double High) Limits(double successes, double trials, double level)
    {
        var z = Gaussian.Critical(level);
        var root = z * Math.Sqrt((z * z) + (4 * successes * (trials - successes) / trials));
        var centre = (2 * successes) + (z * z);
        var scale = 2 * (trials + (z * z));

        // At the ends the limit is exact; rounding must not push it past the proportion.
        return (successes == 0 ? 0 : (centre - root) / scale, successes == trials ? 1 : (centre + root) / scale);
    }
}
