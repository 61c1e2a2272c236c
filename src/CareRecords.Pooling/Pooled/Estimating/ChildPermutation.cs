using CareRecords.Statistics;

namespace CareRecords.Pooling;

/// <summary>
/// Tests that deal whole children out among the groups again, or turn whole children's signs, so that a child with many sessions or episodes counts
/// once. p = (1 + permutations at least as far out) / (1 + permutations): exact under the hypothesis that the groups are alike
/// (Phipson B, Smyth GK 2010, Stat Appl Genet Mol Biol 9:39).
/// </summary>
internal static class ChildPermutation
{
    // Statistics that should be equal miss it by rounding.
    private const double Tie = 1e-9;

    /// <summary>p of a statistic that is large when the groups differ.</summary>
    /// <param name="groups">The group of each child.</param>
    /// <param name="statistic">The statistic for groups dealt out among the children.</param>
    /// <param name="permutations">How many.</param>
    /// <param name="seed">The seed.</param>
    public static double OfLabels(int[] groups, Func<int[], double> statistic, int permutations, int seed)
    {
        var random = new SeededRandom(seed);
        var seen = statistic(groups);
        int[] dealt = [.. groups];
        var atLeast = 0;
        for (var n = 0; n < permutations; n++)
        {
            for (var i = dealt.Length - 1; i > 0; i--)
            {
                var j = random.Below(i + 1);
                (dealt[i], dealt[j]) = (dealt[j], dealt[i]);
            }

            if (statistic(dealt) >= seen * (1 - Tie)) atLeast++;
        }

        return (1.0 + atLeast) / (1 + permutations);
    }

    /// <summary>Two-sided p that the children's contributions are centred on 0: each child's sign is turned at random.</summary>
    public static double OfSigns(IReadOnlyList<double> contributions, int permutations, int seed)
    {
        var random = new SeededRandom(seed);
        var seen = Math.Abs(contributions.Sum());
        var atLeast = 0;
        for (var n = 0; n < permutations; n++)
        {
            var sum = contributions.Sum(c => random.Uniform() < 0.5 ? c : -c);
            if (Math.Abs(sum) >= seen * (1 - Tie)) atLeast++;
        }

        return (1.0 + atLeast) / (1 + permutations);
    }
}
