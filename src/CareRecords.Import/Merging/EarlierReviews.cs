using CareRecords.Import.Accounting;
using CareRecords.Records;

namespace CareRecords.Import.Merging;

/// <summary>
/// An earlier review among the inputs stands for the sources that its rows name. Where such a source is itself among the inputs, the row and
/// the source's record are one event: the record counts once, and a row that a person mended wins over it.
/// </summary>
internal static class EarlierReviews
{
    /// <summary>The parts with every event once.</summary>
    public static void Settle(IReadOnlyList<Gathered> parts)
    {
        if (!parts.Any(p => p.IsReview)) return;
        var pool = new Dictionary<(Type, string, string?, int), List<CareEntry>>();
        foreach (var part in parts.Where(p => !p.IsReview))
            foreach (var entry in part.Entries) Add(pool, entry);
        var gone = new HashSet<CareEntry>(ReferenceEqualityComparer.Instance);
        foreach (var part in parts.Where(p => p.IsReview))
            foreach (var row in part.Entries.ToList())
            {
                var same = row.Sources.SelectMany(s => pool.GetValueOrDefault(Key(row, s)) ?? []).Distinct<CareEntry>(ReferenceEqualityComparer.Instance)
                    .Where(e => !gone.Contains(e)).ToList();
                var match = same.OrderBy(e => e.When.Stated == row.When.Stated ? 0 : 1).Take(row.Sources.Count).ToList();
                var mended = part.Mended.Contains(row);
                if (match.Count > 0 && !mended)
                {
                    gone.Add(row);
                    foreach (var entry in match) Remove(pool, entry);
                }
                else
                {
                    foreach (var entry in match)
                    {
                        gone.Add(entry);
                        Remove(pool, entry);
                    }
                }
            }

        foreach (var part in parts) part.Entries.RemoveAll(gone.Contains);
        DropCopies(parts);
    }

    // Plan rows, left-out sessions and questions come back with their sources: those that are among the inputs are there already.
    private static void DropCopies(IReadOnlyList<Gathered> parts)
    {
        var files = parts.Where(p => !p.IsReview).Select(p => p.File).ToHashSet();
        foreach (var part in parts.Where(p => p.IsReview))
        {
            var mended = part.Corrections.Count > 0;
            if (!mended) part.Plan.RemoveAll(r => r.Source is { } s && files.Contains(s.File));
            part.Omitted.RemoveAll(o => files.Contains(o.Source.File));
            part.FamilyQuestions.RemoveAll(q => files.Contains(q.File));
        }
    }

    private static void Add(Dictionary<(Type, string, string?, int), List<CareEntry>> pool, CareEntry entry)
    {
        foreach (var source in entry.Sources)
        {
            if (!pool.TryGetValue(Key(entry, source), out var list)) pool[Key(entry, source)] = list = [];
            list.Add(entry);
        }
    }

    private static void Remove(Dictionary<(Type, string, string?, int), List<CareEntry>> pool, CareEntry entry)
    {
        foreach (var source in entry.Sources)
            if (pool.TryGetValue(Key(entry, source), out var list))
                list.RemoveAll(e => ReferenceEquals(e, entry));
    }

    private static (Type, string, string?, int) Key(CareEntry entry, SourceLine source) => (entry.GetType(), source.File, source.Sheet, SourceLines.NumberOf(source));
}
