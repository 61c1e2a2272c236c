using System.Globalization;
using CareRecords.Statistics;

namespace CareRecords.Pooling;

/// <summary>One gap over all children: the pooled share twice, the counts and the rows of the forest plot.</summary>
internal static class GapPooling
{
    private const int MostBatches = 30;

    public static PooledGap Of(string name, IReadOnlyList<ChildSummary> children, Func<ChildSummary, GapTally> tally, IReadOnlyList<ChildGroups> groupings, PoolOptions options, List<SuppressedCell> suppressed)
    {
        var judged = children.Where(c => tally(c).Judged > 0).ToList();
        if (judged.Count > 0 && judged.Count < options.SmallestGroup)
        {
            var why = Suppression.TooFew(options.SmallestGroup);
            suppressed.Add(new(name, "all children", why));
            var none = new PooledShare { Method = "kept back: " + why };
            return new() { Name = name, Model = none, TwoStep = none, Counts = null, Forest = [] };
        }

        GapTally[] tallies = [.. judged.Select(tally)];
        return new()
        {
            Name = name,
            Model = ShareModels.Model(tallies, further: true),
            TwoStep = ShareModels.TwoStep(tallies),
            Counts = new(judged.Count, tallies.Sum(t => t.Kept), tallies.Sum(t => t.Judged), children.Sum(c => tally(c).Unknown)),
            Forest = [.. Batches(judged, tally, options.SmallestGroup), .. groupings.Where(g => g.IsGiven).SelectMany(g => GroupRows(name, g, tally, options, suppressed))],
        };
    }

    /// <summary>
    /// Children in order of their share, in batches of at least the smallest group: the spread between children shows and no child does.
    /// </summary>
    internal static IEnumerable<ForestRow> Batches(IReadOnlyList<ChildSummary> judged, Func<ChildSummary, GapTally> tally, int smallest)
    {
        var inOrder = judged.OrderBy(c => (double)tally(c).Kept / tally(c).Judged).ThenBy(c => c.Code.Text, StringComparer.Ordinal).ToList();
        foreach (var (from, to) in BatchesOf(inOrder.Count, smallest))
        {
            var batch = inOrder[from..to].Select(tally).ToList();
            var (kept, of) = (batch.Sum(t => t.Kept), batch.Sum(t => t.Judged));
            var share = Wilson.Interval(kept, of).Value;
            var label = to - from == 1 ? string.Create(CultureInfo.InvariantCulture, $"child {to} by share") : string.Create(CultureInfo.InvariantCulture, $"children {from + 1} to {to} by share");
            yield return new(label, to - from, of, share.Value, share.Low, share.High);
        }
    }

    /// <summary>Cuts a row of children into as many like batches as the smallest size allows, thirty at most.</summary>
    internal static IEnumerable<(int From, int To)> BatchesOf(int count, int smallest)
    {
        var batches = Math.Min(MostBatches, count / Math.Max(1, smallest));
        for (var b = 0; b < batches; b++) yield return ((int)((long)b * count / batches), (int)((long)(b + 1) * count / batches));
    }

    private static IEnumerable<ForestRow> GroupRows(string name, ChildGroups grouping, Func<ChildSummary, GapTally> tally, PoolOptions options, List<SuppressedCell> suppressed)
    {
        var groups = grouping.Groups.Select(g => (g.Label, Tallies: g.Children.Select(tally).Where(t => t.Judged > 0).ToArray())).ToList();
        var keptBack = Suppression.Of([.. groups.Select(g => g.Tallies.Length)], options.SmallestGroup);
        foreach (var ((label, tallies), why) in groups.Zip(keptBack))
        {
            var row = $"{grouping.Name}: {label}";
            if (why is not null)
            {
                suppressed.Add(new(name, row, why));
                yield return new(row, null, null, null, null, null);
                continue;
            }

            var share = ShareModels.Model(tallies);
            yield return new(row, tallies.Length, tallies.Sum(t => t.Judged), share.Pooled, share.Low, share.High);
        }
    }
}
