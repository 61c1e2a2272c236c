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
    public void DamagedCommentPart_LosesNoRow()
    {
        using var inputs = new Inputs().With("a.xlsx", Book("<comments><commentList><comment ref=\"C2\"><text>"));
        Assert.Single(inputs.Import().Entries.OfType<Check>());
    }

    private static CareLog Import(string comment)
    {
        using var inputs = new Inputs().With("a.xlsx", Book($"<comments xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><commentList><comment ref=\"C2\"><text><r><t xml:space=\"preserve\">{comment}</t></r></text></comment></commentList></comments>"));
        return inputs.Import();
    }

    private static byte[] Book(string comments)
    {
        using var stream = new MemoryStream();
        stream.Write(TinyWorkbook.Of(("Log", [["Date", "Time", "Sats"], [new DateTime(2025, 3, 14), "13:05", 95.0]])));
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
        {
            Put(zip, "xl/worksheets/_rels/sheet0.xml.rels", "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"c1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/comments\" Target=\"../comments1.xml\"/></Relationships>");
            Put(zip, "xl/comments1.xml", comments);
        }

        return stream.ToArray();
    }

    private static void Put(ZipArchive zip, string name, string xml)
    {
        using var writer = new StreamWriter(zip.CreateEntry(name).Open());
        writer.Write(xml);
    }
}
