using CareRecords.Pooling;
using CareRecords.Workbooks.Building;
using CareRecords.Workbooks.Finishing;
using CareRecords.Workbooks.Pooled.Charts;
using CareRecords.Workbooks.Pooled.Sheets;
using CareRecords.Workbooks.Sheets;

namespace CareRecords.Workbooks.Pooled;

/// <summary>The pooled workbook: a front page for a study meeting, charts, the figures as tables, what was kept back and left out, reporting items, methods.</summary>
public static class PooledWorkbook
{
    /// <summary>Writes the workbook to a stream that stays open. The same findings give the same bytes.</summary>
    public static void Write(PooledFindings findings, Stream output)
    {
        ArgumentNullException.ThrowIfNull(findings);
        ArgumentNullException.ThrowIfNull(output);
        using var book = new Book();
        FrontSheet.Write(book, findings);
        var placed = ChartsSheet.Write(book, PooledCharts.DrawAll(findings), []);
        PooledPage.Foot(book.Workbook.Worksheet(WorkbookLayout.Sheet.Charts));
        FigureSheets.Write(book, findings);
        AccountSheets.Write(book, findings);
        ReportingSheet.Write(book, findings);
        MethodsSheet.Write(book, findings);
        PooledPage.SetProperties(book.Workbook);
        book.Workbook.Worksheet(FrontSheet.Name).SetTabActive();
        PackagePass.Save(book, placed, output);
    }
}
