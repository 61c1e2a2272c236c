using System.Globalization;
using CareRecords.Workbooks.Building;
using CareRecords.Workbooks.Charts;
using CareRecords.Workbooks.Sheets;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace CareRecords.Workbooks.Finishing;

/// <summary>The one pass over the saved package: every formula gets its stored value, and the charts are put on their sheet.</summary>
internal static class PackagePass
{
    /// <exception cref="InvalidOperationException">A formula cell has no stored value, or a stored value has no formula cell.</exception>
    public static void Finish(MemoryStream package, IReadOnlyDictionary<(string Sheet, string Address), StoredValue> stored, IReadOnlyList<PlacedChart> charts)
    {
        using var document = SpreadsheetDocument.Open(package, true);
        var workbook = document.WorkbookPart ?? throw new InvalidOperationException("The package has no workbook.");
        document.PackageProperties.Language = "en-GB";
        PackageMending.MendStyles(workbook);
        var given = 0;
        foreach (var sheet in workbook.Workbook.Descendants<Sheet>())
        {
            if (workbook.GetPartById(sheet.Id?.Value ?? "") is not WorksheetPart part) continue;
            var name = sheet.Name?.Value ?? "";
            PackageMending.SortColumns(part);
            given += StoreValues(part, name, stored);
            if (name == WorkbookLayout.Sheet.Charts) AddCharts(part, charts);
        }

        if (given != stored.Count) throw new InvalidOperationException($"{stored.Count} values were kept for formulas and {given} formulas found.");
        PackageMending.FixPrintTitles(document.WorkbookPart!.Workbook);
        document.Save();
    }

    private static int StoreValues(WorksheetPart part, string sheet, IReadOnlyDictionary<(string Sheet, string Address), StoredValue> stored)
    {
        var given = 0;
        foreach (var cell in part.Worksheet.Descendants<Cell>())
        {
            if (cell.CellFormula is not { } formula) continue;
            var address = cell.CellReference?.Value ?? "";
            if (!stored.TryGetValue((sheet, address), out var value)) throw new InvalidOperationException($"The formula in {sheet}!{address} has no stored value.");
            if (value.IsArray)
            {
                formula.FormulaType = CellFormulaValues.Array;
                formula.Reference = address;
            }

            Store(cell, value.Value);
            given++;
        }

        return given;
    }

    private static void Store(Cell cell, object? value)
    {
        (cell.DataType, var text) = value switch
        {
            double number => (null, number.ToString("R", CultureInfo.InvariantCulture)),
            DateTime at => (null, at.ToOADate().ToString("R", CultureInfo.InvariantCulture)),
            NotAvailable => (new EnumValue<CellValues>(CellValues.Error), "#N/A"),
            string words => (new EnumValue<CellValues>(CellValues.String), CellText.Fit(words)),
            null => (new EnumValue<CellValues>(CellValues.String), ""),
            _ => throw new ArgumentException($"A formula's value is words, a number or a time, not {value.GetType()}.", nameof(value)),
        };
        cell.CellValue = new CellValue(text);
    }

    private static void AddCharts(WorksheetPart part, IReadOnlyList<PlacedChart> charts)
    {
        foreach (var chart in charts)
        {
            if (chart.Drawn is { } drawn) ChartParts.AddPicture(part, drawn, chart.Anchor);
            if (chart.Native is { } native) ChartParts.AddNativeChart(part, native, chart.Anchor);
        }
    }
}
