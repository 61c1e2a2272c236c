using ClosedXML.Excel;

namespace CareRecords.Workbooks.Building;

/// <summary>Writes the front page from the top down: bands, sentences over the whole width, small tables with a label and eight cells.</summary>
internal sealed class FrontPage(Book book, IXLWorksheet sheet)
{
    /// <summary>The label and eight narrow columns.</summary>
    public const int Columns = 9;

    private const double LabelWidth = 26;
    private const double CellWidth = 10;
    private const double PageWidth = LabelWidth + ((Columns - 1) * CellWidth);
    private const double LineHeight = 12.6;

    /// <summary>Headings are smaller than the columns' measure.</summary>
    private const double HeadingGain = 1.3;

    /// <summary>The next row to be written, one-based.</summary>
    public int Row { get; private set; } = 1;

    public void SetWidths()
    {
        sheet.Column(1).Width = LabelWidth;
        for (var c = 2; c <= Columns; c++) sheet.Column(c).Width = CellWidth;
    }

    public void Title(CellContent title)
    {
        var range = Across();
        book.Put(sheet.Cell(Row, 1), title);
        range.Style.Font.Bold = true;
        range.Style.Font.FontSize = 15;
        range.Style.Font.FontColor = Look.Blue;
        sheet.Row(Row++).Height = 21;
    }

    public void Band(string words, string? link = null)
    {
        sheet.Row(Row).Height = 3;
        Row++;
        var withLink = link is not null;
        Look.Band(sheet.Range(Row, 1, Row, withLink ? Columns - 2 : Columns));
        book.Put(sheet.Cell(Row, 1), words);
        if (withLink)
        {
            // Some programs draw every link in blue, which cannot be read on the band.
            var range = sheet.Range(Row, Columns - 1, Row, Columns).Merge();
            range.Style.Fill.BackgroundColor = Look.PaleBlue;
            range.Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Right;
            range.Style.Font.FontSize = 9;
            book.Put(sheet.Cell(Row, Columns - 1), CellContent.Of("sheet " + link!.Split('\'')[1]).To(link));
        }

        sheet.Row(Row++).Height = 13.8;
    }

    /// <summary>A sentence over the whole width, as high as its words need.</summary>
    /// <param name="words">The words, or a formula that gives them.</param>
    /// <param name="size">Size of the letters, points.</param>
    public void Sentence(CellContent words, double size = Look.Size)
    {
        var range = Across();
        book.Put(sheet.Cell(Row, 1), words);
        range.Style.Alignment.WrapText = true;
        range.Style.Alignment.Vertical = XLAlignmentVerticalValues.Top;
        range.Style.Font.FontSize = size;
        sheet.Row(Row++).Height = 1 + (LineHeight * TableSheet.LinesOf(words.Value as string ?? "", PageWidth * 1.22 * Look.Size / size));
    }

    public void Headings(params string[] headings)
    {
        for (var c = 0; c < headings.Length; c++) book.Put(sheet.Cell(Row, c + 1), headings[c]);
        var range = sheet.Range(Row, 1, Row, Columns);
        range.Style.Font.Bold = true;
        range.Style.Font.FontSize = 9;
        range.Style.Fill.BackgroundColor = Look.PaleBlue;
        range.Style.Alignment.WrapText = true;
        range.Style.Alignment.Vertical = XLAlignmentVerticalValues.Bottom;
        for (var c = 2; c <= Columns; c++) sheet.Cell(Row, c).Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Right;
        // With one heading fewer than columns, the last is joined over two.
        var last = headings.Length < Columns ? headings.Length - 1 : -1;
        var lines = headings.Select((h, c) => TableSheet.LinesOf(h, c == 0 ? LabelWidth : c == last ? 2.2 * CellWidth : CellWidth + HeadingGain)).Max();
        sheet.Row(Row++).Height = 2 + (11.5 * lines);
    }

    /// <summary>A row of a small table.</summary>
    public void Line(CellContent label, params (CellContent Content, string Format)[] cells)
    {
        book.Put(sheet.Cell(Row, 1), label);
        for (var c = 0; c < cells.Length; c++)
        {
            var cell = sheet.Cell(Row, c + 2);
            cell.Style.NumberFormat.Format = cells[c].Format;
            cell.Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Right;
            cell.Style.Alignment.ShrinkToFit = true;
            book.Put(cell, cells[c].Content);
        }

        Rule(sheet.Range(Row, 1, Row, Columns));
        sheet.Row(Row++).Height = 13.2;
    }

    /// <summary>Joins the last two cells of the row just written, for longer words.</summary>
    public void JoinLastTwo()
    {
        var range = sheet.Range(Row - 1, Columns - 1, Row - 1, Columns).Merge();
        range.Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Right;
    }

    /// <summary>Two named values side by side.</summary>
    public void Pair(string leftName, CellContent left, string rightName, CellContent right)
    {
        book.Put(sheet.Cell(Row, 1), leftName);
        sheet.Range(Row, 2, Row, 4).Merge();
        book.Put(sheet.Cell(Row, 2), left);
        sheet.Range(Row, 5, Row, 6).Merge();
        book.Put(sheet.Cell(Row, 5), rightName);
        sheet.Range(Row, 7, Row, Columns).Merge();
        book.Put(sheet.Cell(Row, 7), right);
        foreach (var c in new[] { 2, 7 })
        {
            sheet.Cell(Row, c).Style.Font.Bold = true;
            sheet.Cell(Row, c).Style.Alignment.ShrinkToFit = true;
            sheet.Cell(Row, c).Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Left;
        }

        Rule(sheet.Range(Row, 1, Row, Columns));
        sheet.Row(Row++).Height = 13.2;
    }

    /// <summary>Empty ruled lines to write on, by hand or on the screen.</summary>
    public void WritingLines(IReadOnlyList<string> labels)
    {
        foreach (var label in labels)
        {
            book.Put(sheet.Cell(Row, 1), label);
            var range = sheet.Range(Row, 2, Row, Columns).Merge();
            Look.Editable(range);
            range.Style.Border.BottomBorder = XLBorderStyleValues.Thin;
            range.Style.Alignment.WrapText = true;
            sheet.Row(Row++).Height = 17.5;
        }
    }

    private IXLRange Across() => sheet.Range(Row, 1, Row, Columns).Merge();

    private static void Rule(IXLRange range)
    {
        range.Style.Border.BottomBorder = XLBorderStyleValues.Hair;
        range.Style.Border.BottomBorderColor = Look.Line;
    }
}
