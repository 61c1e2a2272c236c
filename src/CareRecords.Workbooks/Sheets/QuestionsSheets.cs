using CareRecords.Records;
using CareRecords.Workbooks.Building;
using Heading = CareRecords.Workbooks.WorkbookLayout.Heading;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Three sheets to write in: questions to the family, questions for the clinic, the family's own words.</summary>
internal static class QuestionsSheets
{
    private const int SpareRows = 15;

    public static TablePlace WriteToCheck(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.QuestionsToCheck);
        IReadOnlyList<Column<Numbered<Question>>> columns =
        [
            TraceColumns.RowId<Question>(),
            new("question", 52, r => CellContent.Of(r.Item.Text)) { Wrap = true },
            new("answer", 26, r => CellContent.Of(r.Item.Answer)) { Role = ColumnRole.Editable, Wrap = true },
            new("answers that would be understood", 34, r => CellContent.Of(r.Item.Choices.Count == 0 ? "any words" : string.Join("; ", r.Item.Choices))) { Role = ColumnRole.Trace, Wrap = true },
            new("lines it settles", 9, r => CellContent.Of(r.Item.Sources.Count)) { Role = ColumnRole.Trace },
            .. TraceColumns.Sources<Numbered<Question>>(rows, r => [.. r.Item.Sources.Take(1)]),
            new(Heading.QuestionName, 26, r => CellContent.Of(r.Item.Name)) { Role = ColumnRole.Trace },
        ];
        TableSheet.Dress(
            sheet, "Questions to check", "Each answer settles the lines named. Type it in the yellow cell, save, and give this file to the next review: it applies the answers.", 2);
        var place = TableSheet.Write(book, sheet, "QuestionsToCheck", columns, rows.Questions);
        AddChoices(sheet, rows, place);
        PageDress.Apply(sheet, landscape: true, Look.Orange);
        return place;
    }

    public static TablePlace WriteForClinic(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.QuestionsForClinic);
        var all = rows.FamilyQuestions.Cast<Numbered<SourceLine>?>().Concat(Enumerable.Repeat<Numbered<SourceLine>?>(null, SpareRows)).ToList();
        IReadOnlyList<Column<Numbered<SourceLine>?>> columns =
        [
            new(Heading.RowId, 7, r => CellContent.Of(r?.Id)) { Role = ColumnRole.Trace },
            new("question", 80, r => CellContent.Of(r?.Item.Text)) { Role = ColumnRole.Editable, Wrap = true },
            .. TraceColumns.Sources<Numbered<SourceLine>?>(rows, r => r is null ? [] : [r.Item]),
        ];
        TableSheet.Dress(sheet, "The family's questions for the clinic", "As written. Add more in the yellow rows; the first ones show on the front page.");
        var place = TableSheet.Write(book, sheet, "QuestionsForClinic", columns, all);
        PageDress.Apply(sheet, landscape: true, Look.Orange);
        return place;
    }

    public static TablePlace WriteWords(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Words);
        IReadOnlyList<Column<ExplainedWord?>> columns =
        [
            new("word", 24, w => CellContent.Of(w?.Word)) { Role = ColumnRole.Editable },
            new("means", 60, w => CellContent.Of(w?.Means)) { Role = ColumnRole.Editable, Wrap = true },
        ];
        TableSheet.Dress(sheet, "Your own words", "As your notes explain them. Add a word and what it means, and the next review reads the notes with it.");
        var place = TableSheet.Write(book, sheet, "FamilyWords", columns, [.. rows.Log.Words, .. Enumerable.Repeat<ExplainedWord?>(null, SpareRows)]);
        PageDress.Apply(sheet, landscape: false, Look.Green);
        return place;
    }

    private static void AddChoices(ClosedXML.Excel.IXLWorksheet sheet, ReviewRows rows, TablePlace place)
    {
        for (var i = 0; i < rows.Questions.Count; i++)
        {
            var choices = rows.Questions[i].Item.Choices;
            var list = string.Join(',', choices);
            // A list in a cell check holds 255 characters and parts at commas; other choices stand in words beside it.
            if (choices.Count == 0 || list.Length > 250 || choices.Any(c => c.Contains(',', StringComparison.Ordinal) || c.Contains('"', StringComparison.Ordinal) || CellText.LooksLikeFormula(c) || CellText.Fit(c) != c)) continue;
            var check = sheet.Cell(place.FirstRow + i, 3).SetDataValidation();
            check.List("\"" + list + "\"", true);
            check.ErrorStyle = ClosedXML.Excel.XLErrorStyle.Information;
            check.ErrorTitle = "Usual answers";
            check.ErrorMessage = "The list holds the answers that would be understood at once. Other words are read too.";
        }
    }
}
