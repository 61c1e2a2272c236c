namespace CareRecords.Statistics;

/// <summary>Where a series changes level once, if it does.</summary>
/// <param name="Before">How many points lie before the likeliest change.</param>
/// <param name="Profile">
/// For each possible change (after 1, 2, … points) the log-likelihood less its maximum; 0 at the likeliest.
/// </param>
/// <param name="LikelihoodRatio">
/// Twice the gain in log-likelihood over no change. Not chi-square: the place was searched for.
/// </param>
/// <param name="LevelBefore">The level before it.</param>
/// <param name="LevelAfter">The level after it.</param>
public sealed record SingleChangeResult(int Before, IReadOnlyList<double> Profile, double LikelihoodRatio, double? LevelBefore, double? LevelAfter)
{
    /// <summary>
    /// The first and last change whose log-likelihood lies within half the chi-square quantile of the maximum: an
    /// approximate confidence set, which may have gaps.
    /// </summary>
    /// <param name="level">The confidence level.</param>
    public (int First, int Last) Plausible(double level = 0.95)
    {
        Require.Level(level);
        var drop = -ChiSquare.Quantile(level, 1) / 2;
        int[] inside = [.. Enumerable.Range(0, Profile.Count).Where(i => Profile[i] > drop)];
        return (inside[0] + 1, inside[^1] + 1);
    }
}

/// <summary>
/// The likelihood of one change of level at each place. Source: Hinkley DV (1970), Biometrika 57:1-17. Assumes points
/// independent given the levels. Smallest data: two points.
/// </summary>
public static class SingleChange
{
    /// <summary>The profile over all places.</summary>
    /// <param name="cost">The series with its cost.</param>
    public static Outcome<SingleChangeResult> Of(SegmentCost cost)
    {
        ArgumentNullException.ThrowIfNull(cost);
        var n = cost.Count;
        if (n < 2)
        {
            return new TooLittleData("single change", n, 2, "one point cannot change");
        }

        double[] halves = [.. Enumerable.Range(1, n - 1).Select(k => -0.5 * (cost.Of(0, k) + cost.Of(k, n)))];
        var most = halves.Max();
        var best = Array.IndexOf(halves, most) + 1;
        return new SingleChangeResult(
            best, [.. halves.Select(h => h - most)], cost.Of(0, n) + (2 * most), cost.Level(0, best), cost.Level(best, n));
    }
}
