using ClosedXML.Excel;

namespace CareRecords.Workbooks.Building;

/// <summary>What every sheet has alike: paper, margins, foot, protection without a password.</summary>
internal static class PageDress
{
    public static void Apply(IXLWorksheet sheet, bool landscape, XLColor tab)
    {
        sheet.TabColor = tab;
        sheet.ShowGridLines = false;
        var page = sheet.PageSetup;
        page.PaperSize = XLPaperSize.A4Paper;
        page.PageOrientation = landscape ? XLPageOrientation.Landscape : XLPageOrientation.Portrait;
        page.FitToPages(1, 0);
        page.Margins.Left = page.Margins.Right = 0.4;
        page.Margins.Top = 0.4;
        page.Margins.Bottom = 0.65;
        page.Margins.Header = page.Margins.Footer = 0.25;
        page.Footer.Left.AddText(Look.ShortCaution[..Look.ShortCaution.IndexOf(" If worried", StringComparison.Ordinal)].Replace("&", "&&", StringComparison.Ordinal)).SetFontSize(7);
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
}
