using CareRecords.Workbooks.Charts;

namespace CareRecords.Workbooks.Tests.Charts;

public sealed class ReviewChartsTests
{
    [Fact]
    public void An_interesting_month_gives_every_chart_in_order()
    {
        var (log, findings) = InventedMonth.Of();
        var charts = ReviewCharts.DrawAll(log, findings);
        if (Environment.GetEnvironmentVariable("CHART_PICTURES") is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
            foreach (var chart in charts) File.WriteAllBytes(Path.Combine(folder, chart.Name + ".png"), chart.Png);
        }
        Assert.Equal(
            ["days-1", "saturation", "gaps", "weeks", "taper", "recovery-e1", "recovery-e2", "recovery-all", "runs", "rounding"],
            charts.Select(c => c.Name));
    }
}
