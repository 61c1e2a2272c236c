using CareRecords.Findings;
using CareRecords.Records;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using DocumentFormat.OpenXml.Validation;

namespace CareRecords.Workbooks.Tests;

public sealed class ReviewWorkbookTests
{
    [Fact]
    public void Sample_month_has_no_validator_errors() => AssertValid(Bytes(SampleMonth.Log()));

    [Fact]
    public void Same_input_gives_the_same_bytes() => Assert.Equal(Bytes(SampleMonth.Log()), Bytes(SampleMonth.Log()));

    [Fact]
    public void Nothing_written_still_gives_a_workbook() => AssertValid(Bytes(SampleMonth.Empty));

    [Fact]
    public void Nine_days_are_as_approved() => ApprovedText.Equal("nine-days.txt", ApprovedText.Of(Bytes(SampleMonth.Log(9))));

    [Fact]
    public void A_month_has_more_than_three_hundred_formulas_each_with_a_value()
    {
        using var stream = new MemoryStream(Bytes(SampleMonth.Log()));
        using var document = SpreadsheetDocument.Open(stream, false);
        var formulas = document.WorkbookPart!.WorksheetParts.SelectMany(p => p.Worksheet.Descendants<Cell>()).Where(c => c.CellFormula is not null).ToList();
        Assert.True(formulas.Count >= 300, $"{formulas.Count} formulas");
        Assert.All(formulas, c => Assert.NotNull(c.CellValue));
    }

    internal static byte[] Bytes(CareLog log)
    {
        using var stream = new MemoryStream();
        ReviewWorkbook.Write(log, Reviewer.Review(log), stream);
        if (Environment.GetEnvironmentVariable("CARERECORDS_KEEP_SAMPLE") is { Length: > 0 } path) File.WriteAllBytes(path, stream.ToArray());
        return stream.ToArray();
    }

    internal static void AssertValid(byte[] workbook)
    {
        foreach (var version in new[] { FileFormatVersions.Office2019, FileFormatVersions.Microsoft365 })
        {
            using var stream = new MemoryStream(workbook);
            using var document = SpreadsheetDocument.Open(stream, false);
            var errors = new OpenXmlValidator(version).Validate(document).Select(e => $"{version} {e.Part?.Uri} {e.Path?.XPath}: {e.Description}").ToList();
            Assert.True(errors.Count == 0, string.Join('\n', errors.Take(20)));
        }
    }
}
