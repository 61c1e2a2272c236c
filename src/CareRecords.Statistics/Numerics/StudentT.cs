using MathNet.Numerics;

namespace CareRecords.Statistics;

/// <summary>Student's t distribution through the incomplete beta function; the quantile is refined to full precision.</summary>
public static class StudentT
{
    /// <summary>P(T > t) for any real t.</summary>
    public static double Upper(double t, double freedom)
    {
        var tail = 0.5 * SpecialFunctions.BetaRegularized(freedom / 2, 0.5, freedom / (freedom + (t * t)));
        return t >= 0 ? tail : 1 - tail;
    }

    /// <summary>P(|T| > |t|).</summary>
    public static double TwoSided(double t, double freedom) => Math.Min(1, 2 * Upper(Math.Abs(t), freedom));

    /// <summary>The two-sided critical value, for example 2.2281 for 0.95 and 10 degrees of freedom.</summary>
    public static double Critical(double level, double freedom)
    {
        var tail = (1 - level) / 2;
        var high = 2.0;
        while (Upper(high, freedom) > tail)
        {
            high *= 2;
        }

        return Bisection.Falling(t => Upper(t, freedom) - tail, 0, high);
    }
}
