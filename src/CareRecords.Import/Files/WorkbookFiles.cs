using CareRecords.Import.Accounting;
using CareRecords.Import.Tables;
using CareRecords.Import.Tables.Reviews;
using CareRecords.Records;

namespace CareRecords.Import.Files;

/// <summary>Reads a workbook, sheet after sheet.</summary>
internal static class WorkbookFiles
{
    /// <summary>What the workbook gives. Damage on the way ends in a problem; the sheets read before it stand.</summary>
    public static FileReading Read(SourceFile file, SourceContext context, long mostUnpacked, Action<long>? everyRow)
    {
        context = context with { NotAfter = file.NotAfter };
        var parts = new List<Gathered>();
        var review = Recognise(file, mostUnpacked);
        using var book = WorkbookFile.Open(file.OpenBytes(), mostUnpacked);
        for (var index = 0; book.NextSheet(); index++)
        {
            var place = new Place(file.Found.Name, book.SheetName);
            if (review is not null)
            {
                parts.Add(ReviewWorkbookReader.Read(place, book.Rows(), review, context));
                continue;
            }

            var (at, asked) = (index, false);
            parts.Add(TableReader.Read(place, () =>
            {
                // A sheet can be read forward only: the second asking opens the workbook again.
                if (asked) return Again(file, at, mostUnpacked);
                asked = true;
                return book.Rows();
            }, context with { WeekOf = parts.Find(p => p.FirstDay is not null)?.FirstDay }, everyRow));
            LooseComments.Account(place, book.Comments.BySheet.GetValueOrDefault(place.Sheet ?? ""), parts[^1]);
        }

        foreach (var (sheet, why) in book.Comments.Lost)
        {
            var lost = new Gathered { File = file.Found.Name, Sheet = sheet };
            lost.Problems.Add(new ImportProblem(new SourceLine(file.Found.Name, null, sheet, null, ""),
                $"Comments on the cells of {(sheet is null ? file.Found.Name : $"the sheet {sheet}")} could not be read: {why}.",
                "Write what they say into cells, save the workbook and read it again.", ProblemSeverity.Refused));
            parts.Add(lost);
        }

        if (book.Damage is { } damage)
        {
            var whole = new Gathered { File = file.Found.Name };
            whole.Problems.Add(new ImportProblem(new SourceLine(file.Found.Name, null, null, null, ""),
                $"The workbook {file.Found.Name} could not be read to its end: {damage}.",
                "Open it in a spreadsheet program, save it as .xlsx and read it again.", ProblemSeverity.Refused));
            parts.Add(whole);
        }

        return new FileReading(parts, new InputFile(file.Found.Name, review is null ? "workbook" : "review workbook", file.Survey.Sha256, book.Damage));
    }

    private static AsRead? Recognise(SourceFile file, long mostUnpacked)
    {
        using var book = WorkbookFile.Open(file.OpenBytes(), mostUnpacked);
        return ReviewWorkbookReader.Recognise(book);
    }

    private static IEnumerable<GridRow> Again(SourceFile file, int sheet, long mostUnpacked)
    {
        using var book = WorkbookFile.Open(file.OpenBytes(), mostUnpacked);
        for (var i = 0; i <= sheet; i++)
            if (!book.NextSheet())
                yield break;
        foreach (var row in book.Rows()) yield return row;
    }
}
