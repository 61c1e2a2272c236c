namespace CareRecords.Statistics;

/// <summary>A Mann-Kendall test.</summary>
/// <param name="S">Rising less falling pairs.</param>
/// <param name="Variance">The null variance of S, corrected for ties.</param>
/// <param name="Z">(S ∓ 1)/√Variance.</param>
/// <param name="PValue">Two-sided, by the normal approximation with continuity correction.</param>
/// <param name="TauB">Kendall's tau-b of the series with time, −1 to 1.</param>
/// <param name="Count">How many values.</param>
public sealed record MannKendallResult(long S, double Variance, double Z, double PValue, double TauB, int Count);

/// <summary>
/// The Mann-Kendall test of a monotone trend. Source: Mann HB (1945), Econometrica 13:245-259; Kendall MG (1970), Rank
/// Correlation Methods. Assumes values independent in time: positive correlation of neighbours makes P too small.
/// Smallest data: 4 values (the normal approximation wants 10), not all equal and not all at one time.
/// </summary>
public static class MannKendall
{
    private const int Smallest = 4;

    /// <summary>The test of a series in time order.</summary>
    /// <param name="values">Finite values.</param>
    public static Outcome<MannKendallResult> Test(IReadOnlyList<double> values) =>
        Test([.. Enumerable.Range(0, values?.Count ?? 0).Select(i => (double)i)], values!);

    /// <summary>The test of values at given times, in any order.</summary>
    /// <param name="times">Finite times.</param>
    /// <param name="values">Finite values.</param>
    public static Outcome<MannKendallResult> Test(IReadOnlyList<double> times, IReadOnlyList<double> values)
    {
        var (t, y) = Require.Pairs(times, values);
        if (t.Length < Smallest)
        {
            return new TooLittleData("Mann-Kendall test", t.Length, Smallest, "too few values for a trend");
        }

        var sum = KendallSum.Of(t, y);
        if (sum.PairsX <= 0 || sum.PairsY <= 0)
        {
            return new TooLittleData("Mann-Kendall test", t.Length, Smallest, "all values (or all times) are equal");
        }

        var z = (sum.S - Math.Sign(sum.S)) / Math.Sqrt(sum.Variance);
        return new MannKendallResult(sum.S, sum.Variance, z, Gaussian.TwoSided(z), sum.TauB, t.Length);
    }
}
