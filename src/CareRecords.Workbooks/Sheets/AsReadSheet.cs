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
        sheet.Cell(1, 1).SetValue<string>(Heading.RowId);
        sheet.Cell(1, 2).SetValue<string>(Heading.Column);
        sheet.Cell(1, 3).SetValue<string>(Heading.Value);
        sheet.Range(2, 1, 2, 3).Style.NumberFormat.Format = Look.Format.Text;
        book.Later(new WordRows(sheet.Name, 2, 3, tables.SelectMany(t => Filled(book.Table(t.Table), t))));
        sheet.Protect();
        sheet.Visibility = XLWorksheetVisibility.VeryHidden;
    }

    private static IEnumerable<IReadOnlyList<string>> Filled(ICellSource cells, TablePlace place)
    {
        var editable = Enumerable.Range(0, place.Headings.Count).Where(c => place.Editable.Contains(place.Headings[c])).ToList();
        for (var row = 0; row < cells.Rows; row++)
        {
            if (cells.At(row, 0).Value is not string id) continue;
            foreach (var column in editable)
                if (InWords(cells.At(row, column).Value) is { } words) yield return [id, place.Headings[column], words];
        }
    }

    private static string? InWords(object? value) => value switch
    {
        null => null,
        DateTime at => at.ToString(at.Second == 0 ? "yyyy-MM-dd HH:mm" : "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        string words => CellText.Fit(words),
        _ => throw new ArgumentException($"A cell that may be mended holds words, a number or a time, not {value.GetType()}.", nameof(value)),
    };
}
