namespace CareRecords.Statistics;

/// <summary>
/// The mid-P interval for a proportion: Clopper-Pearson tails that count only half the probability of what was seen, so
/// that coverage is near the level on average instead of never below it.
/// Source: Lancaster HO (1961), J Am Stat Assoc 56:223-234; Newcombe RG (1998), Stat Med 17:857-872, method 6.
/// Assumes independent trials with one chance of success. Smallest data: one trial.
/// </summary>
public static class MidP
{
    private const string Method = "mid-P exact interval";

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
        double Half(double p) => 0.5 * BinomialLaw.Probability(successes, trials, p);
        var low = successes == 0 ? 0
            : Bisection.Rising(p => BinomialLaw.AtLeast(successes + 1, trials, p) + Half(p) - tail, 0, (double)successes / trials);
        var high = successes == trials ? 1
            : Bisection.Falling(p => BinomialLaw.AtMost(successes - 1, trials, p) + Half(p) - tail, (double)successes / trials, 1);
        return new Estimate((double)successes / trials, low, high, level, trials, Method);
    }
}
