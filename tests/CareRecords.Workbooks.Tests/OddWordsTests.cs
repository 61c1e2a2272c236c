using System.Text.RegularExpressions;
using CareRecords.Records;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using NodaTime;

namespace CareRecords.Workbooks.Tests;

/// <summary>Awkward words in every field that a family writes, and in the names of its files: text stays text on every sheet.</summary>
public sealed partial class OddWordsTests
{
    private static readonly LocalDateTime Morning = new(2026, 3, 20, 7, 5);

    [Theory]
    [InlineData("=1+1")]
    [InlineData("=HYPERLINK(\"http://example.invalid\",\"x\")")]
    [InlineData("+ve @home")]
    [InlineData("-2 points")]
    [InlineData("@SUM(A1:A9)")]
    [InlineData("\t=1+1")]
    [InlineData("\u00a0=1+1")]
    [InlineData("one\n=1+1")]
    [InlineData("Zoë 雨音 محمد Владимир דָּוִד ไทย हिन्दी 한글 Ωμέγα 👶🏽🫁👩‍👧")]
    [InlineData("bell\u0007 nought\u0000 lone\ud800 \uffff end")]
    [InlineData("<b>&amp;]]></b> %41 _x0041_ \u2028")]
    public void Everywhere_text_stays_text(string words)
    {
        var bytes = ReviewWorkbookTests.Bytes(Everywhere(words));
        ReviewWorkbookTests.AssertValid(bytes);
        using var stream = new MemoryStream(bytes);
        using var document = SpreadsheetDocument.Open(stream, false);
        // The family's words may stand inside a formula's quotes (the medicine of the plan), never outside them.
        var bare = document.WorkbookPart!.WorksheetParts.SelectMany(p => p.Worksheet.Descendants<CellFormula>()).Select(f => Quoted().Replace(f.Text, "")).ToList();
        Assert.NotEmpty(bare);
        Assert.DoesNotContain(bare, f => f.Contains("1+1", StringComparison.Ordinal) || f.Contains("HYPERLINK", StringComparison.Ordinal) || f.Contains("A1:A9", StringComparison.Ordinal));
        Assert.DoesNotContain(document.WorkbookPart.WorksheetParts.SelectMany(p => p.Worksheet.Descendants<Hyperlink>()), h => h.Id is not null);
    }

    [Fact]
    public void A_note_that_fills_a_cell_is_whole_in_every_field()
    {
        var bytes = ReviewWorkbookTests.Bytes(Everywhere(new string('w', 32_767)));
        ReviewWorkbookTests.AssertValid(bytes);
        using var stream = new MemoryStream(bytes);
        using var document = SpreadsheetDocument.Open(stream, false);
        var texts = document.WorkbookPart!.SharedStringTablePart!.SharedStringTable.Elements<SharedStringItem>().Select(i => i.InnerText)
            .Concat(document.WorkbookPart.WorksheetParts.SelectMany(p => p.Worksheet.Descendants<InlineString>()).Select(i => i.InnerText)).ToList();
        Assert.All(texts, t => Assert.InRange(t.Length, 0, 32_767));
        Assert.Contains(texts, t => t.Length == 32_767 && t.All(c => c == 'w'));
        // What does not fit whole says so.
        Assert.All(texts.Where(t => t.Length > 1000 && t.Any(c => c != 'w')), t => Assert.True(
            t.Contains("[cut here: ", StringComparison.Ordinal) || t.Contains("(whole on its sheet)", StringComparison.Ordinal) || t.Contains('…') || t.Count(c => c == 'w') % 32_767 == 0, t[..200]));
    }

    [GeneratedRegex("\"(?:[^\"]|\"\")*\"")]
    private static partial Regex Quoted();

    private static CareLog Everywhere(string words)
    {
        IReadOnlyList<SourceLine> at = [SourceLine.InText(words.Length > 100 ? "notes.txt" : words + ".txt", 1, words)];
        var time = UncertainTime.Exactly(Morning);
        CareEntry[] entries =
        [
            new Session { Sources = at, Start = time, MinutesWritten = 12, Note = words, By = words, Techniques = words, Cough = words, Secretions = words, Colour = words, StoppedEarly = words, HowRead = words },
            new Feed { Sources = at, End = UncertainTime.Exactly(Morning.PlusHours(-1)), Note = words, By = words },
            new Dose { Sources = at, Start = time, Medicine = words, MedicineAsWritten = words, Amount = words, Route = words, Note = words },
            new Check { Sources = at, Start = time, SpO2 = 91, OxygenLitresPerMinute = 1, Note = words, By = words },
            new Sign { Sources = at, Start = time, Kind = SignKind.Unwell, What = words, Value = words, Note = words },
            new Sign { Sources = at, Start = UncertainTime.Exactly(Morning.PlusDays(1)), Kind = SignKind.Unwell, What = words, Value = words, Note = words },
        ];
        return SampleMonth.Empty with
        {
            Entries = entries,
            Omitted = [new OmittedSession(time, words, at[0])],
            FamilyQuestions = at,
            NotRecords = [new SetAsideLine(at[0], words)],
            Problems = [new ImportProblem(at[0], words, words, ProblemSeverity.Ask, "what-is:x")],
            Questions = [new Question("what-is:x", words, [words, "other"], at, words)],
            Words = [new ExplainedWord(words, words)],
            Merged = [new MergedEntry(at[0], at, [new MergeDifference(words, words, words)])],
            Corrections = [new Correction(at[0], words, words, words)],
            Inputs = [new InputFile(at[0].File, "notes", null, words)],
            Plan = new CarePlan { Rows = [new PlanRow(null, PlanItem.ChildCalled, words, null, null, at[0]), new PlanRow(null, PlanItem.MedicineBeforeSession, words, null, null, at[0])] },
            Lines = new LineCount(1, 0, 1, 0, 0),
        };
    }
}
