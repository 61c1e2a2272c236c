namespace CareRecords.Statistics;

/// <summary>
/// Newcombe's hybrid score interval for the difference of two independent proportions, d = p1 − p2, from the Wilson
/// limits (l, u) of each: d − sqrt((p1−l1)² + (u2−p2)²) to d + sqrt((u1−p1)² + (p2−l2)²).
/// Source: Newcombe RG (1998), Stat Med 17:873-890, method 10.
/// Assumes independent trials in two independent groups. Smallest data: one trial in each group.
/// </summary>
public static class NewcombeDifference
{
    private const string Method = "Newcombe hybrid score interval";

    /// <summary>First proportion minus second, with its interval, −1 to 1. The count is both groups' trials together.</summary>
    /// <param name="successes1">Successes in the first group.</param>
    /// <param name="trials1">Trials in the first group.</param>
    /// <param name="successes2">Successes in the second group.</param>
    /// <param name="trials2">Trials in the second group.</param>
    /// <param name="level">The confidence level.</param>
    public static Outcome<Estimate> Interval(int successes1, int trials1, int successes2, int trials2, double level = 0.95)
    {
        Require.Counts(successes1, trials1);
        Require.Counts(successes2, trials2);
        Require.Level(level);
        if (trials1 == 0 || trials2 == 0)
        {
            return new TooLittleData(Method, trials1 == 0 ? trials1 : trials2, 1, "a group without trials");
        }

        var (p1, p2) = ((double)successes1 / trials1, (double)successes2 / trials2);
        var (l1, u1) = Wilson.Limits(successes1, trials1, level);
        var (l2, u2) = Wilson.Limits(successes2, trials2, level);
        var difference = p1 - p2;
        return new Estimate(
            difference,
            difference - double.Hypot(p1 - l1, u2 - p2),
            difference + double.Hypot(u1 - p1, p2 - l2),
            level,
            trials1 + trials2,
            Method);
    }
}
