using System.Xml;
using CareRecords.Pooling;
using ExcelDataReader.Exceptions;

namespace CareRecords.Workbooks.Shared;

/// <summary>
/// The shared workbook of one child. Written: a first sheet in plain words, one flat sheet a table, the meaning of every column, a seal. Read: all of it
/// is compared, cell by cell, with what the writer would write, so that a changed file is refused.
/// </summary>
public static class SharedWorkbook
{
    private const string CannotOpen = "cannot be opened; it may have been moved, or be open in another program";
    private const string Damaged = "is not a workbook that can be read: it is damaged or of another kind";

    /// <summary>Writes the workbook. The same findings give the same bytes: no author, no date, no program name, fixed times in the package.</summary>
    /// <param name="findings">What to write.</param>
    /// <param name="output">A stream to write to; left open, need not seek.</param>
    public static void Write(SharedFindings findings, Stream output)
    {
        ArgumentNullException.ThrowIfNull(findings);
        ArgumentNullException.ThrowIfNull(output);
        PlainWorkbook.Write(SharedSheets.Of(findings), output);
    }

    /// <summary>Reads a workbook; whatever is not an unchanged shared workbook of this version is a refusal with its reason.</summary>
    /// <param name="path">The file.</param>
    /// <param name="name">The name to call it by in messages; the path when null.</param>
    public static SharedInput Read(string path, string? name = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1, FileOptions.SequentialScan);
            return Read(file, name ?? path);
        }
        catch (IOException)
        {
            return new RefusedInput(name ?? path, CannotOpen);
        }
        catch (UnauthorizedAccessException)
        {
            return new RefusedInput(name ?? path, CannotOpen);
        }
    }

    /// <summary>Reads a workbook from a stream that can seek.</summary>
    /// <param name="input">The stream.</param>
    /// <param name="name">The name to call it by in messages.</param>
    public static SharedInput Read(Stream input, string name)
    {
        ArgumentNullException.ThrowIfNull(input);
        try
        {
            return Sheets(input) is { } sheets ? new SharedChild(name, Understand(sheets)) : new RefusedInput(name, Damaged);
        }
        catch (NotASharedWorkbookException e)
        {
            return new RefusedInput(name, e.Message);
        }
        catch (InvalidDataException e)
        {
            return new RefusedInput(name, $"was changed after it was written, or was not written by CareRecords: {e.Message}");
        }
    }

    /// <summary>The sheets; null when the file is not a workbook or is damaged.</summary>
    private static IReadOnlyList<PlainSheet>? Sheets(Stream input)
    {
        try
        {
            return PlainWorkbook.Read(input);
        }
        catch (InvalidDataException)
        {
            return null;
        }
        catch (ExcelReaderException)
        {
            return null;
        }
        catch (XmlException)
        {
            return null;
        }
    }

    private static SharedFindings Understand(IReadOnlyList<PlainSheet> sheets)
    {
        CheckVersion(sheets);
        var byName = sheets.ToDictionary(s => s.Name, StringComparer.Ordinal);
        var findings = SharedTables.Assemble(table => RowsOf(table, byName));
        var expected = SharedSheets.Of(findings).ToList();
        if (!expected.Select(s => s.Name).SequenceEqual(sheets.Select(s => s.Name))) throw new InvalidDataException("its sheets are not those of a shared workbook");
        foreach (var (wanted, found) in expected.Zip(sheets)) Compare(wanted, found);
        return findings;
    }

    private static void CheckVersion(IReadOnlyList<PlainSheet> sheets)
    {
        var seal = sheets.FirstOrDefault(s => s.Name == SharedSheets.Seal)?.Rows;
        if (seal is not [[string, double version, ..], [string, string, ..], ..]) throw new NotASharedWorkbookException("is a workbook, but not one that was made for sharing");
        if (version != SharedFindings.TablesVersion)
            throw new NotASharedWorkbookException(FormattableString.Invariant($"is a shared workbook of version {version:0}; this program pools version {SharedFindings.TablesVersion}: share it again"));
    }

    private static IEnumerable<object?[]> RowsOf(SharedTable table, Dictionary<string, PlainSheet> sheets)
    {
        if (!sheets.TryGetValue(table.Name, out var sheet)) throw new InvalidDataException($"the sheet \"{table.Name}\" is missing");
        var heading = SharedSheets.HeadingOf(table);
        if (sheet.Rows.Count == 0 || !Same(heading, sheet.Rows[0])) throw new InvalidDataException($"the headings of sheet \"{table.Name}\" are not those of this version");
        return sheet.Rows.Skip(1).Select(row => Wide(row, heading.Length));
    }

    private static void Compare(PlainSheet wanted, PlainSheet found)
    {
        var rows = Math.Max(wanted.Rows.Count, found.Rows.Count);
        for (var i = 0; i < rows; i++)
        {
            var same = i < wanted.Rows.Count && i < found.Rows.Count ? Same(wanted.Rows[i], found.Rows[i]) : (i < found.Rows.Count ? found : wanted).Rows[i].All(c => c is null);
            if (same) continue;
            throw new InvalidDataException(wanted.Name == SharedSheets.Seal
                ? "the figures do not fit the seal"
                : FormattableString.Invariant($"sheet \"{wanted.Name}\", row {i + 1} is not as it was written"));
        }
    }

    private static bool Same(object?[] wanted, object?[] found)
    {
        for (var i = 0; i < Math.Max(wanted.Length, found.Length); i++)
            if (!Equals(i < wanted.Length ? wanted[i] : null, i < found.Length ? found[i] : null)) return false;
        return true;
    }

    private static object?[] Wide(object?[] row, int width)
    {
        if (row.Length == width) return row;
        if (row.Skip(width).Any(c => c is not null)) throw new InvalidDataException("there is a cell beyond the last column");
        Array.Resize(ref row, width);
        return row;
    }
}

/// <summary>A file that was never a shared workbook of this version.</summary>
internal sealed class NotASharedWorkbookException(string message) : Exception(message);
