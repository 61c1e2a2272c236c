namespace CareRecords.Statistics;

/// <summary>Some successes of some trials.</summary>
/// <param name="Successes">Successes, 0 or more.</param>
/// <param name="Trials">Trials, at least 1.</param>
public readonly record struct TrialCount(int Successes, int Trials);

/// <summary>
/// Logits of proportions for pooling when studies are small. A plain logit is biased away from one half, and its own variance 1/x + 1/(n−x) is large
/// just where the logit is extreme, so that inverse-variance weights draw the mean towards one half and its interval misses the truth. Here ½ is added
/// to both counts of every study, which removes the bias to order 1/n (Anscombe FJ 1956, Biometrika 43:461-464), the variance is
/// 1/(x+½) + 1/(n−x+½) (Gart JJ, Zweifel JR 1967, Biometrika 54:181-187), and a smoothed variance takes from the study only how many trials it has:
/// the mean over studies of variance times (n+1), divided by the study's own n+1 (smoothed within-study variances: Berkey CS et al. 1995, Stat Med
/// 14:395-411). Assumes independent trials. Smallest data: one trial in each study.
/// </summary>
public static class EmpiricalLogit
{
    /// <summary>One study's logit with its own variance.</summary>
    /// <param name="count">Its successes and trials.</param>
    public static StudyEffect Of(TrialCount count)
    {
        Require.Counts(count.Successes, count.Trials);
        ArgumentOutOfRangeException.ThrowIfZero(count.Trials);
        var (x, rest) = (count.Successes + 0.5, count.Trials - count.Successes + 0.5);
        return new(Math.Log(x / rest), (1 / x) + (1 / rest));
    }

    /// <summary>The logits of several studies with smoothed variances, in the same order.</summary>
    /// <param name="counts">The studies' successes and trials.</param>
    public static StudyEffect[] Smoothed(IReadOnlyCollection<TrialCount> counts)
    {
        ArgumentNullException.ThrowIfNull(counts);
        if (counts.Count == 0)
        {
            return [];
        }

        var perTrial = counts.Average(c => Of(c).Variance * (c.Trials + 1.0));
        return [.. counts.Select(c => Of(c) with { Variance = perTrial / (c.Trials + 1.0) })];
    }
}
