using CareRecords.Workbooks.Building;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace CareRecords.Workbooks.Finishing;

/// <summary>Sets right what the workbook library writes in a way that some programs read otherwise.</summary>
internal static class PackageMending
{
    /// <summary>
    /// The first font is the one that column widths are measured in; the library leaves its own there. It also writes an empty format for the
    /// built-in format 0.
    /// </summary>
    public static void MendStyles(WorkbookPart workbook)
    {
        var styles = workbook.WorkbookStylesPart?.Stylesheet ?? throw new InvalidOperationException("The package has no styles.");
        var first = styles.Fonts?.Elements<Font>().FirstOrDefault() ?? throw new InvalidOperationException("The package has no font.");
        first.GetFirstChild<FontName>()?.Val = Look.Font;
        first.GetFirstChild<FontSize>()?.Val = Look.Size;
        foreach (var empty in styles.NumberingFormats?.Elements<NumberingFormat>().Where(f => f.NumberFormatId?.Value == 0).ToList() ?? []) empty.Remove();
        styles.NumberingFormats?.Count = (uint)styles.NumberingFormats.ChildElements.Count;
    }

    /// <summary>Column definitions stand in order of their columns; the library puts the rest of the sheet first.</summary>
    public static void SortColumns(WorksheetPart part)
    {
        if (part.Worksheet.GetFirstChild<Columns>() is not { } columns) return;
        var sorted = columns.Elements<Column>().OrderBy(c => c.Min?.Value ?? 0).ToList();
        columns.RemoveAllChildren<Column>();
        foreach (var column in sorted) columns.AppendChild(column);
    }

    /// <summary>Rows repeated on every printed page, with the signs without which programs do not repeat them: 4:4 becomes $4:$4.</summary>
    public static void FixPrintTitles(Workbook workbook)
    {
        foreach (var name in workbook.Descendants<DefinedName>().Where(n => n.Name == "_xlnm.Print_Titles"))
        {
            var at = name.Text.LastIndexOf('!') + 1;
            var ends = name.Text[at..].Split(':');
            if (ends.All(e => e.Length > 0 && e.All(char.IsAsciiDigit))) name.Text = name.Text[..at] + string.Join(':', ends.Select(e => "$" + e));
        }
    }
}
