using CareRecords.Pooling;
using CareRecords.Workbooks.Charts;
using CareRecords.Workbooks.Charts.Paper;

namespace CareRecords.Workbooks.Pooled.Charts;

/// <summary>Every chart of the pooled workbook that the figures allow.</summary>
internal static class PooledCharts
{
    public static IReadOnlyList<DrawnChart> DrawAll(PooledFindings findings) =>
        ChartPage.DrawAll(new[]
        {
            ForestChart.Page(findings.FeedGap, "forest-feed"),
            ForestChart.Page(findings.InhalerGap, "forest-inhaler"),
            PooledRecoveryChart.All(findings.Recovery.All),
            PooledRecoveryChart.ByGroup(findings.Recovery.ByStudyGroup, "study group", "recovery-study-group"),
            PooledRecoveryChart.ByGroup(findings.Recovery.ByAgeBand, "age band", "recovery-age-band"),
            PooledRecoveryChart.ByGroup(findings.Recovery.ByStability, "stable hours before steps down", "recovery-stability"),
            SetbackChart.Page(findings.Setbacks),
            FunnelChart.Page(findings),
        }.OfType<ChartPage>());
}
