using System.IO.Compression;
using CareRecords.Workbooks.Shared;

namespace CareRecords.Workbooks.Tests.Shared;

/// <summary>The reader of workbooks that stand as they were written.</summary>
public sealed class OwnWorkbookReaderTests
{
    private static readonly PlainSheet[] Sheets =
    [
        new("words", [["a heading", "another"], ["x < y & z", null, "  kept  "], [], [null, "after an empty row"]]),
        new("numbers", [[1.5, -2e-7, true, false], [null, 12345678901.0]]),
        new("empty", []),
    ];

    [Fact]
    public void It_reads_every_cell_as_written()
    {
        using var zip = new ZipArchive(new MemoryStream(Written()));

        var read = OwnWorkbookReader.TryRead(zip, 100, 10);

        Assert.NotNull(read);
        Assert.Equal(Sheets.Select(s => s.Name), read.Select(s => s.Name));
        foreach (var (wanted, found) in Sheets.Zip(read))
            Assert.Equal(wanted.Rows.Select(Trimmed), found.Rows.Select(Trimmed));
    }

    [Theory]
    [InlineData("<x:v>1.5</x:v>", "<x:f>1+0.5</x:f><x:v>1.5</x:v>")] // a formula
    [InlineData("<x:v>1.5</x:v>", "<x:v>one and a half</x:v>")]
    [InlineData("r=\"B1\"", "r=\"A1\"")] // two cells in one place
    [InlineData("<x:t>a heading</x:t>", "<x:r><x:t>a heading</x:t></x:r>")] // words in pieces
    public void It_leaves_what_is_otherwise_to_the_general_reader(string written, string changed)
    {
        var file = Package.Changed(Written(), (_, text) => text.Replace(written, changed, StringComparison.Ordinal));
        using var zip = new ZipArchive(new MemoryStream(file));

        Assert.Null(OwnWorkbookReader.TryRead(zip, 100, 10));
    }

    [Theory]
    [InlineData(3, 10)]
    [InlineData(100, 2)]
    public void It_gives_up_on_more_rows_or_columns_than_allowed(int rows, int columns)
    {
        using var zip = new ZipArchive(new MemoryStream(Written()));

        Assert.Null(OwnWorkbookReader.TryRead(zip, rows, columns));
    }

    private static byte[] Written()
    {
        using var output = new MemoryStream();
        PlainWorkbook.Write(Sheets, output);
        return output.ToArray();
    }

    /// <summary>Trailing empty cells may be there or not.</summary>
    private static List<object?> Trimmed(object?[] row) => [.. row.Reverse().SkipWhile(c => c is null).Reverse()];
}
