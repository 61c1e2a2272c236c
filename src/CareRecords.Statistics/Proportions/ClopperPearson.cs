namespace CareRecords.Statistics;

/// <summary>
/// The Clopper-Pearson ("exact") interval for a proportion: the values of p that neither one-sided binomial test at
/// (1 − level)/2 rejects; its true coverage is never below the level and usually above it.
/// Source: Clopper CJ, Pearson ES (1934), Biometrika 26:404-413.
/// Assumes independent trials with one chance of success. Smallest data: one trial.
/// </summary>
public static class ClopperPearson
{
    private const string Method = "Clopper-Pearson exact interval";

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

        var tail = (1 - level) / 2;
        var low = successes == 0 ? 0
            : Bisection.Rising(p => BinomialLaw.AtLeast(successes, trials, p) - tail, 0, 1);
        var high = successes == trials ? 1
            : Bisection.Falling(p => BinomialLaw.AtMost(successes, trials, p) - tail, 0, 1);
        return new Estimate((double)successes / trials, low, high, level, trials, Method);
    }
}
