namespace CareRecords.Statistics;

/// <summary>Arguments that are our caller's defect, refused by name.</summary>
internal static class Require
{
    public static void Level(double level)
    {
        if (!(level > 0 && level < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(level), level, "A confidence level lies between 0 and 1, both excluded.");
        }
    }

    public static void Counts(int successes, int trials)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(trials);
        ArgumentOutOfRangeException.ThrowIfNegative(successes);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(successes, trials);
    }

    /// <summary>A copy of the values, every one finite.</summary>
    public static double[] Finite(IReadOnlyCollection<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        double[] copy = [.. values];
        foreach (var value in copy)
        {
            if (!double.IsFinite(value))
            {
                throw new ArgumentException("Every value must be a finite number; leave unknown values out and count them apart.", nameof(values));
            }
        }

        return copy;
    }

    public static double[] SortedFinite(IReadOnlyCollection<double> values)
    {
        var copy = Finite(values);
        Array.Sort(copy);
        return copy;
    }

    public static (double[] X, double[] Y) Pairs(IReadOnlyCollection<double> x, IReadOnlyCollection<double> y)
    {
        var (a, b) = (Finite(x), Finite(y));
        return a.Length == b.Length ? (a, b) : throw new ArgumentException("The two series must have the same length.", nameof(y));
    }
}
