namespace CareRecords.Pooling;

/// <summary>The pooled share by two models.</summary>
internal static class ShareModels
{
    public static PooledShare Model(IReadOnlyList<GapTally> children) => new() { Method = $"waits for the statistics ({children.Count})" };

    public static PooledShare TwoStep(IReadOnlyList<GapTally> children) => new() { Method = $"waits for the statistics ({children.Count})" };

    /// <summary>The empirical logit with a half added to both cells, which keeps it finite, and its variance.</summary>
    public static (double Value, double Variance) Logit(GapTally child)
    {
        var (kept, not) = (child.Kept + 0.5, child.Judged - child.Kept + 0.5);
        return (Math.Log(kept / not), (1 / kept) + (1 / not));
    }
}
