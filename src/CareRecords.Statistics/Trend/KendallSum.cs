namespace CareRecords.Statistics;

/// <summary>
/// Kendall's S = concordant less discordant pairs, its null variance with ties on both sides, and the pieces of tau-b.
/// Source: Kendall MG (1970), Rank Correlation Methods, chapters 3 to 5.
/// </summary>
internal readonly record struct KendallSum(long S, double Variance, double PairsX, double PairsY, bool Tied)
{
    public static KendallSum Of(double[] x, double[] y)
    {
        var s = 0L;
        for (var i = 0; i < x.Length; i++)
        {
            for (var j = i + 1; j < x.Length; j++)
            {
                s += Math.Sign(x[j] - x[i]) * Math.Sign(y[j] - y[i]);
            }
        }

        double n = x.Length;
        var (a, b) = (Ties.Of(x), Ties.Of(y));
        var variance = ((n * (n - 1) * ((2 * n) + 5)) - a.Third - b.Third) / 18;
        variance += n > 2 ? a.Triples * b.Triples / (9 * n * (n - 1) * (n - 2)) : 0;
        variance += n > 1 ? a.Pairs * b.Pairs / (2 * n * (n - 1)) : 0;
        var pairs = n * (n - 1) / 2;
        return new(s, variance, pairs - (a.Pairs / 2), pairs - (b.Pairs / 2), a.Pairs > 0 || b.Pairs > 0);
    }

    public double TauB => S / Math.Sqrt(PairsX) / Math.Sqrt(PairsY);

    /// <summary>Σt(t−1), Σt(t−1)(t−2) and Σt(t−1)(2t+5) over groups of ties.</summary>
    private readonly record struct Ties(double Pairs, double Triples, double Third)
    {
        public static Ties Of(double[] values)
        {
            var sum = default(Ties);
            foreach (double t in Ranks.TieGroups(values))
            {
                sum = new(sum.Pairs + (t * (t - 1)), sum.Triples + (t * (t - 1) * (t - 2)), sum.Third + (t * (t - 1) * ((2 * t) + 5)));
            }

            return sum;
        }
    }
}
