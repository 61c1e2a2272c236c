using System.Globalization;

namespace CareRecords.Pooling;

/// <summary>
/// Which rows of a table are kept back. A row of fewer children than the smallest group is; and, because the rows add up to the children pooled, so are
/// further rows until those kept back are at least two and hold at least the smallest group together: then none can be worked out by subtraction.
/// A row of no children is shown.
/// </summary>
internal static class Suppression
{
    public const string BySubtraction = "would give another row away by subtraction";

    /// <summary>Why each row is kept back; null where it is shown.</summary>
    /// <param name="children">Children of each row; together all children pooled.</param>
    /// <param name="smallest">The smallest group shown, 1 or more.</param>
    public static IReadOnlyList<string?> Of(IReadOnlyList<int> children, int smallest)
    {
        var why = children.Select(n => n > 0 && n < smallest ? TooFew(smallest) : null).ToArray();
        while (Array.Exists(why, w => w is not null) && !Hidden(children, why, smallest))
        {
            var next = Enumerable.Range(0, why.Length).Where(i => why[i] is null && children[i] > 0).OrderBy(i => children[i]).ThenBy(i => i).Cast<int?>().FirstOrDefault();
            if (next is not { } row) break;
            why[row] = BySubtraction;
        }

        return why;
    }

    public static string TooFew(int smallest) => string.Create(CultureInfo.InvariantCulture, $"fewer than {smallest} children");

    private static bool Hidden(IReadOnlyList<int> children, string?[] why, int smallest)
    {
        var kept = Enumerable.Range(0, why.Length).Where(i => why[i] is not null).ToList();
        return kept.Count >= 2 && kept.Sum(i => children[i]) >= smallest;
    }
}
