using System.Globalization;

namespace CareRecords.Records;

/// <summary>Where words came from: a line of a text file, or a cell (or row) of a sheet, with the words as written.</summary>
/// <param name="File">The input's name as given, relative to the folder it was found in; never an absolute path.</param>
/// <param name="Line">The one-based line number in a text or delimited file; null for a workbook.</param>
/// <param name="Sheet">The sheet's name; null for a text file.</param>
/// <param name="Cell">The cell ("C7") or row ("R7", one-based) of the sheet; null for a text file.</param>
/// <param name="Text">The words as written, not trimmed and not mended.</param>
public sealed record SourceLine(string File, int? Line, string? Sheet, string? Cell, string Text)
{
    /// <summary>A line of a text or delimited file; <paramref name="line"/> is one-based.</summary>
    public static SourceLine InText(string file, int line, string text) => new(file, line, null, null, text);

    /// <summary>A row or cell of a sheet.</summary>
    public static SourceLine InSheet(string file, string sheet, string cell, string text) =>
        new(file, null, sheet, cell, text);

    /// <summary>The place in a person's words: "notes.txt, line 12" or "log.xlsx, sheet Feeds, C7".</summary>
    public string Place => Line is { } line
        ? string.Create(CultureInfo.InvariantCulture, $"{File}, line {line}")
        : Sheet is null ? File : $"{File}, sheet {Sheet}, {Cell}";
}
