using CareRecords.Import.Accounting;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Files;

/// <summary>One input with what a look at its bytes told.</summary>
/// <param name="Found">The file.</param>
/// <param name="Survey">Hash and encoding.</param>
/// <param name="NotAfter">The day on which the file was last written: its records are not later. Null when the file system does not say.</param>
internal sealed record SourceFile(FoundFile Found, FileSurvey Survey, LocalDate? NotAfter)
{
    /// <summary>True for .xlsx, .xls and .xlsm.</summary>
    public bool IsWorkbook => Path.GetExtension(Found.Path).StartsWith(".xls", StringComparison.OrdinalIgnoreCase);

    /// <summary>True for .txt and .md, which hold notes unless they are plainly a table.</summary>
    public bool MayBeNotes => Path.GetExtension(Found.Path).ToUpperInvariant() is ".TXT" or ".MD";

    /// <summary>Opens a text with its encoding.</summary>
    public TextReader OpenText() => new StreamReader(Found.Path, Survey.Encoding, detectEncodingFromByteOrderMarks: true, bufferSize: 1 << 16);

    /// <summary>Opens the bytes.</summary>
    public Stream OpenBytes() => new FileStream(Found.Path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1 << 16);
}

/// <summary>What one input gave.</summary>
/// <param name="Parts">One part for a text, one for each sheet of a workbook.</param>
/// <param name="Input">How it was read.</param>
internal sealed record FileReading(IReadOnlyList<Gathered> Parts, InputFile Input);
