using CareRecords.Records;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Formula;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The plan as understood: what was written, then the starting values used where nothing was.</summary>
internal static class PlanSheet
{
    public const string Table = "PlanRows";

    /// <summary>Hidden working columns: the date from which a row holds (0 when the plan gave none), and its number.</summary>
    public const string HoldsFrom = "holds from";
    public const string Number = "number";
    private const string LowAsRead = "number as read";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Plan);
        IReadOnlyList<Column<Numbered<PlanRow>>> columns =
        [
            TraceColumns.RowId<PlanRow>(),
            new("from", 16.5, r => CellContent.Of(r.Item.From)) { Role = ColumnRole.Editable, Format = "yyyy-mm-dd", Check = new CellCheck.Time() },
            new("item", 26, r => CellContent.Of(PlanItems.Describe(r.Item.Item).Name)) { Role = ColumnRole.Editable },
            new("value", 22, r => Value(r.Item)) { Role = ColumnRole.Editable, Wrap = true },
            new("unit", 14, r => CellContent.Of(PlanItems.Describe(r.Item.Item).Unit)) { Role = ColumnRole.Trace },
            .. TraceColumns.Sources<Numbered<PlanRow>>(rows, r => r.Item.Source is { } source ? [source] : []),
            new(HoldsFrom, 12, r => new CellContent(r.Item.From?.ToDateTimeUnspecified() ?? (object)0.0).By($"IF(ISNUMBER({This(Table, "from")}),{This(Table, "from")},0)")) { Role = ColumnRole.Working },
            new(LowAsRead, 12, r => CellContent.Of(r.Item.Low)) { Role = ColumnRole.Working },
            new(Number, 12, r => CellContent.Of(r.Item.Low).By($"IF(ISNUMBER({This(Table, "value")}),{This(Table, "value")},IF(ISNUMBER({This(Table, LowAsRead)}),{This(Table, LowAsRead)},\"\"))")) { Role = ColumnRole.Working },
        ];
        TableSheet.Dress(
            sheet, "The plan as understood", "Compare with the team's letter. A row holds from its date until a later row for the same item. No date: it holds from the first record.");
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Plan);
        WriteDefaults(book, sheet, rows, place.LastRow + 3);
        PageDress.Apply(sheet, landscape: true, Look.Green);
        return place;
    }

    private static CellContent Value(PlanRow row) =>
        row is { Low: { } low, High: { } high } && low == high && !row.Value.Contains(':', StringComparison.Ordinal) ? CellContent.Of(low) : CellContent.Of(row.Value);

    /// <summary>Every starting value, whether used or not; the formulas take them by name where the plan does not say.</summary>
    private static void WriteDefaults(Book book, ClosedXML.Excel.IXLWorksheet sheet, ReviewRows rows, int at)
    {
        book.Put(sheet.Cell(at, 1), "Starting values: used only where the plan above does not say, and then marked \"default, not your plan\"");
        sheet.Cell(at, 1).Style.Font.Bold = true;
        var used = rows.Findings.Plan.Where(p => p.IsDefault).Select(p => p.Item).ToHashSet();
        foreach (var start in PlanItems.All.Where(i => i.Default is not null))
        {
            at++;
            book.Put(sheet.Cell(at, 3), start.Name);
            var number = double.TryParse(start.Default, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out var n) ? n : (double?)null;
            book.Put(sheet.Cell(at, 4), number is null ? CellContent.Of(start.Default) : CellContent.Of(number));
            if (number is not null) sheet.Cell(at, 4).AddToNamed(PlanFormulas.StartName(start.Item), ClosedXML.Excel.XLScope.Workbook);
            sheet.Cell(at, 4).Style.Alignment.Horizontal = ClosedXML.Excel.XLAlignmentHorizontalValues.Left;
            book.Put(sheet.Cell(at, 5), start.Unit);
            book.Put(sheet.Cell(at, 6), (used.Contains(start.Item) ? "used here: default, not your plan. " : "not used here. ") + "From: " + start.DefaultSource);
        }
    }
}
