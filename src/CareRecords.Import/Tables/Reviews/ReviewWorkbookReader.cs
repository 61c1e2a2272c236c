using CareRecords.Import.Accounting;
using CareRecords.Import.Notes;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Reviews;

/// <summary>Reads an earlier review workbook: its tables are input again, its other sheets are worked out anew and set aside.</summary>
internal static class ReviewWorkbookReader
{
    // A title and a line on how to use the sheet stand above the headings.
    private const int LastHeadingRow = 8;

    private static readonly Dictionary<string, TableKind> Tables = new()
    {
        ["Sessions"] = TableKind.Sessions,
        ["Feeds"] = TableKind.Feeds,
        ["Medicines"] = TableKind.Medicines,
        ["Checks"] = TableKind.Checks,
        ["Signs"] = TableKind.Signs,
        ["Not done"] = TableKind.NotDone,
        ["Plan"] = TableKind.Plan,
        ["Words"] = TableKind.Words,
        ["Questions to check"] = TableKind.Answers,
        ["Questions for clinic"] = TableKind.FamilyQuestions,
    };

    /// <summary>What the sheet "As read" holds; null when the workbook is no review.</summary>
    public static AsRead? Recognise(WorkbookFile book)
    {
        while (book.NextSheet())
            if (book.SheetName == AsRead.SheetName)
                return AsRead.Read(book.Rows());
        return null;
    }

    /// <summary>What one sheet gives.</summary>
    public static Gathered Read(Place place, IEnumerable<GridRow> rows, AsRead asRead, SourceContext context)
    {
        var into = new Gathered { File = place.File, Sheet = place.Sheet, IsReview = true };
        var kind = place.Sheet is { } name && Tables.TryGetValue(name, out var known) ? known : (TableKind?)null;
        ReviewSheet? table = null;
        var ended = false;
        GridRow? first = null;
        foreach (var row in rows)
        {
            if (row.IsBlank) into.Ledger.Mark(row.Line, row.LineCount, LineFate.Blank);
            else if (table is not null && !ended && !IsAfterTable(row))
            {
                table.Read(row);
                continue;
            }
            else
            {
                ended |= table is not null;
                first ??= row;
                into.Ledger.Mark(row.Line, row.LineCount, LineFate.NotRecord);
                if (kind is { } wanted && table is null && row.Line <= LastHeadingRow && IsHeading(row, wanted)) table = new ReviewSheet(place, wanted, row, asRead, into, new CellReaders(into, context.Words));
            }

            // The plan's starting values stand under its table, after a blank row.
            if (row.IsBlank && table is not null && kind == TableKind.Plan) ended = true;
        }

        if (first is not null) into.SetAside.Add(new SetAsideLine(place.Of(first), kind is null ? "a sheet of an earlier review, worked out again" : "titles and headings of an earlier review"));
        return into;
    }

    private static bool IsHeading(GridRow row, TableKind kind) => row.Cells.Any(c => c.Text.Trim() == (kind == TableKind.Words ? "word" : "row id"));

    private static bool IsAfterTable(GridRow row) => row[0].Words?.StartsWith("Starting values:", StringComparison.Ordinal) == true;
}
