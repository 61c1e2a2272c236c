using ClosedXML.Excel;

namespace CareRecords.Workbooks.Building;

/// <summary>What every sheet has alike: paper, margins, foot, protection without a password.</summary>
internal static class PageDress
{
    /// <summary>Characters of the sheet's font over a landscape page, printed at 7 points.</summary>
    private const double PageWidth = 209;

    public static void Apply(IXLWorksheet sheet, bool landscape, XLColor tab, int headingRow = WorkbookLayout.HeadingRow)
    {
        sheet.TabColor = tab;
        sheet.ShowGridLines = false;
        var page = sheet.PageSetup;
        page.PaperSize = XLPaperSize.A4Paper;
        page.PageOrientation = landscape ? XLPageOrientation.Landscape : XLPageOrientation.Portrait;
        page.FitToPages(1, 0);
        if (landscape && sheet.Tables.Any()) PrintFirstColumns(sheet, headingRow);
        page.Margins.Left = page.Margins.Right = 0.4;
        page.Margins.Top = 0.4;
        page.Margins.Bottom = 0.65;
        page.Margins.Header = page.Margins.Footer = 0.25;
        var half = Look.ShortCaution.IndexOf(" If worried", StringComparison.Ordinal);
        page.Footer.Left.AddText(Look.ShortCaution[..half] + "\n" + Look.ShortCaution[(half + 1)..]).SetFontSize(7);
        page.Footer.Right.AddText("&A, page &P of &N").SetFontSize(8);
        var protection = sheet.Protect();
        protection.AllowElement(XLSheetProtectionElements.SelectLockedCells);
        protection.AllowElement(XLSheetProtectionElements.SelectUnlockedCells);
        protection.AllowElement(XLSheetProtectionElements.AutoFilter);
        protection.AllowElement(XLSheetProtectionElements.Sort);
        protection.AllowElement(XLSheetProtectionElements.FormatColumns);
        protection.AllowElement(XLSheetProtectionElements.FormatRows);
        protection.AllowElement(XLSheetProtectionElements.FormatCells);
        sheet.SetTabSelected(false);
    }

    /// <summary>Prints as many whole columns of a table as one landscape page holds at a size that can be read, and says so above the table.</summary>
    private static void PrintFirstColumns(IXLWorksheet sheet, int headingRow)
    {
        var last = sheet.LastColumnUsed()?.ColumnNumber() ?? 1;
        var (printed, width) = (0, 0.0);
        while (printed < last && (sheet.Column(printed + 1).IsHidden || width + sheet.Column(printed + 1).Width <= PageWidth))
        {
            printed++;
            if (!sheet.Column(printed).IsHidden) width += sheet.Column(printed).Width;
        }

        if (Enumerable.Range(printed + 1, last - printed).All(c => sheet.Column(c).IsHidden)) return;
        sheet.PageSetup.PrintAreas.Add(1, 1, sheet.LastRowUsed()!.RowNumber(), printed);
        sheet.Cell(WorkbookLayout.HeadingRow - 1, 1).SetValue<string>($"On paper: the columns up to '{sheet.Cell(headingRow, printed).GetString()}'. On the screen the table goes on to the right.");
        sheet.Cell(WorkbookLayout.HeadingRow - 1, 1).Style.Font.FontSize = 8;
        sheet.Cell(WorkbookLayout.HeadingRow - 1, 1).Style.Font.Italic = true;
    }
}
