using CareRecords.Statistics;

namespace CareRecords.Pooling;

/// <summary>Completeness over children, and the funnel that shows whether fuller records tell another share.</summary>
internal static class CompletenessPooling
{
    public static PooledCompleteness Of(IReadOnlyList<ChildSummary> children, PoolOptions options)
    {
        var shown = children.Count >= Math.Max(1, options.SmallestGroup);
        return new()
        {
            Days = shown ? children.Sum(c => c.Days) : null,
            DaysWithRecords = shown ? children.Sum(c => c.DaysWithRecords) : null,
            MedianShareOfDays = shown ? Quantiles.At([.. children.Select(c => (double)c.DaysWithRecords / c.Days)], 0.5).Value : null,
            Funnel = [.. Funnel("Feed gap", children, c => c.FeedGap, options), .. Funnel("Inhaler gap", children, c => c.InhalerGap, options)],
        };
    }

    private static IEnumerable<FunnelPoint> Funnel(string gap, IReadOnlyList<ChildSummary> children, Func<ChildSummary, GapTally> tally, PoolOptions options)
    {
        var inOrder = children.Where(c => tally(c).Judged > 0).OrderBy(c => tally(c).Completeness).ThenBy(c => c.Code.Text, StringComparer.Ordinal).Select(tally).ToList();
        foreach (var (from, to) in GapPooling.BatchesOf(inOrder.Count, options.SmallestGroup))
        {
            var batch = inOrder[from..to];
            var logits = batch.Select(t => EmpiricalLogit.Of(new(t.Kept, t.Judged))).ToList();
            var mean = logits.Average(l => l.Value);
            var error = Math.Sqrt(logits.Count == 1 ? logits[0].Variance : logits.Sum(l => (l.Value - mean) * (l.Value - mean)) / (logits.Count - 1) / logits.Count);
            yield return new(gap, batch.Count, batch.Average(t => t.Completeness ?? 0), 1 / (1 + Math.Exp(-mean)), error);
        }
    }
}
