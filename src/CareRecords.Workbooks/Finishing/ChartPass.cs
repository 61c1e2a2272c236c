using CareRecords.Workbooks.Charts;
using CareRecords.Workbooks.Sheets;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace CareRecords.Workbooks.Finishing;

/// <summary>Puts the charts on their sheet, which the workbook library cannot. It opens no other sheet.</summary>
internal static class ChartPass
{
    /// <returns>The drawn pictures by the empty parts that they belong in.</returns>
    public static IReadOnlyDictionary<string, DrawnChart> Add(MemoryStream package, IReadOnlyList<PlacedChart> charts)
    {
        var pictures = new Dictionary<string, DrawnChart>();
        using var document = SpreadsheetDocument.Open(package, true);
        var workbook = document.WorkbookPart ?? throw new InvalidOperationException("The package has no workbook.");
        document.PackageProperties.Language = "en-GB";
        // The order in which formulas were last worked out: it knows the library's cells only, and every program makes its own.
        if (workbook.CalculationChainPart is { } chain) workbook.DeletePart(chain);
        if (charts.Count > 0) AddTo(ChartSheet(workbook), charts, pictures);
        document.Save();
        return pictures;
    }

    private static WorksheetPart ChartSheet(WorkbookPart workbook)
    {
        var sheet = workbook.Workbook.Descendants<Sheet>().Single(s => s.Name?.Value == WorkbookLayout.Sheet.Charts);
        return (WorksheetPart)workbook.GetPartById(sheet.Id?.Value ?? "");
    }

    private static void AddTo(WorksheetPart part, IReadOnlyList<PlacedChart> charts, Dictionary<string, DrawnChart> pictures)
    {
        foreach (var chart in charts)
        {
            if (chart.Drawn is { } drawn) pictures[ChartParts.AddPicture(part, drawn, chart.Anchor)] = drawn;
            if (chart.Native is { } native) ChartParts.AddNativeChart(part, native, chart.Anchor);
        }
    }
}
