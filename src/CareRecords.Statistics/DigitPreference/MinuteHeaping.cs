namespace CareRecords.Statistics;

/// <summary>How strongly written minutes heap on round ones; each index is 100 when minutes are spread evenly.</summary>
/// <param name="Count">How many minutes.</param>
/// <param name="LastDigits">How often each last digit 0 to 9 was written.</param>
/// <param name="ChiSquare">Chi-square of the last digits against equal shares, 9 degrees of freedom.</param>
/// <param name="PValue">Its P value; below about 50 minutes it is rough.</param>
/// <param name="Fives">500 × the share of minutes divisible by 5, with Wilson limits (100 to 500).</param>
/// <param name="Tens">1000 × the share divisible by 10, with Wilson limits.</param>
/// <param name="Quarters">1500 × the share divisible by 15, with Wilson limits.</param>
public sealed record HeapingFigures(
    int Count, IReadOnlyList<int> LastDigits, double ChiSquare, double PValue, Estimate Fives, Estimate Tens, Estimate Quarters);

/// <summary>
/// Digit preference of minutes (of the hour, or of a duration): how often multiples of 5, 10 and 15 were written, against
/// 12, 6 and 4 of 60 by chance, and a chi-square of the last digit.
/// Source: Whipple's index (Shryock HS, Siegel JS 1976) carried over to minutes; Wilson limits of the share (Wilson 1927).
/// Assumes independent entries whose true last digits are equally likely. Smallest data: one entry; the chi-square wants 50.
/// </summary>
public static class MinuteHeaping
{
    /// <summary>The heaping of minutes.</summary>
    /// <param name="minutes">Whole minutes, none negative.</param>
    /// <param name="level">The confidence level of the indexes.</param>
    public static Outcome<HeapingFigures> Of(IReadOnlyCollection<int> minutes, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(minutes);
        Require.Level(level);
        var digits = new int[10];
        foreach (var minute in minutes)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(minute, nameof(minutes));
            digits[minute % 10]++;
        }

        var n = minutes.Count;
        if (n == 0)
        {
            return new TooLittleData("heaping of minutes", 0, 1, "no minutes written");
        }

        Estimate Index(int step) => Wilson.Interval(minutes.Count(m => m % step == 0), n, level)
            .Value.OnScale(share => 100 * step * share, $"multiples of {step} minutes, 100 = none preferred");
        var expected = n / 10.0;
        var chiSquare = digits.Sum(d => (d - expected) * (d - expected) / expected);
        return new HeapingFigures(n, digits, chiSquare, Statistics.ChiSquare.Upper(chiSquare, 9), Index(5), Index(10), Index(15));
    }
}
