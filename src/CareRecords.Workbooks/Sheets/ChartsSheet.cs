using CareRecords.Workbooks.Building;
using CareRecords.Workbooks.Charts;
using ClosedXML.Excel;

namespace CareRecords.Workbooks.Sheets;

/// <summary>A picture or a native chart with its place on the sheet.</summary>
internal sealed record PlacedChart(ChartAnchor Anchor, DrawnChart? Drawn, NativeChart? Native);

/// <summary>The sheet of charts: drawn pictures first, then the native charts that follow the cells, none across a page break.</summary>
internal static class ChartsSheet
{
    private const int Columns = 14;
    private const double ColumnWidth = 9.3;
    private const double WidthMillimetres = 254;
    private const double RowHeight = 15;
    private const double TitleHeight = 22;
    private const double MillimetrePoints = 72 / 25.4;
    private const int NativeRows = 15;

    /// <summary>Rows on a landscape page of A4, the shorter of A4 and Letter, at <see cref="Scale"/>.</summary>
    private const int RowsPerPage = 33;

    private const int Scale = 97;

    /// <summary>The height that a chart may take under the sheet's title on the first page, or alone on any other.</summary>
    private const double MostMillimetres = (RowsPerPage - 4) * RowHeight / 72 * 25.4;

    public static IReadOnlyList<PlacedChart> Write(Book book, IReadOnlyList<DrawnChart> drawn, IReadOnlyList<NativeChart> native)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Charts);
        sheet.Columns(1, Columns).Width = ColumnWidth;
        book.Put(sheet.Cell(1, 1), "Charts");
        Look.Title(sheet.Cell(1, 1));
        book.Put(sheet.Cell(2, 1), "First the drawn pictures of the findings; then charts that follow the cells and change when a cell is mended.");
        sheet.Cell(2, 1).Style.Font.Italic = true;
        List<PlacedChart> placed = [];
        var cursor = new PageCursor(sheet);
        foreach (var chart in drawn)
        {
            var size = Fit(chart);
            placed.Add(new PlacedChart(size with { Row = cursor.Take(size.RowsCovered(RowHeight)) }, chart, null));
        }

        for (var i = 0; i < native.Count; i += 2)
        {
            var at = cursor.Take(NativeRows);
            for (var side = 0; side < 2 && i + side < native.Count; side++)
            {
                var anchor = new ChartAnchor(1 + (side * Columns / 2), at, (WidthMillimetres / 2) - 3, NativeRows * RowHeight / MillimetrePoints);
                placed.Add(new PlacedChart(side == 0 ? anchor : anchor with { FromEdges = (WidthMillimetres / 2, (TitleHeight + ((at - 2) * RowHeight)) / MillimetrePoints) }, null, native[i + side]));
            }
        }

        sheet.Rows(1, cursor.Row + 1).Height = RowHeight;
        sheet.Row(1).Height = TitleHeight;
        PageDress.Apply(sheet, landscape: true, Look.Blue);
        sheet.PageSetup.AdjustTo(Scale); // A page that is fitted to its width ignores the page breaks below.
        sheet.PageSetup.PrintAreas.Add(1, 1, Math.Max(cursor.Row, 6), Columns);
        return placed;
    }

    /// <summary>The size it was drawn for, or smaller where that would leave the page.</summary>
    private static ChartAnchor Fit(DrawnChart chart)
    {
        var drawn = ChartAnchor.AtDrawnSize(1, 1, chart);
        var scale = Math.Min(1, Math.Min(WidthMillimetres / drawn.WidthMillimetres, MostMillimetres / drawn.HeightMillimetres));
        return drawn with { WidthMillimetres = drawn.WidthMillimetres * scale, HeightMillimetres = drawn.HeightMillimetres * scale };
    }

    private sealed class PageCursor(IXLWorksheet sheet)
    {
        private int _pageStart = 1;

        public int Row { get; private set; } = 4;

        /// <summary>Takes rows for a chart, on a new page where they would cross its end.</summary>
        public int Take(int rows)
        {
            if (Row + rows - _pageStart > RowsPerPage && Row > 4)
            {
                sheet.PageSetup.AddHorizontalPageBreak(Row - 1);
                _pageStart = Row++; // A free row, so that no edge of the chart falls on the page before.
            }

            var at = Row;
            Row += rows + 1;
            return at;
        }
    }
}
