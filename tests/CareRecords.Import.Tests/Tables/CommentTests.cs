using System.IO.Compression;
using CareRecords.Records;

namespace CareRecords.Import.Tests.Tables;

/// <summary>Comments on the cells of a workbook.</summary>
public sealed class CommentTests
{
    [Fact]
    public void CommentThatTellsOfAnEvent_IsReadBesideItsRow()
    {
        var dose = Assert.Single(Import("gave paracetamol 5 ml at 14:10").Entries.OfType<Dose>());
        Assert.Equal(("paracetamol", 14), (dose.Medicine, dose.Start!.Stated.Hour));
    }

    [Fact]
    public void PlainComment_AsksNothing() => Assert.Empty(Import("Nana:\nshe was very good").Problems);

    [Fact]
    public void DamagedCommentPart_LosesNoRowAndIsSaid()
    {
        using var inputs = new Inputs().With("a.xlsx", Book("<comments><commentList><comment ref=\"C2\"><text>"));
        var log = inputs.Import();
        Assert.Single(log.Entries.OfType<Check>());
        Assert.Contains(log.Problems, p => p.Severity == ProblemSeverity.Refused && p.Why == "Comments on the cells of the sheet Log could not be read: the part of the workbook that holds them is damaged.");
        Assert.True(log.Lines.Balances);
    }

    [Fact]
    public void CommentPartThatIsMissing_IsSaid()
    {
        using var inputs = new Inputs().With("a.xlsx", Book("<comments/>", "comments2.xml"));
        Assert.Contains("is missing", Assert.Single(inputs.Import().Problems).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void CommentsLargerThanTheirBound_AreSaid()
    {
        var log = Import(new string('x', 17 << 20));
        Assert.Single(log.Entries.OfType<Check>());
        Assert.Contains(log.Problems, p => p.Why.Contains("larger than 16 MB", StringComparison.Ordinal));
    }

    [Fact]
    public void MoreCommentsThanTheirBound_AreReadUpToItAndSaid()
    {
        var many = string.Concat(Enumerable.Range(0, 100_001).Select(i => FormattableString.Invariant($"<comment ref=\"E{i + 2}\"><text><t>ok</t></text></comment>")));
        using var inputs = new Inputs().With("a.xlsx", Book($"<comments xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><commentList>{many}</commentList></comments>"));
        var log = inputs.Import();
        Assert.Contains(log.Problems, p => p.Why.Contains("more than 100000", StringComparison.Ordinal));
        Assert.True(log.Lines.Balances);
    }

    [Theory]
    [InlineData("B4", "physio at 14:10 too", true)]
    [InlineData("B4", "what a day", false)]
    [InlineData("A1", "we began on Friday", false)]
    [InlineData("C900", "gave paracetamol 5 ml at 9", true)]
    public void CommentOnNoRecord_IsAskedAboutOrSetAsideAndCounted(string cell, string comment, bool asked)
    {
        var log = Import(comment, cell);
        Assert.Equal(asked, log.Problems.Any(p => p.Source.Text == comment));
        Assert.Equal(!asked, log.NotRecords.Any(n => n.Source.Text == comment));
        Assert.True(log.Lines.Balances);
        Assert.True(log.Lines.Read <= 5);
    }

    private static CareLog Import(string comment, string cell = "C2")
    {
        using var inputs = new Inputs().With("a.xlsx", Book($"<comments xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><commentList><comment ref=\"{cell}\"><text><r><t xml:space=\"preserve\">{comment}</t></r></text></comment></commentList></comments>"));
        return inputs.Import();
    }

    private static byte[] Book(string comments, string name = "comments1.xml")
    {
        using var stream = new MemoryStream();
        stream.Write(TinyWorkbook.Of(("Log", [["Date", "Time", "Sats"], [new DateTime(2025, 3, 14), "13:05", 95.0]])));
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
        {
            Put(zip, "xl/worksheets/_rels/sheet0.xml.rels", "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"c1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/comments\" Target=\"../comments1.xml\"/></Relationships>");
            Put(zip, "xl/" + name, comments);
        }

        return stream.ToArray();
    }

    private static void Put(ZipArchive zip, string name, string xml)
    {
        using var writer = new StreamWriter(zip.CreateEntry(name).Open());
        writer.Write(xml);
    }
}
