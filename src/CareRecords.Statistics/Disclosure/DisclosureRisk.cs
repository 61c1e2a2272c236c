namespace CareRecords.Statistics;

/// <summary>How far rows can be told apart, and what they give away, by codes that others may know.</summary>
/// <param name="SmallestClass">k: the fewest rows that share one combination of codes.</param>
/// <param name="DistinctDiversity">l: the fewest different sensitive values in a class.</param>
/// <param name="EntropyDiversity">The smallest exp(entropy) of sensitive values in a class; 1 when a class has one value.</param>
/// <param name="WorstShare">The largest share of one sensitive value in a class, 0 to 1: how surely it can be guessed.</param>
/// <param name="Classes">How many combinations occur.</param>
/// <param name="UniqueRows">How many rows are alone with their combination.</param>
/// <param name="Count">How many rows.</param>
public sealed record DisclosureRiskResult(
    int SmallestClass, int DistinctDiversity, double EntropyDiversity, double WorstShare, int Classes, int UniqueRows, int Count);

/// <summary>
/// k-anonymity and l-diversity of a table. Source: Sweeney L (2002), Int J Uncertainty Fuzziness Knowl-Based Syst
/// 10:557-570; Machanavajjhala A et al. (2007), ACM Trans Knowl Discov Data 1(1):3.
/// Assumes that an attacker knows the codes and that somebody is in the table, and nothing else; l-diversity does not tell
/// near values from far ones. Smallest data: one row.
/// </summary>
public static class DisclosureRisk
{
    /// <summary>The measures of a table.</summary>
    /// <param name="codes">For each row, the codes that others may know (quasi-identifiers), as text.</param>
    /// <param name="sensitive">For each row, the value to be protected.</param>
    public static Outcome<DisclosureRiskResult> Of(IReadOnlyList<IReadOnlyList<string>> codes, IReadOnlyList<string> sensitive)
    {
        ArgumentNullException.ThrowIfNull(codes);
        ArgumentNullException.ThrowIfNull(sensitive);
        if (codes.Count != sensitive.Count || codes.Any(c => c.Count != codes[0].Count))
        {
            throw new ArgumentException("Each row has the same codes and one sensitive value.", nameof(codes));
        }

        if (codes.Count == 0)
        {
            return new TooLittleData("disclosure risk", 0, 1, "no rows");
        }

        var classes = codes.Zip(sensitive).GroupBy(r => r.First, r => r.Second, new SameCodes())
            .Select(g => (Size: g.Count(), Shares: g.GroupBy(s => s, StringComparer.Ordinal).Select(v => (double)v.Count() / g.Count()).ToArray()))
            .ToArray();
        return new DisclosureRiskResult(
            classes.Min(c => c.Size),
            classes.Min(c => c.Shares.Length),
            classes.Min(c => Math.Exp(-c.Shares.Sum(p => p * Math.Log(p)))),
            classes.Max(c => c.Shares.Max()),
            classes.Length,
            classes.Count(c => c.Size == 1),
            codes.Count);
    }

    private sealed class SameCodes : IEqualityComparer<IReadOnlyList<string>>
    {
        public bool Equals(IReadOnlyList<string>? x, IReadOnlyList<string>? y) => x is not null && y is not null && x.SequenceEqual(y, StringComparer.Ordinal);

        public int GetHashCode(IReadOnlyList<string> obj) => obj.Aggregate(17, HashCode.Combine);
    }
}
