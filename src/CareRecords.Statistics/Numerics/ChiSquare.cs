using MathNet.Numerics;

namespace CareRecords.Statistics;

/// <summary>The chi-square distribution.</summary>
internal static class ChiSquare
{
    public static double Upper(double statistic, double freedom) =>
        statistic <= 0 ? 1 : SpecialFunctions.GammaUpperRegularized(freedom / 2, statistic / 2);

    public static double Lower(double statistic, double freedom) =>
        statistic <= 0 ? 0 : SpecialFunctions.GammaLowerRegularized(freedom / 2, statistic / 2);

    public static double Quantile(double probability, double freedom)
    {
        var high = freedom + 10;
        while (Lower(high, freedom) < probability)
        {
            high *= 2;
        }

        return Bisection.Rising(x => Lower(x, freedom) - probability, 0, high);
    }
}
