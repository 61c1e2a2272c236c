using System.Globalization;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace CareRecords.Checks;

/// <summary>Compares the value stored in every formula cell with the value that an independent engine worked out.</summary>
internal static class Recalculation
{
    private const double RelativeTolerance = 1e-9;

    /// <summary>Fewer formulas than this would mean that the workbook is no longer live.</summary>
    private const int LeastFormulas = 300;

    /// <summary>Prints every difference; 0 when there is none and there are formulas enough.</summary>
    public static int Run(string written, string recalculated, TextWriter output)
    {
        using var ours = SpreadsheetDocument.Open(written, false);
        using var theirs = SpreadsheetDocument.Open(recalculated, false);
        int compared = 0, different = 0;
        foreach (var sheet in Workbook(ours).Descendants<Sheet>())
        {
            var other = Values(theirs, sheet.Name!.Value!);
            foreach (var cell in Part(ours, sheet).Worksheet.Descendants<Cell>().Where(c => c.CellFormula is not null))
            {
                compared++;
                var stored = Value(ours, cell);
                other.TryGetValue(cell.CellReference!.Value!, out var worked);
                if (Same(stored, worked ?? "")) continue;
                different++;
                output.WriteLine($"{sheet.Name}!{cell.CellReference}: stored '{stored}', recalculated '{worked}', formula {cell.CellFormula!.Text}");
            }
        }

        output.WriteLine($"{compared} formulas compared, {different} differ.");
        if (compared < LeastFormulas) output.WriteLine($"Fewer than {LeastFormulas} formulas.");
        return different == 0 && compared >= LeastFormulas ? 0 : 1;
    }

    private static Workbook Workbook(SpreadsheetDocument document) => document.WorkbookPart!.Workbook;

    private static WorksheetPart Part(SpreadsheetDocument document, Sheet sheet) =>
        (WorksheetPart)document.WorkbookPart!.GetPartById(sheet.Id!.Value!);

    private static Dictionary<string, string> Values(SpreadsheetDocument document, string sheetName)
    {
        var sheet = Workbook(document).Descendants<Sheet>().FirstOrDefault(s => s.Name == sheetName);
        return sheet is null
            ? []
            : Part(document, sheet).Worksheet.Descendants<Cell>().ToDictionary(c => c.CellReference!.Value!, c => Value(document, c));
    }

    private static string Value(SpreadsheetDocument document, Cell cell)
    {
        var text = cell.CellValue?.Text ?? cell.InlineString?.InnerText ?? "";
        return cell.DataType?.Value == CellValues.SharedString
            ? document.WorkbookPart!.SharedStringTablePart!.SharedStringTable.ElementAt(int.Parse(text, CultureInfo.InvariantCulture)).InnerText
            : text;
    }

    private static bool Same(string stored, string worked)
    {
        if (double.TryParse(stored, NumberStyles.Float, CultureInfo.InvariantCulture, out var a)
            && double.TryParse(worked, NumberStyles.Float, CultureInfo.InvariantCulture, out var b))
            return Math.Abs(a - b) <= (RelativeTolerance * Math.Max(Math.Abs(a), Math.Abs(b))) + 1e-12; // 0 against rounding dust
        return stored == worked;
    }
}
