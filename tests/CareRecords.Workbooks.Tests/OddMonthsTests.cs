using CareRecords.Records;
using ClosedXML.Excel;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using NodaTime;
using Sheet = CareRecords.Workbooks.WorkbookLayout.Sheet;

namespace CareRecords.Workbooks.Tests;

/// <summary>Months that no demo shows: the workbook still opens, nothing becomes a formula, nothing is cut without a word.</summary>
public sealed class OddMonthsTests
{
    private static readonly LocalDateTime Morning = new(2026, 3, 20, 7, 5);

    [Fact]
    public void One_session_alone() => ReviewWorkbookTests.AssertValid(ReviewWorkbookTests.Bytes(With(SessionAt(Morning))));

    [Theory]
    [InlineData(typeof(Session))]
    [InlineData(typeof(Feed))]
    [InlineData(typeof(Dose))]
    [InlineData(typeof(Check))]
    [InlineData(typeof(Sign))]
    public void A_kind_of_record_missing(Type kind)
    {
        var log = SampleMonth.Log(8);
        ReviewWorkbookTests.AssertValid(ReviewWorkbookTests.Bytes(log with { Entries = [.. log.Entries.Where(e => e.GetType() != kind)] }));
    }

    [Fact]
    public void Four_hundred_days() => ReviewWorkbookTests.AssertValid(ReviewWorkbookTests.Bytes(SampleMonth.Log(400)));

    [Fact]
    public void Two_thousand_sessions_in_one_day() =>
        ReviewWorkbookTests.AssertValid(ReviewWorkbookTests.Bytes(With([.. Enumerable.Range(0, 2000).Select(i => SessionAt(Morning.PlusSeconds(i * 30)))])));

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+ve secretions")]
    [InlineData("-wet cough")]
    [InlineData("@14:30 same again")]
    [InlineData("\t=SUM(A1)")]
    [InlineData("1/8")]
    [InlineData("2026-01-01")]
    [InlineData("TRUE")]
    [InlineData("Zoë 雨 محمد Владимир 👶🏽🫁")]
    [InlineData("line one\nline two")]
    public void Words_stay_words(string words)
    {
        using var book = Open(ReviewWorkbookTests.Bytes(With(SessionAt(Morning) with { Note = words, By = words })));
        var cell = Under(book, Sheet.Sessions, "note");
        Assert.False(cell.HasFormula);
        Assert.Equal(XLDataType.Text, cell.DataType);
        Assert.Equal(words, cell.GetString());
    }

    [Fact]
    public void Control_characters_are_shown_and_not_lost()
    {
        using var book = Open(ReviewWorkbookTests.Bytes(With(SessionAt(Morning) with { Note = "bell\u0007 end\u0000 lone\ud800 c1\u0085" })));
        Assert.Equal("bell␇ end␀ lone[U+D800] c1[U+0085]", Under(book, Sheet.Sessions, "note").GetString());
    }

    [Fact]
    public void A_note_that_fills_a_cell_is_kept_whole()
    {
        var note = new string('n', 32_767);
        using var book = Open(ReviewWorkbookTests.Bytes(With(SessionAt(Morning) with { Note = note })));
        Assert.Equal(note, Under(book, Sheet.Sessions, "note").GetString());
    }

    [Fact]
    public void A_note_longer_than_a_cell_says_that_it_was_cut()
    {
        using var book = Open(ReviewWorkbookTests.Bytes(With(SessionAt(Morning) with { Note = new string('n', 40_000) })));
        var shown = Under(book, Sheet.Sessions, "note").GetString();
        Assert.Equal(32_767, shown.Length);
        Assert.EndsWith("[cut here: 40000 characters were written, a cell holds 32767; the rest is in the file itself]", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_cell_that_was_mended_can_be_noticed()
    {
        var bytes = ReviewWorkbookTests.Bytes(With(SessionAt(Morning) with { Note = "=same" }));
        using var book = Open(bytes);
        var asRead = book.Worksheet(Sheet.AsRead).RowsUsed().Skip(1).Select(r => (r.Cell(1).GetString(), r.Cell(2).GetString(), r.Cell(3).GetString())).ToList();
        Assert.Contains(("SE1", "started", "2026-03-20 07:05"), asRead);
        Assert.Contains(("SE1", "note", "=same"), asRead);
        Assert.Equal(XLWorksheetVisibility.VeryHidden, book.Worksheet(Sheet.AsRead).Visibility);
    }

    [Fact]
    public void No_author_is_named_and_the_language_is_set()
    {
        using var stream = new MemoryStream(ReviewWorkbookTests.Bytes(SampleMonth.Empty));
        using var document = SpreadsheetDocument.Open(stream, false);
        Assert.Equal("en-GB", document.PackageProperties.Language);
        Assert.Equal("", document.PackageProperties.Creator ?? "");
        Assert.Equal("", document.PackageProperties.LastModifiedBy ?? "");
        Assert.Contains("Chest-clearance review", document.PackageProperties.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Sheets_stand_in_the_layouts_order_and_the_first_is_open()
    {
        using var stream = new MemoryStream(ReviewWorkbookTests.Bytes(SampleMonth.Empty));
        using var document = SpreadsheetDocument.Open(stream, false);
        var workbook = document.WorkbookPart!.Workbook;
        Assert.Equal(WorkbookLayout.Order, workbook.Descendants<DocumentFormat.OpenXml.Spreadsheet.Sheet>().Select(s => s.Name!.Value));
        Assert.Equal(0u, workbook.Descendants<WorkbookView>().Single().ActiveTab?.Value ?? 0u);
    }

    private static CareLog With(params CareEntry[] entries) => SampleMonth.Empty with { Entries = entries, Lines = new LineCount(entries.Length, 0, entries.Length, 0, 0) };

    private static Session SessionAt(LocalDateTime at) => new()
    {
        Sources = [SourceLine.InText("notes.txt", 1, "physio")],
        Start = UncertainTime.Exactly(at),
        MinutesWritten = 15,
    };

    // This reader cannot open pictures here: they are taken out first, the cells stay as they are.
    private static XLWorkbook Open(byte[] bytes)
    {
        var copy = new MemoryStream();
        copy.Write(bytes);
        using (var document = SpreadsheetDocument.Open(copy, true))
        {
            foreach (var part in document.WorkbookPart!.WorksheetParts.Where(p => p.DrawingsPart is not null))
            {
                part.Worksheet.RemoveAllChildren<Drawing>();
                part.DeletePart(part.DrawingsPart!);
            }
        }

        copy.Position = 0;
        return new XLWorkbook(copy);
    }

    private static IXLCell Under(XLWorkbook book, string sheet, string heading)
    {
        var headings = book.Worksheet(sheet).Row(WorkbookLayout.HeadingRow);
        var column = headings.CellsUsed().Single(c => c.GetString() == heading).Address.ColumnNumber;
        return book.Worksheet(sheet).Cell(WorkbookLayout.HeadingRow + 1, column);
    }
}
