using System.IO.Compression;
using System.Text;
using CsCheck;

namespace CareRecords.Import.Tests;

/// <summary>Any bytes as any of these files end in records, set-aside lines and problems: never an exception, never an unbalanced count.</summary>
public sealed class RobustnessTests
{
    private static readonly string[] Extensions = [".csv", ".tsv", ".txt", ".xlsx", ".xls", ".md"];
    private static readonly string[] Pieces =
        ["date", "time", "sats", "physio", ",", ";", "\t", "|", "\n", "\r\n", "\r", "\"", "7.05", "07:10", "3/3/2/2", "03/04/2025", "2025-03-04", "same", "feed off", "150", "-2", "930", "L low", "salbutamol", "=", "½", "total", " ", "25:10", "mon", "x4", "(", "checked,spo2\n", "started,ended\n"];

    [Fact]
    public void RandomBytes_AsAnyKindOfFile_EndInABalancedCount() =>
        Gen.Select(Gen.Byte.Array[0, 400], Gen.Int[0, Extensions.Length - 1]).Holds((bytes, kind) => Balances("x" + Extensions[kind], bytes), count: 300);

    [Fact]
    public void RandomWordsOfTables_EndInABalancedCount() =>
        Gen.Select(Gen.Int[0, Pieces.Length - 1].Array[0, 80], Gen.Int[0, 2]).Holds((words, kind) => Balances("x" + Extensions[kind], Encoding.UTF8.GetBytes(string.Concat(words.Select(w => Pieces[w])))), count: 1500);

    [Theory]
    [InlineData("t03.xlsx")]
    [InlineData("t07.xlsx")]
    [InlineData("t09.xls")]
    public void DamagedWorkbook_EndsInProblemsNotInAnException(string name)
    {
        var whole = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Tables", "Voices", name));
        Gen.Select(Gen.Int[0, whole.Length - 1].Array[1, 12], Gen.Byte.Array[12], Gen.Int[0, whole.Length]).Holds((places, values, length) =>
        {
            var bytes = whole.ToArray();
            for (var i = 0; i < places.Length; i++) bytes[places[i]] = values[i];
            return Balances(name, places.Length % 3 == 0 ? bytes[..length] : bytes);
        }, count: 250);
    }

    [Fact]
    public void WorkbookThatUnpacksTooFar_IsRefusedInASentence()
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var entry = zip.CreateEntry("xl/worksheets/sheet1.xml", CompressionLevel.Optimal).Open();
            var zeros = new byte[1 << 20];
            for (var i = 0; i < 64; i++) entry.Write(zeros);
        }

        using var inputs = new Inputs().With("bomb.xlsx", stream.ToArray());
        var log = inputs.Import(Inputs.London with { LargestUnpackedWorkbook = 16 << 20 });
        Assert.Contains("unpack", Assert.Single(log.Problems).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void SheetWithExternalEntities_IsNotFollowed()
    {
        var whole = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Tables", "Voices", "t07.xlsx"));
        using var stream = new MemoryStream();
        stream.Write(whole);
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
        {
            var sheet = zip.Entries.First(e => e.FullName.StartsWith("xl/worksheets/sheet", StringComparison.Ordinal));
            var (name, secret) = (sheet.FullName, Path.Combine(AppContext.BaseDirectory, "Tables", "Voices", "t01.csv"));
            sheet.Delete();
            using var writer = new StreamWriter(zip.CreateEntry(name).Open());
            writer.Write($"<?xml version=\"1.0\"?><!DOCTYPE x [<!ENTITY e SYSTEM \"file://{secret}\">]><worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData><row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>&e;</t></is></c></row></sheetData></worksheet>");
        }

        using var inputs = new Inputs().With("x.xlsx", stream.ToArray());
        var log = inputs.Import();
        Assert.DoesNotContain(log.NotRecords, n => n.Source.Text.Contains("Chest log", StringComparison.Ordinal));
        Assert.NotEmpty(log.Problems);
    }

    [Fact]
    public void CellOf32767Characters_IsReadOrSetAside() =>
        Assert.True(Balances("x.csv", Encoding.UTF8.GetBytes("date,time,what,notes\n3/4/2025,7.05,physio," + new string('a', 32_767) + "\n")));

    private static bool Balances(string name, byte[] bytes)
    {
        using var inputs = new Inputs().With(name, bytes);
        var log = inputs.Import();
        return log.Lines.Balances;
    }
}
