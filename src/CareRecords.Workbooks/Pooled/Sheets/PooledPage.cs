using CareRecords.Workbooks.Building;
using ClosedXML.Excel;

namespace CareRecords.Workbooks.Pooled.Sheets;

/// <summary>What the sheets of the pooled workbook have alike.</summary>
internal static class PooledPage
{
    private const string Caution = "What some families wrote down, pooled. Not advice for any child. The figures describe these children and show no causes.";
    private static readonly DateTime Written = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    public static void Dress(IXLWorksheet sheet, XLColor tab)
    {
        PageDress.Apply(sheet, landscape: true, tab);
        Foot(sheet);
    }

    public static void Foot(IXLWorksheet sheet)
    {
        sheet.PageSetup.Footer.Left.Clear();
        sheet.PageSetup.Footer.Left.AddText(Caution).SetFontSize(7);
    }

    public static void SetProperties(XLWorkbook workbook)
    {
        workbook.Properties.Title = "Pooled care records";
        workbook.Properties.Author = "";
        workbook.Properties.LastModifiedBy = "";
        workbook.Properties.Company = "";
        workbook.Properties.Created = Written;
        workbook.Properties.Modified = Written;
    }

    /// <summary>A table on a sheet of its own.</summary>
    public static void Table<T>(Book book, string name, string use, string table, IReadOnlyList<Column<T>> columns, IReadOnlyList<T> rows, XLColor tab)
    {
        var sheet = book.Add(name);
        TableSheet.Dress(sheet, name, use, columns.Count);
        TableSheet.Write(book, sheet, table, columns, rows);
        Dress(sheet, tab);
    }
}
