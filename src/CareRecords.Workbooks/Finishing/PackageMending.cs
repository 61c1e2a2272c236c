using DocumentFormat.OpenXml.Spreadsheet;

namespace CareRecords.Workbooks.Finishing;

/// <summary>Sets right what the workbook library writes in a way that some programs read otherwise.</summary>
internal static class PackageMending
{
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
