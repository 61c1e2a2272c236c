namespace CareRecords.Statistics;

/// <summary>
/// exp(x) − 1 and log(1 + x) to full precision near zero (Kahan's corrections, as in Higham NJ 2002, Accuracy and Stability
/// of Numerical Algorithms, section 1.14). MathNet's Expm1 has only eight digits at x = −0.1, and .NET's are the plain
/// differences.
/// </summary>
internal static class Precise
{
    public static double Expm1(double x)
    {
        var power = Math.Exp(x);
        var difference = power - 1;
        return difference == 0 ? x : difference == -1 || double.IsInfinity(power) ? difference : difference * x / Math.Log(power);
    }

    public static double Log1p(double x)
    {
        var sum = 1 + x;
        return sum == 1 ? x : Math.Log(sum) * x / (sum - 1);
    }
}
