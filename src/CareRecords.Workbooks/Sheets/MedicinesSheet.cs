using CareRecords.Records;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;
using Heading = CareRecords.Workbooks.WorkbookLayout.Heading;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Medicines as read, one row each.</summary>
internal static class MedicinesSheet
{
    public const string Table = "Medicines";

    public static IReadOnlyList<Column<Numbered<Dose>>> Columns(ReviewRows rows) =>
    [
        TraceColumns.RowId<Dose>(),
        DataCells.Time<Dose>("given", d => d.Start?.Stated),
        DataCells.Words<Dose>("medicine", 20, d => d.Medicine),
        DataCells.Words<Dose>("amount", 12, d => d.Amount),
        DataCells.Words<Dose>("route", 10, d => d.Route),
        DataCells.Words<Dose>(Heading.By, 10, d => d.By),
        DataCells.Words<Dose>("note", 26, d => d.Note),
        new("medicine as written", 18, r => CellContent.Of(r.Item.MedicineAsWritten)) { Role = ColumnRole.Trace },
        new("class", 18, r => CellContent.Of(MedicineWords.Class(r.Item.Class))) { Role = ColumnRole.Trace },
        .. TraceColumns.Reading<Dose>(rows),
        .. IntervalColumns.Start<Dose>(rows, Table, "given"),
    ];

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Medicines);
        var columns = Columns(rows);
        TableSheet.Dress(sheet, "Medicines", DataCells.Use("generic names; the words written stand beside"));
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Doses);
        PageDress.Apply(sheet, landscape: true, Green);
        return place;
    }
}
