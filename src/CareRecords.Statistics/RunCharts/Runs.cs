namespace CareRecords.Statistics;

/// <summary>Runs: stretches of equal neighbours.</summary>
internal static class Runs
{
    /// <summary>The lengths of the runs, in order.</summary>
    public static List<int> Lengths(IReadOnlyList<int> marks)
    {
        List<int> lengths = [];
        for (var i = 0; i < marks.Count; i++)
        {
            if (i > 0 && marks[i] == marks[i - 1])
            {
                lengths[^1]++;
            }
            else
            {
                lengths.Add(1);
            }
        }

        return lengths;
    }
}
