using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Charts.Paper;
using CareRecords.Workbooks.Charts.Pictures;

namespace CareRecords.Workbooks.Charts;

/// <summary>The drawn charts of a review.</summary>
public static class ReviewCharts
{
    /// <summary>Lays out every chart that has something to show, in a fixed order, and begins to draw; it does not wait for the pictures.</summary>
    /// <returns>The charts in the order in which a clinic asks; the same input gives the same bytes.</returns>
    public static IReadOnlyList<DrawnChart> DrawAll(CareLog log, ChildFindings findings)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(findings);
        return ChartPage.DrawAll(Pages(log, findings));
    }

    private static List<ChartPage> Pages(CareLog log, ChildFindings findings)
    {
        var pages = new List<ChartPage>();
        pages.AddRange(DayStripsChart.Pages(log, findings));
        var parts = SpanParts.Of(findings);
        for (var i = 0; i < parts.Count; i++) Add(pages, SaturationChart.Page(log, parts[i], SpanParts.Name("saturation", i, parts.Count)));
        for (var i = 0; i < parts.Count; i++) Add(pages, GapChart.Page(parts[i], SpanParts.Name("gaps", i, parts.Count)));
        Add(pages, WeeksChart.Page(findings));
        Add(pages, TaperChart.Page(findings));
        foreach (var episode in findings.Illness.Episodes) Add(pages, RecoveryChart.Page(findings, episode));
        Add(pages, RecoveryCurveChart.Page(findings));
        Add(pages, RunChart.Page(findings));
        Add(pages, DigitPreferenceChart.Page(findings));
        return pages;
    }

    private static void Add(List<ChartPage> pages, ChartPage? page)
    {
        if (page is not null) pages.Add(page);
    }
}
