namespace CareRecords.Workbooks.Charts;

/// <summary>Where a picture or chart stands: the cell under its top left corner, and its size, which no column width changes.</summary>
/// <param name="Column">One-based column.</param>
/// <param name="Row">One-based row.</param>
/// <param name="WidthMillimetres">Width in mm, over 0.</param>
/// <param name="HeightMillimetres">Height in mm, over 0.</param>
public sealed record ChartAnchor(int Column, int Row, double WidthMillimetres, double HeightMillimetres)
{
    /// <summary>
    /// The distance from the sheet's left and top edge in mm, for what stands right of something else: a program without the sheet's font makes columns
    /// wider, and a chart that hangs on a column leaves the page. Null for one that hangs on its cell.
    /// </summary>
    public (double Left, double Top)? FromEdges { get; init; }

    /// <summary>The place of a picture at the size it was drawn for.</summary>
    public static ChartAnchor AtDrawnSize(int column, int row, DrawnChart chart) => new(
        column, row, chart.WidthPixels * 25.4 / DrawnChart.PixelsPerInch, chart.HeightPixels * 25.4 / DrawnChart.PixelsPerInch);

    /// <summary>The place of a picture at a width, in its own proportions.</summary>
    public static ChartAnchor AtWidth(int column, int row, DrawnChart chart, double widthMillimetres) =>
        new(column, row, widthMillimetres, widthMillimetres * chart.HeightPixels / chart.WidthPixels);

    /// <summary>Rows of a height in points that the picture covers, rounded up: where the next thing may begin.</summary>
    public int RowsCovered(double rowHeightPoints = 15) => (int)Math.Ceiling(HeightMillimetres / 25.4 * 72 / rowHeightPoints);
}
