namespace CareRecords.Statistics;

/// <summary>
/// The exact binomial test of a proportion against a target. Two-sided: the total probability, under the target, of all
/// counts no likelier than the one seen (Clopper-Pearson's interval need not agree with it at the margin).
/// Source: Clopper CJ, Pearson ES (1934), Biometrika 26:404-413; Hollander M, Wolfe DA (1973), pp. 15-22.
/// Assumes independent trials with one chance of success. Smallest data: one trial.
/// </summary>
public static class BinomialTest
{
    private const string Method = "exact binomial test";

    /// <summary>Tests the chance of success against a target. The statistic is the number of successes.</summary>
    /// <param name="successes">How many trials succeeded.</param>
    /// <param name="trials">How many trials there were; none gives <see cref="TooLittleData"/>.</param>
    /// <param name="target">The chance under the null hypothesis, 0 to 1.</param>
    /// <param name="alternative">Which departures count.</param>
    public static Outcome<TestResult> Against(int successes, int trials, double target, Alternative alternative = Alternative.TwoSided)
    {
        Require.Counts(successes, trials);
        if (!(target >= 0 && target <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(target), target, "A target proportion lies between 0 and 1.");
        }

        if (trials == 0)
        {
            return new TooLittleData(Method, 0, 1, "no trials");
        }

        var p = alternative switch
        {
            Alternative.Less => BinomialLaw.AtMost(successes, trials, target),
            Alternative.Greater => BinomialLaw.AtLeast(successes, trials, target),
            _ => TwoSided(successes, trials, target),
        };
        return new TestResult(successes, Math.Min(1, p), trials, Method);
    }

    private static double TwoSided(int successes, int trials, double target)
    {
        if (successes == trials * target)
        {
            return 1;
        }

        // Counts whose probabilities differ only by rounding are equally likely.
        var seen = BinomialLaw.Probability(successes, trials, target) * (1 + 1e-7);
        if (successes < trials * target)
        {
            var first = FirstUpTo(seen, (int)Math.Ceiling(trials * target), trials, k => BinomialLaw.Probability(k, trials, target));
            return BinomialLaw.AtMost(successes, trials, target) + BinomialLaw.AtLeast(first, trials, target);
        }

        var mirrored = FirstUpTo(seen, (int)Math.Ceiling(trials * (1 - target)), trials, k => BinomialLaw.Probability(trials - k, trials, target));
        return BinomialLaw.AtLeast(successes, trials, target) + BinomialLaw.AtMost(trials - mirrored, trials, target);
    }

    /// <summary>Beyond the mode the probabilities fall: the first count from which they stay at or below the seen one.</summary>
    private static int FirstUpTo(double seen, int from, int trials, Func<int, double> probability)
    {
        var (low, high) = (from, trials + 1);
        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            if (probability(middle) <= seen)
            {
                high = middle;
            }
            else
            {
                low = middle + 1;
            }
        }

        return low;
    }
}
