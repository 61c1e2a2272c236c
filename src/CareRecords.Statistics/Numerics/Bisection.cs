namespace CareRecords.Statistics;

/// <summary>
/// Bisection until no double lies between the ends. Chosen over a faster root finder because it needs no tolerance,
/// never leaves the bracket and also finds the jump of a step function.
/// </summary>
internal static class Bisection
{
    /// <summary>The point where <paramref name="rising"/> passes from below zero to zero or more.</summary>
    public static double Rising(Func<double, double> rising, double low, double high)
    {
        while (true)
        {
            var middle = low + (0.5 * (high - low));
            if (middle <= low || middle >= high)
            {
                return high;
            }

            if (rising(middle) < 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }
    }

    public static double Falling(Func<double, double> falling, double low, double high) => Rising(x => -falling(x), low, high);
}
