using System.Globalization;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace CareRecords.Workbooks.Tests;

/// <summary>Whatever a table holds is printed: no print area ends above the last row of its sheet.</summary>
public sealed class PrintAreasTests
{
    [Fact]
    public void Print_areas_reach_the_last_row()
    {
        using var document = SpreadsheetDocument.Open(new MemoryStream(ReviewWorkbookTests.Bytes(SampleMonth.Log(9))), false);
        var workbook = document.WorkbookPart!;
        var areas = workbook.Workbook.DefinedNames!.Elements<DefinedName>().Where(n => n.Name == "_xlnm.Print_Area").ToDictionary(n => n.Text[..n.Text.LastIndexOf('!')].Trim('\''), n => int.Parse(n.Text[(n.Text.LastIndexOf('$') + 1)..], CultureInfo.InvariantCulture));
        Assert.Contains(WorkbookLayout.Sheet.Days, areas.Keys);
        foreach (var sheet in workbook.Workbook.Sheets!.Elements<Sheet>().Where(s => areas.ContainsKey(s.Name!)))
        {
            var rows = ((WorksheetPart)workbook.GetPartById(sheet.Id!)).Worksheet.Descendants<Row>().Where(r => r.Elements<Cell>().Any(c => c.CellValue is not null || c.InlineString is not null)).Select(r => (int)r.RowIndex!.Value).ToList();
            Assert.True(areas[sheet.Name!] >= rows.Max(), $"{sheet.Name}: printed to row {areas[sheet.Name!]} of {rows.Max()}");
        }
    }
}
