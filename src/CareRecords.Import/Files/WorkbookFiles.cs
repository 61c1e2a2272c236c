using CareRecords.Import.Accounting;
using CareRecords.Import.Tables;
using CareRecords.Records;

namespace CareRecords.Import.Files;

/// <summary>Reads a workbook, sheet after sheet.</summary>
internal static class WorkbookFiles
{
    /// <summary>What the workbook gives. Damage on the way ends in a problem; the sheets read before it stand.</summary>
    public static FileReading Read(SourceFile file, SourceContext context, long mostUnpacked, Action<long>? everyRow)
    {
        if (EarlierReview.IsOne(file.OpenBytes()))
        {
            return new FileReading(EarlierReview.Read(file, context, mostUnpacked),
                new InputFile(file.Found.Name, "review workbook", file.Survey.Sha256, "its sheets of records and answers were read; what it worked out is worked out again"));
        }

        var parts = new List<Gathered>();
        using var book = WorkbookFile.Open(file.OpenBytes(), mostUnpacked);
        for (var index = 0; book.NextSheet(); index++)
        {
            var place = new Place(file.Found.Name, book.SheetName);
            var (at, asked) = (index, false);
            parts.Add(TableReader.Read(place, () =>
            {
                // A sheet can be read forward only: the second asking opens the workbook again.
                if (asked) return Again(file, at, mostUnpacked);
                asked = true;
                return book.Rows();
            }, context, everyRow));
        }

        if (book.Damage is { } damage)
        {
            var whole = new Gathered { File = file.Found.Name };
            whole.Problems.Add(new ImportProblem(new SourceLine(file.Found.Name, null, null, null, ""),
                $"The workbook {file.Found.Name} could not be read to its end: {damage}.",
                "Open it in a spreadsheet program, save it as .xlsx and read it again.", ProblemSeverity.Refused));
            parts.Add(whole);
        }

        return new FileReading(parts, new InputFile(file.Found.Name, "workbook", file.Survey.Sha256, book.Damage));
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
