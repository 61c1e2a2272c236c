namespace CareRecords.Statistics;

/// <summary>
/// The error variance of a series whose level changes seldom: half the squared median absolute deviation (times 1.4826) of
/// the differences of neighbours, so that the changes themselves do not enter.
/// Source: Hampel FR (1974), J Am Stat Assoc 69:383-393, for the MAD. Assumes independent normal errors; positive correlation
/// makes it too small. Smallest data: three values; 0 when more than half of the neighbours differ by the same amount.
/// </summary>
public static class NoiseVariance
{
    /// <summary>The variance, in squared units of the values.</summary>
    /// <param name="values">Finite values in order.</param>
    public static Outcome<double> FromDifferences(IReadOnlyList<double> values)
    {
        var x = Require.Finite([.. values]);
        if (x.Length < 3)
        {
            return new TooLittleData("noise variance", x.Length, 3, "two differences of neighbours are needed");
        }

        var spread = Quantiles.MedianAbsoluteDeviation([.. x.Zip(x.Skip(1), (a, b) => b - a)]).Value;
        return spread * spread / 2;
    }
}
