using System.Globalization;
using CareRecords.Workbooks.Building;
using ClosedXML.Excel;
using Heading = CareRecords.Workbooks.WorkbookLayout.Heading;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The very hidden sheet that keeps each cell of the tables as it was written, so that a later review notices what a person changed.</summary>
internal static class AsReadSheet
{
    /// <summary>Copies every filled cell that may be mended. Empty cells are not listed.</summary>
    public static void Write(Book book, IReadOnlyList<TablePlace> tables)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.AsRead);
        List<object[]> cells = [];
        foreach (var place in tables)
        {
            var from = book.Workbook.Worksheet(place.Sheet);
            var columns = place.Headings.Select((h, i) => (Heading: h, Column: i + 1)).Where(c => place.Editable.Contains(c.Heading)).ToList();
            for (var row = place.FirstRow; row <= place.LastRow; row++)
            {
                var id = from.Cell(row, 1).GetString();
                if (id.Length == 0) continue;
                cells.AddRange(columns.Select(c => (c.Heading, Cell: from.Cell(row, c.Column))).Where(c => !c.Cell.IsEmpty())
                    .Select(c => new object[] { id, c.Heading, InWords(c.Cell) }));
            }
        }

        sheet.Cell(1, 1).SetValue<string>(Heading.RowId);
        sheet.Cell(1, 2).SetValue<string>(Heading.Column);
        sheet.Cell(1, 3).SetValue<string>(Heading.Value);
        for (var i = 0; i < cells.Count; i++)
        {
            for (var c = 0; c < 3; c++) sheet.Cell(i + 2, c + 1).SetValue((string)cells[i][c]);
        }

        sheet.Protect();
        sheet.Visibility = XLWorksheetVisibility.VeryHidden;
    }

    private static string InWords(IXLCell cell) => cell.DataType switch
    {
        XLDataType.DateTime when cell.GetDateTime() is var at => at.ToString(at.Second == 0 ? "yyyy-MM-dd HH:mm" : "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
        XLDataType.Number => cell.GetDouble().ToString("R", CultureInfo.InvariantCulture),
        _ => cell.GetString(),
    };
}
