using CareRecords.Records;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The plan as understood: what was written, then the starting values used where nothing was.</summary>
internal static class PlanSheet
{
    public const string Table = "PlanRows";

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
        ];
        TableSheet.Dress(
            sheet, "The plan as understood", "Compare with the team's letter. A row holds from its date until a later row for the same item. No date: it holds from the first record.", columns.Count);
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Plan);
        WriteDefaults(book, sheet, rows, place.LastRow + 3);
        PageDress.Apply(sheet, landscape: true, Look.Green);
        return place;
    }

    private static CellContent Value(PlanRow row) =>
        row is { Low: { } low, High: { } high } && low == high && !row.Value.Contains(':', StringComparison.Ordinal) ? CellContent.Of(low) : CellContent.Of(row.Value);

    private static void WriteDefaults(Book book, ClosedXML.Excel.IXLWorksheet sheet, ReviewRows rows, int at)
    {
        var defaults = rows.Findings.Plan.Where(p => p.IsDefault).DistinctBy(p => p.Item).ToList();
        if (defaults.Count == 0) return;
        book.Put(sheet.Cell(at, 1), "Starting values used because the plan above does not say: default, not your plan");
        sheet.Cell(at, 1).Style.Font.Bold = true;
        foreach (var (value, i) in defaults.Select((v, i) => (v, i)))
        {
            var row = at + 1 + i;
            book.Put(sheet.Cell(row, 3), value.Name);
            book.Put(sheet.Cell(row, 4), value.Value);
            book.Put(sheet.Cell(row, 5), value.Unit);
            book.Put(sheet.Cell(row, 6), "default, not your plan: " + value.DefaultSource);
        }
    }
}
