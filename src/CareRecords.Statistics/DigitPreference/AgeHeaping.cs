namespace CareRecords.Statistics;

/// <summary>
/// Digit preference in counts by single year (or any whole number): Whipple's index, the digit indexes of Roger et al. and
/// Myers' blended method.
/// Source: Shryock HS, Siegel JS (1976), The Methods and Materials of Demography, Academic Press; Myers RJ (1940), Trans
/// Actuar Soc Am 41:395-415; Roger G, Waltisperger D, Corbille-Guitton C (1981), for the digit indexes.
/// Assumes that true counts change slowly with the number. Smallest data: one counted person within the range.
/// </summary>
public static class AgeHeaping
{
    /// <summary>
    /// Whipple's index as a ratio (1 = no preference, 5 = only fives and noughts): five times the share of multiples of
    /// five among the numbers from <paramref name="from"/> to <paramref name="to"/>, both included.
    /// </summary>
    /// <param name="counts">Counts by number, the first for 0; none negative.</param>
    /// <param name="from">The first number counted, ending in 3 or 8 so that each digit counts as often.</param>
    /// <param name="to">The last number counted.</param>
    public static Outcome<double> Whipple(IReadOnlyList<double> counts, int from = 23, int to = 62)
    {
        var (all, fives) = (Sum(counts, from, to, _ => true), Sum(counts, from, to, a => a % 5 == 0));
        return all > 0 ? 5 * fives / all : Empty("Whipple's index");
    }

    /// <summary>
    /// The index of one terminal digit between 25 and 60 (1 = no preference, 10 = that digit only): ten times the share of
    /// that digit's numbers in the range that starts 7 before its first and ends 2 after its last number.
    /// </summary>
    /// <param name="counts">Counts by number, the first for 0.</param>
    /// <param name="digit">0 to 9.</param>
    public static Outcome<double> DigitIndex(IReadOnlyList<double> counts, int digit)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(digit);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(digit, 9);
        var ages = Enumerable.Range(25, 36).Where(a => a % 10 == digit).ToArray();
        var all = Sum(counts, ages[0] - 7, ages[^1] + 2, _ => true);
        return all > 0 ? 10 * Sum(counts, ages[0], ages[^1], a => a % 10 == digit) / all : Empty("digit index");
    }

    /// <summary>Myers' blended percentages of the ten terminal digits (10 each without preference) and his index.</summary>
    /// <param name="counts">Counts by number, the first for 0.</param>
    /// <param name="from">The first number; the range holds whole tens of numbers.</param>
    /// <param name="to">The last number.</param>
    /// <param name="keepLastTen">
    /// False leaves the last ten numbers out of the first sum (Myers' own form); true keeps them (a later spreadsheet form).
    /// </param>
    /// <returns>Percentages by digit 0 to 9, and half the sum of their absolute deviations from 10 (0 to 90).</returns>
    public static Outcome<(IReadOnlyList<double> Percentages, double Index)> Myers(
        IReadOnlyList<double> counts, int from = 10, int to = 89, bool keepLastTen = false)
    {
        if (from < 0 || to < from + 19 || (to - from + 1) % 10 != 0)
        {
            throw new ArgumentOutOfRangeException(nameof(to), to, "Myers' range holds at least two whole tens of numbers.");
        }

        var blended = new double[10];
        for (var digit = 0; digit < 10; digit++)
        {
            var weight = ((digit - (from % 10) + 10) % 10) + 1;
            var first = Sum(counts, from, keepLastTen ? to : to - 10, a => a % 10 == digit);
            var second = Sum(counts, from + 10, to, a => a % 10 == digit);
            blended[digit] = (weight * first) + ((10 - weight) * second);
        }

        var all = blended.Sum();
        if (!(all > 0))
        {
            return Empty("Myers' index");
        }

        double[] percentages = [.. blended.Select(b => 100 * b / all)];
        return (percentages, percentages.Sum(p => Math.Abs(p - 10)) / 2);
    }

    private static TooLittleData Empty(string method) => new(method, 0, 1, "nobody counted within the range");

    private static double Sum(IReadOnlyList<double> counts, int from, int to, Func<int, bool> which)
    {
        ArgumentNullException.ThrowIfNull(counts);
        ArgumentOutOfRangeException.ThrowIfNegative(from);
        var sum = 0.0;
        for (var a = from; a <= Math.Min(to, counts.Count - 1); a++)
        {
            if (!(counts[a] >= 0) || double.IsInfinity(counts[a]))
            {
                throw new ArgumentException("A count is a finite number, not negative.", nameof(counts));
            }

            sum += which(a) ? counts[a] : 0;
        }

        return sum;
    }
}
