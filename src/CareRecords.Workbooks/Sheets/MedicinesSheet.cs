using CareRecords.Records;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;
using Heading = CareRecords.Workbooks.WorkbookLayout.Heading;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Medicines as read, one row each.</summary>
internal static class MedicinesSheet
{
    public const string Table = "Medicines";

    /// <summary>Whether the dose is the medicine due before a session: yes, no, or maybe where the words do not name it.</summary>
    public const string Due = "due before a session";

    public static IReadOnlyList<Column<Numbered<Dose>>> Columns(ReviewRows rows) =>
    [
        TraceColumns.RowId<Dose>(),
        DataCells.Time<Dose>("given", d => d.Start?.Stated),
        DataCells.Words<Dose>("medicine", 20, d => d.Medicine),
        DataCells.Words<Dose>("amount", 12, d => d.Amount),
        DataCells.Words<Dose>("route", 10, d => d.Route),
        DataCells.Words<Dose>(Heading.By, 10, d => d.By),
        DataCells.Words<Dose>("note", 18, d => d.Note),
        .. TraceColumns.Reading<Dose>(rows),
        new("medicine as written", 18, r => CellContent.Of(r.Item.MedicineAsWritten)) { Role = ColumnRole.Trace },
        new("class", 18, r => CellContent.Of(MedicineWords.Class(r.Item.Class))) { Role = ColumnRole.Trace },
        new(Due, 9, r => rows.Twins.MedicineBefore is { Length: > Formula.MostText } ? CellContent.Of(rows.Twins.DueWord(r.Item)) : CellContent.Of(rows.Twins.DueWord(r.Item)).By(DueFormula(rows))) { Role = ColumnRole.Worked, Remark = "By the plan's 'medicine before session'; without one, any medicine that opens the airways. Maybe: the words do not name a medicine." },
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

    private static string DueFormula(ReviewRows rows)
    {
        var named = rows.Twins.MedicineBefore is { } medicine
            ? $"LOWER({Formula.This(Table, "medicine")})={Formula.Text(medicine)}"
            : $"{Formula.This(Table, "class")}={Formula.Text(MedicineWords.Class(MedicineClass.Bronchodilator))}";
        return $"IF({named},\"yes\",IF({Formula.This(Table, "class")}={Formula.Text(MedicineWords.Class(MedicineClass.Unknown))},\"maybe\",\"no\"))";
    }
}
