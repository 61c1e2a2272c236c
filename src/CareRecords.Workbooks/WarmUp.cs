using CareRecords.Workbooks.Building;
using CareRecords.Workbooks.Charts.Paper;
using CareRecords.Workbooks.Finishing;
using CareRecords.Workbooks.Sheets;

namespace CareRecords.Workbooks;

/// <summary>
/// A first workbook costs the runtime much loading and compiling, whatever its length. This makes a table and a chart on another processor while the
/// notes are read, and throws them away; the workbook that follows finds the ground prepared. A month then takes about a fifth less time by the clock.
/// </summary>
public static class WarmUp
{
    private static readonly IReadOnlyList<Column<int>> Columns =
    [
        new("time", 16, _ => CellContent.Blank) { Role = ColumnRole.Editable, Format = Look.Format.Time, Check = new CellCheck.Time(), Remark = "A time" },
        new("number", 9, n => CellContent.Of(n)) { Role = ColumnRole.Editable, Format = Look.Format.UpToTwo, Check = new CellCheck.Number(0, 9, "of them") },
        new("words", 9, _ => CellContent.Of("words").To($"'{WorkbookLayout.Sheet.Charts}'!A1")) { Role = ColumnRole.Editable, Wrap = true, Check = new CellCheck.OneOf(["words"]) },
        new("formula", 9, n => CellContent.Of(n).By("0+1")) { Format = Look.Format.Whole },
    ];

    /// <summary>Begins; nothing has to wait for it. Does nothing on a machine with one processor.</summary>
    public static void Begin()
    {
        if (Environment.ProcessorCount > 1) _ = Task.Run(MakeAndThrowAway);
    }

    internal static void MakeAndThrowAway()
    {
        using var book = new Book();
        var sheet = book.Add("Table");
        TableSheet.Dress(sheet, "A table", "Of one row");
        TableSheet.Write(book, sheet, "Table", Columns, [1]);
        PageDress.Apply(sheet, landscape: true, Look.Blue);
        var page = new ChartPage { Name = "chart", Title = "A chart", AltText = "", Width = 72, BodyHeight = 36, Body = (ink, body) => PlotPanels.Empty(4, 4).DrawInto(ink, body) };
        PackagePass.Save(book, ChartsSheet.Write(book, [page.Draw()], []), new MemoryStream());
    }
}
