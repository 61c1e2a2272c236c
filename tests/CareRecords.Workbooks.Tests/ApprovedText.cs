using System.Globalization;
using System.Text;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace CareRecords.Workbooks.Tests;

/// <summary>A workbook as lines of text, and its comparison with the text that was approved.</summary>
internal static class ApprovedText
{
    /// <summary>One line a row of every sheet, cells parted by bars; under each sheet the formulas of its first rows that hold any.</summary>
    public static string Of(byte[] workbook)
    {
        using var stream = new MemoryStream(workbook);
        using var document = SpreadsheetDocument.Open(stream, false);
        var book = document.WorkbookPart!;
        var shared = book.SharedStringTablePart!.SharedStringTable.Elements<SharedStringItem>().Select(s => s.InnerText).ToList();
        var text = new StringBuilder();
        foreach (var sheet in book.Workbook.Descendants<Sheet>())
        {
            text.Append("== ").Append(sheet.Name!.Value).Append('\n');
            HashSet<string> columnsSeen = [];
            List<string> formulas = [];
            foreach (var row in ((WorksheetPart)book.GetPartById(sheet.Id!.Value!)).Worksheet.Descendants<Row>())
            {
                var cells = row.Elements<Cell>().ToList();
                var values = cells.Select(c => Value(c, shared)).ToList();
                if (values.TrueForAll(v => v.Length == 0)) continue;
                text.Append(row.RowIndex!.Value).Append(": ").AppendJoin(" | ", values).Append('\n');
                formulas.AddRange(cells.Where(c => c.CellFormula is not null && columnsSeen.Add(string.Concat(c.CellReference!.Value!.TakeWhile(char.IsLetter))))
                    .Select(c => $"{c.CellReference!.Value} = {c.CellFormula!.Text}"));
            }

            foreach (var formula in formulas) text.Append(formula).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Fails on the first difference; the text received is left beside the test's program, to be looked at and copied when it is right.</summary>
    public static void Equal(string name, string received)
    {
        var approvedFile = Path.Combine(AppContext.BaseDirectory, "Approved", name);
        File.WriteAllText(Path.Combine(AppContext.BaseDirectory, name + ".received"), received);
        var approved = File.Exists(approvedFile) ? File.ReadAllText(approvedFile).ReplaceLineEndings("\n").Split('\n') : [];
        var lines = received.Split('\n');
        for (var i = 0; i < Math.Max(approved.Length, lines.Length); i++)
        {
            var (a, r) = (approved.ElementAtOrDefault(i) ?? "(no line)", lines.ElementAtOrDefault(i) ?? "(no line)");
            Assert.True(a == r, $"{name}, line {i + 1}\napproved: {a}\nreceived: {r}");
        }
    }

    private static string Value(Cell cell, List<string> shared)
    {
        var text = cell.CellValue?.Text ?? cell.InlineString?.InnerText ?? "";
        if (cell.DataType?.Value == CellValues.SharedString && text.Length > 0) return shared[int.Parse(text, CultureInfo.InvariantCulture)].ReplaceLineEndings("⏎");
        // Ten digits: the last bits of a model's estimate differ between machines.
        return cell.DataType is null && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            ? number.ToString("G10", CultureInfo.InvariantCulture)
            : text.ReplaceLineEndings("⏎");
    }
}
