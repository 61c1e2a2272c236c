using CareRecords.Workbooks.Charts;
using CareRecords.Workbooks.Sheets;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace CareRecords.Workbooks.Finishing;

/// <summary>Puts the charts on their sheet, which the workbook library cannot. It opens no other sheet.</summary>
internal static class ChartPass
{
    public static void Add(MemoryStream package, IReadOnlyList<PlacedChart> charts)
    {
        using var document = SpreadsheetDocument.Open(package, true);
        var workbook = document.WorkbookPart ?? throw new InvalidOperationException("The package has no workbook.");
        document.PackageProperties.Language = "en-GB";
        // The order in which formulas were last worked out: it knows the library's cells only, and every program makes its own.
        if (workbook.CalculationChainPart is { } chain) workbook.DeletePart(chain);
        if (charts.Count > 0) AddTo(ChartSheet(workbook), charts);
        document.Save();
    }

    private static WorksheetPart ChartSheet(WorkbookPart workbook)
    {
        var sheet = workbook.Workbook.Descendants<Sheet>().Single(s => s.Name?.Value == WorkbookLayout.Sheet.Charts);
        return (WorksheetPart)workbook.GetPartById(sheet.Id?.Value ?? "");
    }

    private static void AddTo(WorksheetPart part, IReadOnlyList<PlacedChart> charts)
    {
        foreach (var chart in charts)
        {
            if (chart.Drawn is { } drawn) ChartParts.AddPicture(part, drawn, chart.Anchor);
            if (chart.Native is { } native) ChartParts.AddNativeChart(part, native, chart.Anchor);
        }
    }
}
