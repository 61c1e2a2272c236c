using System.Text;
using CareRecords.Pooling;
using CareRecords.Studies;
using CareRecords.Workbooks.Shared;

namespace CareRecords.Workbooks.Tests.Shared;

public sealed class SharedWorkbookTests
{
    private static readonly SharedFindings Child = SyntheticStudy.Children(new StudyOptions { Seed = 3, Children = 1, Days = 40 }).Single();
    private static readonly byte[] File = Written(Child);

    [Fact]
    public void A_written_workbook_reads_back_cell_for_cell()
    {
        var back = Assert.IsType<SharedChild>(Read(File)).Findings;
        Assert.Equal(Child.Child, back.Child);
        Assert.Equal(Child.Sessions, back.Sessions);
        Assert.Equal(Child.Days, back.Days);
        Assert.Equal(Child.Episodes, back.Episodes);
        Assert.Equal(Child.Steps, back.Steps);
        Assert.Equal(SharedTables.Seal(Child), SharedTables.Seal(back));
    }

    [Fact]
    public void The_planted_child_reads_back_too()
    {
        var shared = Sharing.Share(PlantedFindings.Filled.Findings, new ShareOptions { Child = ChildCode.Random() });
        Assert.Equal(SharedTables.Seal(shared), SharedTables.Seal(Assert.IsType<SharedChild>(Read(Written(shared))).Findings));
    }

    [Theory]
    [InlineData("xl/worksheets/sheet4.xml", ">kept<", ">short<", "seal")]
    [InlineData("xl/worksheets/sheet4.xml", ">kept<", ">nearly<", "row 1: feed_gap is not one of its codes")]
    [InlineData("xl/worksheets/sheet2.xml", ">95<", ">96<", "seal")]
    [InlineData("xl/worksheets/sheet1.xml", "No name of anybody", "No name of Wilhelmina", "row 17 is not as it was written")]
    [InlineData("xl/worksheets/sheet10.xml", "Minutes in all", "Minutes", "is not as it was written")]
    [InlineData("xl/worksheets/sheet5.xml", "has_records", "had_records", "headings of sheet \"days\"")]
    [InlineData("xl/workbook.xml", "\"steps\"", "\"stepz\"", "the sheet \"steps\" is missing")]
    public void An_edited_workbook_is_refused_and_says_where(string part, string from, string to, string says)
    {
        var edited = Package.Changed(File, (name, text) => name == part ? ReplacedOnce(text, from, to) : text);
        var refused = Assert.IsType<RefusedInput>(Read(edited));
        Assert.Contains("was changed after it was written", refused.Why, StringComparison.Ordinal);
        Assert.Contains(says, refused.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_taken_out_is_refused()
    {
        var edited = Package.Changed(File, (name, text) => name == "xl/worksheets/sheet5.xml" ? text[..text.LastIndexOf("<x:row", StringComparison.Ordinal)] + text[text.IndexOf("</x:sheetData>", StringComparison.Ordinal)..] : text);
        Assert.Contains("the figures do not fit the seal", Assert.IsType<RefusedInput>(Read(edited)).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_version_is_refused_with_what_to_do()
    {
        var other = Package.Changed(File, (name, text) => name == "xl/worksheets/sheet11.xml" ? ReplacedOnce(text, $"<x:v>{SharedFindings.TablesVersion}</x:v>", $"<x:v>{SharedFindings.TablesVersion + 1}</x:v>") : text);
        Assert.Contains($"version {SharedFindings.TablesVersion + 1}; this program pools version {SharedFindings.TablesVersion}: share it again", Assert.IsType<RefusedInput>(Read(other)).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_workbook_of_another_tool_is_refused()
    {
        using var output = new MemoryStream();
        using (var book = new ClosedXML.Excel.XLWorkbook())
        {
            book.AddWorksheet("Budget").Cell("A1").SetValue("tea");
            book.SaveAs(output);
        }

        Assert.Contains("not one that was made for sharing", Assert.IsType<RefusedInput>(Read(output.ToArray())).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Damage_anywhere_is_a_refusal_or_harmless_and_never_an_exception()
    {
        var random = new Random(5);
        for (var i = 0; i < 300; i++)
        {
            byte[] damaged = [.. File];
            for (var n = 0; n < 1 + (i % 5); n++) damaged[random.Next(damaged.Length)] ^= (byte)(1 << random.Next(8));
            if (i % 7 == 0) damaged = damaged[..random.Next(damaged.Length)];
            if (Read(damaged) is SharedChild same) Assert.Equal(SharedTables.Seal(Child), SharedTables.Seal(same.Findings));
        }
    }

    [Fact]
    public void What_is_not_a_zip_is_refused()
    {
        Assert.IsType<RefusedInput>(Read([]));
        Assert.IsType<RefusedInput>(Read(Encoding.UTF8.GetBytes("day,session\n1,2\n")));
        Assert.Contains("cannot be opened", Assert.IsType<RefusedInput>(SharedWorkbook.Read("/no/such/file.xlsx")).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_sheet_says_reduced_risk_not_anonymous()
    {
        var sheet = Encoding.UTF8.GetString(Package.Parts(File).Single(p => p.Name == "xl/worksheets/sheet1.xml").Bytes);
        Assert.Contains("Reduced risk, not anonymous.", sheet, StringComparison.Ordinal);
        Assert.Contains("What is not in it", sheet, StringComparison.Ordinal);
    }

    private static string ReplacedOnce(string text, string from, string to)
    {
        var at = text.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, $"{from} is not in the part");
        return text[..at] + to + text[(at + from.Length)..];
    }

    private static SharedInput Read(byte[] file) => SharedWorkbook.Read(new MemoryStream(file), "child.xlsx");

    private static byte[] Written(SharedFindings findings)
    {
        using var output = new MemoryStream();
        SharedWorkbook.Write(findings, output);
        return output.ToArray();
    }
}
