using System.Text;
using CareRecords.Pooling;
using CareRecords.Studies;
using CareRecords.Workbooks.Pooled;
using CareRecords.Workbooks.Tests.Shared;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using DocumentFormat.OpenXml.Validation;

namespace CareRecords.Workbooks.Tests.Pooled;

public sealed class PooledWorkbookTests
{
    private static readonly PoolOptions Quick = new() { BootstrapSamples = 40, Permutations = 99 };
    private static readonly List<SharedFindings> Study = [.. SyntheticStudy.Children(new StudyOptions { Seed = 12, Children = 24 })];
    private static readonly byte[] File = Written(Pooled(Study));

    [Fact]
    public void The_workbook_is_valid_and_has_its_sheets()
    {
        using var document = SpreadsheetDocument.Open(new MemoryStream(File), false);
        Assert.Empty(new OpenXmlValidator(FileFormatVersions.Office2019).Validate(document).Select(e => $"{e.Part?.Uri} {e.Description}"));
        Assert.Equal(
            ["Summary", "Charts", "Shares", "Forest rows", "Recovery", "Recovery curves", "Setbacks", "Tests", "Funnel", "Kept back", "Left out", "Reporting items", "Methods"],
            document.WorkbookPart?.Workbook.Descendants<Sheet>().Select(s => s.Name?.Value));
    }

    [Fact]
    public void The_charts_are_there_with_words_for_those_who_cannot_see_them()
    {
        using var document = SpreadsheetDocument.Open(new MemoryStream(File), false);
        var drawing = document.WorkbookPart?.WorksheetParts.Select(p => p.DrawingsPart).Single(d => d is not null);
        var pictures = drawing?.WorksheetDrawing.Descendants<DocumentFormat.OpenXml.Drawing.Spreadsheet.NonVisualDrawingProperties>().ToList() ?? [];
        Assert.Equal(
            ["forest-feed", "forest-inhaler", "recovery-pooled", "recovery-study-group", "recovery-age-band", "setbacks", "funnel"],
            pictures.Select(p => p.Name?.Value ?? "").Where(n => n != "recovery-stability"));
        Assert.All(pictures, p => Assert.True(p.Description?.Value?.Length > 40));
    }

    [Fact]
    public void The_same_findings_give_the_same_bytes() => Assert.Equal(File, Written(Pooled(Enumerable.Reverse(Study))));

    [Fact]
    public void No_childs_code_is_in_the_workbook()
    {
        foreach (var (name, bytes) in Package.Parts(File))
            foreach (var child in Study)
                Assert.True(bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes(child.Child.Code.Text[..8])) < 0, name);
    }

    [Fact]
    public void With_too_few_children_there_is_a_workbook_that_says_so()
    {
        var text = WordsOf(Written(Pooled(Study.Take(3))));
        Assert.Contains("Fewer than 5 children: all figures are kept back.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void With_no_child_there_is_a_workbook_that_says_so()
    {
        var text = WordsOf(Written(Pooled([])));
        Assert.Contains("There is no child to pool.", text, StringComparison.Ordinal);
    }

    /// <summary>The words of every sheet, in the shared list or in the cells.</summary>
    private static string WordsOf(byte[] workbook) =>
        string.Concat(Package.Parts(workbook).Where(p => p.Name.StartsWith("xl/", StringComparison.Ordinal) && p.Name.EndsWith(".xml", StringComparison.Ordinal)).Select(p => Encoding.UTF8.GetString(p.Bytes)));

    private static PooledFindings Pooled(IEnumerable<SharedFindings> children) => Pooler.Pool(children.Select((c, i) => new SharedChild($"{i}.xlsx", c)), Quick);

    private static byte[] Written(PooledFindings findings)
    {
        using var output = new MemoryStream();
        PooledWorkbook.Write(findings, output);
        return output.ToArray();
    }
}
