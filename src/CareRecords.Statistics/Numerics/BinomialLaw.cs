using MathNet.Numerics;

namespace CareRecords.Statistics;

/// <summary>
/// Binomial probabilities. Tails come from the incomplete beta function (Abramowitz &amp; Stegun 1964, 26.5.24), which
/// keeps relative precision in both tails.
/// </summary>
internal static class BinomialLaw
{
    public static double Probability(int k, int n, double p)
    {
        if (p <= 0 || p >= 1)
        {
            return (p <= 0 && k == 0) || (p >= 1 && k == n) ? 1 : 0;
        }

        return Math.Exp(SpecialFunctions.BinomialLn(n, k) + (k * Math.Log(p)) + ((n - k) * Precise.Log1p(-p)));
    }

    /// <summary>P(X &lt;= k).</summary>
    public static double AtMost(int k, int n, double p) =>
        k < 0 ? 0 : k >= n ? 1 : SpecialFunctions.BetaRegularized(n - k, k + 1, 1 - p);

    /// <summary>P(X >= k).</summary>
    public static double AtLeast(int k, int n, double p) =>
        k <= 0 ? 1 : k > n ? 0 : SpecialFunctions.BetaRegularized(k, n - k + 1, p);

    /// <summary>The smallest k with P(X &lt;= k) >= probability.</summary>
    public static int Quantile(double probability, int n, double p)
    {
        var (low, high) = (0, n);
        while (low < high)
        {
            var middle = low + ((high - low) / 2);

            // A little slack, so that a tie with the asked probability counts as reached in spite of rounding.
            if (AtMost(middle, n, p) >= probability - 1e-14)
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
