using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Every line that gave something, was set aside or needs a person, with how it was read.</summary>
internal static class WhatWasReadSheet
{
    public const string Table = "WhatWasRead";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.WhatWasRead);
        IReadOnlyList<Column<ReadLine>> columns =
        [
            new("file", 16, l => CellContent.Of(l.Source.File)),
            new("place", 13, l => CellContent.Of(WorkbookLayout.PlaceInFile(l.Source))),
            new("written", 54, l => CellContent.Of(l.Source.Text)) { Wrap = true },
            new("became", 16, l => CellContent.Of(l.Became)) { Wrap = true },
            new("row", 8, l => CellContent.Of(l.RowId).To(rows.LinkOfId(l.RowId))),
            new("how it was read", 42, l => CellContent.Of(l.How)) { Wrap = true },
            new("uncertain", 50, l => CellContent.Of(l.Uncertain)) { Wrap = true },
        ];
        TableSheet.Dress(
            sheet, "What was read, and how", "Each line of the notes and tables and what became of it. Blank lines are not listed. A line that gave two records stands twice. Filter 'became' to see one kind.", 2);
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Read.Rows);
        PageDress.Apply(sheet, landscape: true, Look.Orange);
        return place;
    }
}
