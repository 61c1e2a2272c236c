using System.IO.Compression;
using System.Text;
using System.Xml;
using ExcelDataReader;
using ExcelDataReader.Exceptions;

namespace CareRecords.Import.Tables;

/// <summary>A workbook opened for reading, sheet after sheet; damage anywhere ends the reading with a sentence, never with an exception.</summary>
internal sealed class WorkbookFile : IDisposable
{
    // The most columns looked at: more than a year of days across.
    private const int MostColumns = 2048;

    private readonly Stream _stream;
    private readonly IExcelDataReader? _reader;
    private bool _beforeFirstSheet = true;

    private WorkbookFile(Stream stream, IExcelDataReader? reader, string? damage) => (_stream, _reader, Damage) = (stream, reader, damage);

    static WorkbookFile() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    /// <summary>What stopped the reading, in a sentence; null while all is well.</summary>
    public string? Damage { get; private set; }

    /// <summary>The comments on its cells, and what of them was lost.</summary>
    public CommentsRead Comments { get; private init; } = CommentsRead.None;

    /// <summary>Opens a workbook. The stream is closed with it.</summary>
    /// <param name="stream">The file, seekable.</param>
    /// <param name="mostUnpackedBytes">What an .xlsx may unpack to.</param>
    public static WorkbookFile Open(Stream stream, long mostUnpackedBytes)
    {
        if (TooLarge(stream, mostUnpackedBytes) is { } why) return new WorkbookFile(stream, null, why);
        try
        {
            var comments = IsPackage(stream) ? SheetComments.Read(stream) : CommentsRead.None;
            stream.Position = 0;
            return new WorkbookFile(stream, ExcelReaderFactory.CreateReader(stream, new ExcelReaderConfiguration { LeaveOpen = true }), null) { Comments = comments };
        }
        catch (Exception damage) when (IsDamage(damage))
        {
            return new WorkbookFile(stream, null, Describe(damage));
        }
    }

    /// <summary>Goes to the next sheet; false at the end or at damage.</summary>
    public bool NextSheet()
    {
        if (_reader is null || Damage is not null) return false;
        try
        {
            if (!_beforeFirstSheet) return _reader.NextResult();
            _beforeFirstSheet = false;
            return _reader.ResultsCount > 0;
        }
        catch (Exception damage) when (IsDamage(damage))
        {
            Damage = Describe(damage);
            return false;
        }
    }

    /// <summary>The sheet's name.</summary>
    public string SheetName => _reader?.Name ?? "";

    /// <summary>Merged ranges of the sheet, zero-based and inclusive.</summary>
    public IReadOnlyList<(int FromRow, int FromColumn, int ToRow, int ToColumn)> Merges =>
        _reader?.MergeCells is { } merges ? [.. merges.Select(m => (m.FromRow, m.FromColumn, m.ToRow, m.ToColumn))] : [];

    /// <summary>The sheet's rows up to the last used one; blank rows between used ones are included.</summary>
    public IEnumerable<GridRow> Rows()
    {
        var (number, blanks) = (0, 0);
        var comments = Comments.BySheet.GetValueOrDefault(SheetName);
        var spans = Merges.Where(m => m.ToColumn > m.FromColumn).ToLookup(m => m.FromRow + 1, m => (m.FromColumn, m.ToColumn));
        while (NextRow(ref number) is { } row)
        {
            if (row.IsBlank)
            {
                blanks++;
                continue;
            }

            for (; blanks > 0; blanks--) yield return new GridRow(number - blanks, 1, [], "");
            if (spans.Contains(row.Line)) yield return (comments is not null && comments.TryGetValue(row.Line, out var beside) ? row with { Comments = beside } : row) with { Spans = [.. spans[row.Line]] };
            else yield return comments is not null && comments.TryGetValue(row.Line, out var here) ? row with { Comments = here } : row;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _reader?.Dispose();
        _stream.Dispose();
    }

    private GridRow? NextRow(ref int number)
    {
        if (_reader is null || Damage is not null) return null;
        try
        {
            if (!_reader.Read()) return null;
            number++;
            return SheetCells.Row(_reader, number, Math.Min(_reader.FieldCount, MostColumns));
        }
        catch (Exception damage) when (IsDamage(damage))
        {
            Damage = Describe(damage);
            return null;
        }
    }

    private static bool IsPackage(Stream stream)
    {
        Span<byte> head = stackalloc byte[2];
        stream.Position = 0;
        return stream.ReadAtLeast(head, 2, throwOnEndOfStream: false) == 2 && head is [(byte)'P', (byte)'K'];
    }

    private static string? TooLarge(Stream stream, long most)
    {
        if (!IsPackage(stream)) return null;
        try
        {
            using var zip = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true);
            long total = 0;
            foreach (var entry in zip.Entries)
            {
                if (entry.Length > most - total)
                    return FormattableString.Invariant($"it would unpack to more than {most >> 20} MB, far more than a log holds");
                total += entry.Length;
            }

            return null;
        }
        catch (Exception damage) when (IsDamage(damage))
        {
            return Describe(damage);
        }
    }

    // What the reading library and the runtime throw on bytes that are not the workbook they claim to be; the library checks little before it reads.
    // Anything else is our defect and is let through. Found by damaging workbooks (RobustnessTests) and in the library's own code:
    private static bool IsDamage(Exception exception) => exception
        is ExcelReaderException            // the library's own: no workbook, locked, a compound file that contradicts itself
        or InvalidDataException            // the zip or its packing is broken
        or XmlException                    // a part is not XML, or declares a document type
        or IOException                     // the file ends in the middle (EndOfStreamException), or goes away
        or ArgumentException               // a record's length points outside its bytes, or a code page does not exist; also text that is not in its encoding (DecoderFallbackException)
        or FormatException                 // a number in an attribute is none
        or OverflowException               // a number in a record or attribute is too large for its place
        or IndexOutOfRangeException        // a record is shorter than its kind, or names a string that is not there
        or KeyNotFoundException            // a sheet names a part that the package does not have
        or NullReferenceException          // a part that the library takes for granted is missing
        or InvalidCastException            // a record of an old .xls is of another kind than its place asks for
        or NotSupportedException           // an old .xls of a version, or a zip of a packing, that is not known
        or InvalidOperationException       // the library's reader is asked for a cell where a damaged sheet has no row
        or NotImplementedException;        // an .xls locked by a cipher that the library names but has not written

    private static string Describe(Exception damage) => damage switch
    {
        InvalidPasswordException => "it is locked with a password",
        HeaderException => "it is not a workbook, whatever its name says",
        XmlException => "its inside is damaged",
        _ => "it is damaged or not finished",
    };
}
