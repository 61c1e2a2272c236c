namespace CareRecords.Statistics;

/// <summary>A rank correlation with its test.</summary>
/// <param name="Coefficient">Tau-b or rho, −1 to 1.</param>
/// <param name="Statistic">Concordant pairs (exact Kendall), z (Kendall with ties or many points), Σd² (Spearman).</param>
/// <param name="PValue">The P value.</param>
/// <param name="Count">How many pairs.</param>
/// <param name="Method">How P was found.</param>
public sealed record RankCorrelationResult(double Coefficient, double Statistic, double PValue, int Count, string Method);

/// <summary>
/// Kendall's tau-b and Spearman's rho. P is exact without ties for Kendall up to <see cref="LargestExactKendall"/> pairs and
/// for Spearman up to <see cref="LargestExactSpearman"/>; otherwise normal (Kendall, no continuity correction) and t on
/// n − 2 degrees of freedom (Spearman, Pearson's correlation of midranks).
/// Source: Kendall MG (1970), Rank Correlation Methods; Hollander M, Wolfe DA (1973), pp. 185-194.
/// Assumes independent pairs. Smallest data: 3 pairs that vary on both sides.
/// </summary>
public static class RankCorrelation
{
    /// <summary>Exact Kendall P below 50 pairs.</summary>
    public const int LargestExactKendall = 49;

    /// <summary>Exact Spearman P up to 9 pairs (362 880 orders).</summary>
    public const int LargestExactSpearman = 9;

    private const int Smallest = 3;

    /// <summary>Kendall's tau-b.</summary>
    /// <param name="x">Finite values.</param>
    /// <param name="y">Finite values.</param>
    /// <param name="alternative">Greater: they rise together.</param>
    public static Outcome<RankCorrelationResult> Kendall(IReadOnlyList<double> x, IReadOnlyList<double> y, Alternative alternative = Alternative.TwoSided)
    {
        var (a, b) = Require.Pairs(x, y);
        var sum = KendallSum.Of(a, b);
        if (a.Length < Smallest || sum.PairsX <= 0 || sum.PairsY <= 0)
        {
            return Missing("Kendall's tau", a.Length);
        }

        if (!sum.Tied && a.Length <= LargestExactKendall)
        {
            var concordant = (int)((sum.S + ((long)a.Length * (a.Length - 1) / 2)) / 2);
            return new RankCorrelationResult(sum.TauB, concordant, Exact(InversionLaw(a.Length), concordant, alternative), a.Length, "Kendall, exact");
        }

        var z = sum.S / Math.Sqrt(sum.Variance);
        return new RankCorrelationResult(sum.TauB, z, Gaussian.PValue(z, alternative), a.Length, "Kendall, normal approximation");
    }

    /// <summary>Spearman's rho.</summary>
    /// <param name="x">Finite values.</param>
    /// <param name="y">Finite values.</param>
    /// <param name="alternative">Greater: they rise together.</param>
    public static Outcome<RankCorrelationResult> Spearman(IReadOnlyList<double> x, IReadOnlyList<double> y, Alternative alternative = Alternative.TwoSided)
    {
        var (a, b) = Require.Pairs(x, y);
        var (rx, ry) = (Ranks.Of(a), Ranks.Of(b));
        var n = a.Length;
        if (n < Smallest || rx.Distinct().Count() < 2 || ry.Distinct().Count() < 2)
        {
            return Missing("Spearman's rho", n);
        }

        var mean = (n + 1) / 2.0;
        double Product(double[] u, double[] v) => u.Zip(v, (p, q) => (p - mean) * (q - mean)).Sum();
        var rho = Math.Clamp(Product(rx, ry) / Math.Sqrt(Product(rx, rx) * Product(ry, ry)), -1, 1);
        var distance = rx.Zip(ry, (p, q) => (p - q) * (p - q)).Sum();
        if (n <= LargestExactSpearman && rx.Distinct().Count() == n && ry.Distinct().Count() == n)
        {
            return new RankCorrelationResult(rho, distance, ExactSpearman(n, distance, alternative), n, "Spearman, exact");
        }

        var t = rho * Math.Sqrt((n - 2) / Math.Max(1e-300, 1 - (rho * rho)));
        var p = alternative switch
        {
            Alternative.Greater => StudentT.Upper(t, n - 2),
            Alternative.Less => StudentT.Upper(-t, n - 2),
            _ => StudentT.TwoSided(t, n - 2),
        };
        return new RankCorrelationResult(rho, distance, p, n, "Spearman, t approximation");
    }

    private static TooLittleData Missing(string method, int count) => new(method, count, Smallest, "three pairs that vary on both sides are needed");

    /// <summary>The chances of 0, 1, 2, … concordant pairs in a random order of n.</summary>
    private static double[] InversionLaw(int n)
    {
        double[] law = [1];
        for (var size = 2; size <= n; size++)
        {
            var next = new double[law.Length + size - 1];
            for (var i = 0; i < law.Length; i++)
            {
                for (var k = 0; k < size; k++)
                {
                    next[i + k] += law[i] / size;
                }
            }

            law = next;
        }

        return law;
    }

    private static double Exact(double[] law, int seen, Alternative alternative)
    {
        var (atMost, atLeast) = (law.Take(seen + 1).Sum(), law.Skip(seen).Sum());
        return Math.Min(1, alternative switch
        {
            Alternative.Greater => atLeast,
            Alternative.Less => atMost,
            _ => 2 * Math.Min(atMost, atLeast),
        });
    }

    /// <summary>Every order of n ranks, counted by Σd²; a small distance means rising together.</summary>
    private static double ExactSpearman(int n, double distance, Alternative alternative)
    {
        var (atMost, atLeast, all) = (0, 0, 0);
        void Place(int position, int used, int sum)
        {
            if (position == n)
            {
                all++;
                atMost += sum <= distance + 1e-9 ? 1 : 0;
                atLeast += sum >= distance - 1e-9 ? 1 : 0;
                return;
            }

            for (var rank = 0; rank < n; rank++)
            {
                if ((used & (1 << rank)) == 0)
                {
                    Place(position + 1, used | (1 << rank), sum + ((rank - position) * (rank - position)));
                }
            }
        }

        Place(0, 0, 0);
        var (near, far) = ((double)atMost / all, (double)atLeast / all);
        return Math.Min(1, alternative switch
        {
            Alternative.Greater => near,
            Alternative.Less => far,
            _ => 2 * Math.Min(near, far),
        });
    }
}
