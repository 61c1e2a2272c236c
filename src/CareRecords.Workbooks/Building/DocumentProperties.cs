using CareRecords.Findings;
using CareRecords.Records;
using ClosedXML.Excel;

namespace CareRecords.Workbooks.Building;

/// <summary>The document's title and language; no author, and no time of writing, so that the same input gives the same bytes.</summary>
internal static class DocumentProperties
{
    private static readonly DateTime Written = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    public static void Set(XLWorkbook workbook, CareLog log, ReviewSpan span)
    {
        var child = log.Plan.RowFor(PlanItem.ChildCalled, span.To)?.Value.Trim();
        var title = $"Chest-clearance review, {TimeWords.LongDay(span.From)} to {TimeWords.LongDay(span.To)}" + (child is null ? "" : ", " + child);
        workbook.Properties.Title = CellText.Fit(title.Length <= 250 ? title : title[..250]);
        workbook.Properties.Subject = "What was written at home about chest clearance";
        workbook.Properties.Author = "";
        workbook.Properties.LastModifiedBy = "";
        workbook.Properties.Company = "";
        workbook.Properties.Created = Written;
        workbook.Properties.Modified = Written;
        workbook.CustomProperties.Add(WorkbookLayout.LayoutProperty, WorkbookLayout.LayoutVersion);
        workbook.CustomProperties.Add("Definitions", ChildFindings.DefinitionsVersion);
    }
}
