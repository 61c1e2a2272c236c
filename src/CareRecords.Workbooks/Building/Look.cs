using ClosedXML.Excel;

namespace CareRecords.Workbooks.Building;

/// <summary>
/// How the workbook looks. Colours are Okabe and Ito's (2008) or greys; text is black on white or on a pale fill, or white on blue (contrast 5.2),
/// so that a black-and-white print loses nothing. Nothing is coloured as good or bad.
/// </summary>
internal static class Look
{
    public const string Font = "Arial";
    public const double Size = 10;

    /// <summary>Short caution at the foot of every page.</summary>
    public const string ShortCaution =
        "A record of what was written down. Not a monitor, not advice. Follow your child's own plan. If worried, act on the plan or call for help: do not wait for a chart.";

    public static readonly XLColor Blue = XLColor.FromHtml("#0072B2");
    public static readonly XLColor Green = XLColor.FromHtml("#009E73");
    public static readonly XLColor Orange = XLColor.FromHtml("#E69F00");
    public static readonly XLColor Grey = XLColor.FromHtml("#7F7F7F");
    public static readonly XLColor PaleBlue = XLColor.FromHtml("#DCEBF5");
    public static readonly XLColor PaleGrey = XLColor.FromHtml("#EFEFEF");
    public static readonly XLColor PaleYellow = XLColor.FromHtml("#FFF9DC");
    public static readonly XLColor Line = XLColor.FromHtml("#8C8C8C");

    public static class Format
    {
        public const string Time = "yyyy-mm-dd hh:mm";
        public const string Day = "ddd d mmm yyyy";
        public const string ShortDay = "d mmm yyyy";
        public const string Whole = "0";
        public const string OneDecimal = "0.0";
        public const string UpToTwo = "0.##";
        public const string Flow = "0.##";
        public const string Percent = "0%";
        public const string Text = "@";
    }

    public static void Title(IXLCell cell)
    {
        cell.Style.Font.Bold = true;
        cell.Style.Font.FontSize = 15;
        cell.Style.Font.FontColor = Blue;
    }

    public static void TableHeading(IXLRange range)
    {
        range.Style.Font.Bold = true;
        range.Style.Font.FontColor = XLColor.Black;
        range.Style.Fill.BackgroundColor = PaleBlue;
        range.Style.Border.BottomBorder = XLBorderStyleValues.Medium;
        range.Style.Border.BottomBorderColor = Blue;
        range.Style.Alignment.WrapText = true;
        range.Style.Alignment.Vertical = XLAlignmentVerticalValues.Bottom;
    }

    public static void Band(IXLRange range)
    {
        range.Style.Font.Bold = true;
        range.Style.Font.FontSize = 11;
        range.Style.Font.FontColor = XLColor.White;
        range.Style.Fill.BackgroundColor = Blue;
    }

    /// <summary>A cell that a person may fill in or mend.</summary>
    public static void Editable(IXLRangeBase range) => range.Style.Protection.Locked = false;
}
