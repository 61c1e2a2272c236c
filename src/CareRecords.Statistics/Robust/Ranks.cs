namespace CareRecords.Statistics;

/// <summary>Ranks with ties sharing the mean of the ranks they cover (midranks), 1 for the smallest.</summary>
internal static class Ranks
{
    public static double[] Of(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        var order = Enumerable.Range(0, sorted.Length).ToArray();
        Array.Sort(sorted, order);
        var ranks = new double[sorted.Length];
        for (var start = 0; start < sorted.Length;)
        {
            var end = start + 1;
            while (end < sorted.Length && sorted[end] == sorted[start])
            {
                end++;
            }

            for (var i = start; i < end; i++)
            {
                ranks[order[i]] = 0.5 * (start + 1 + end);
            }

            start = end;
        }

        return ranks;
    }

    /// <summary>How many values share each tied value (groups of one included).</summary>
    public static IEnumerable<int> TieGroups(IEnumerable<double> values) => values.GroupBy(v => v).Select(g => g.Count());
}
