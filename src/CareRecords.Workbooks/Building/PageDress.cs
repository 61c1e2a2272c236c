using ClosedXML.Excel;

namespace CareRecords.Workbooks.Building;

/// <summary>What every sheet has alike: paper, margins, foot, protection without a password.</summary>
internal static class PageDress
{
    /// <summary>Characters of the sheet's font over a landscape page, printed at about three quarters of their size.</summary>
    private const double PageWidth = 195;

    public static void Apply(IXLWorksheet sheet, bool landscape, XLColor tab)
    {
        sheet.TabColor = tab;
        sheet.ShowGridLines = false;
        var page = sheet.PageSetup;
        page.PaperSize = XLPaperSize.A4Paper;
        page.PageOrientation = landscape ? XLPageOrientation.Landscape : XLPageOrientation.Portrait;
        page.FitToPages(landscape ? PagesAcross(sheet) : 1, 0);
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

    /// <summary>Pages side by side, so that no text is printed under about 7.5 points; the frozen columns are repeated on each.</summary>
    private static int PagesAcross(IXLWorksheet sheet)
    {
        var last = sheet.LastColumnUsed()?.ColumnNumber() ?? 1;
        var widths = Enumerable.Range(1, last).Select(c => sheet.Column(c)).Where(c => !c.IsHidden).Sum(c => c.Width);
        return Math.Max(1, (int)Math.Ceiling(widths / PageWidth));
    }
}
