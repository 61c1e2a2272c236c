using MathNet.Numerics.Distributions;

namespace CareRecords.Statistics;

/// <summary>The standard normal distribution, under the names that formulas use.</summary>
internal static class Gaussian
{
    /// <summary>The two-sided critical value, 1.959963984540054 for 0.95.</summary>
    public static double Critical(double level) => -Quantile((1 - level) / 2);

    public static double Quantile(double probability) => Normal.InvCDF(0, 1, probability);

    public static double Lower(double z) => Normal.CDF(0, 1, z);

    /// <summary>Precise in the far tail, where 1 - CDF would be lost.</summary>
    public static double Upper(double z) => Normal.CDF(0, 1, -z);

    public static double TwoSided(double z) => Math.Min(1, 2 * Upper(Math.Abs(z)));

    public static double PValue(double z, Alternative alternative) => alternative switch
    {
        Alternative.Greater => Upper(z),
        Alternative.Less => Lower(z),
        _ => TwoSided(z),
    };
}
