using System.Globalization;
using System.IO.Compression;
using System.Text;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using ExcelDataReader;

namespace CareRecords.Workbooks.Shared;

/// <summary>
/// Writes and reads workbooks of plain sheets. The package is written again with fixed times and no attributes, so that it says neither when nor
/// where it was made.
/// </summary>
internal static class PlainWorkbook
{
    /// <summary>Unpacked bytes beyond which a file is refused before it is unpacked.</summary>
    private const long MostBytes = 200_000_000;

    /// <summary>Rows and columns of a sheet beyond which reading stops: ten sessions a day for fifty years.</summary>
    private const int MostRows = 200_000;
    private const int MostColumns = 100;

    private const string TooLarge = "is far too large for a shared workbook";

    private static readonly DateTimeOffset FixedTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    // The reader's configuration asks for the code pages of old workbooks even where none is used.
    static PlainWorkbook() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    public static void Write(IEnumerable<PlainSheet> sheets, Stream output)
    {
        using var package = new MemoryStream();
        using (var document = SpreadsheetDocument.Create(package, SpreadsheetDocumentType.Workbook))
        {
            var book = document.AddWorkbookPart();
            document.ChangeIdOfPart(book, "rId1");
            var list = new DocumentFormat.OpenXml.Spreadsheet.Sheets();
            var number = 0u;
            foreach (var sheet in sheets)
            {
                number++;
                var id = string.Create(CultureInfo.InvariantCulture, $"rId{number}");
                WriteSheet(book.AddNewPart<WorksheetPart>(id), sheet);
                list.AppendChild(new Sheet { Name = sheet.Name, SheetId = number, Id = id });
            }

            book.AddNewPart<WorkbookStylesPart>("rIdStyles").Stylesheet = Styles();
            book.Workbook = new Workbook(list);
        }

        package.Position = 0;
        PackWithoutTraces(package, output);
    }

    /// <summary>Reads every sheet.</summary>
    /// <exception cref="InvalidDataException">The package is damaged or far too large.</exception>
    public static IReadOnlyList<PlainSheet> Read(Stream input)
    {
        using (var zip = new ZipArchive(input, ZipArchiveMode.Read, leaveOpen: true))
        {
            if (zip.Entries.Sum(e => e.Length) > MostBytes) throw new NotASharedWorkbookException(TooLarge);
            if (OwnWorkbookReader.TryRead(zip, MostRows, MostColumns) is { } own) return own;
        }

        input.Position = 0;
        using var reader = ExcelReaderFactory.CreateOpenXmlReader(input, new ExcelReaderConfiguration { LeaveOpen = true });
        var sheets = new List<PlainSheet>();
        do
        {
            var rows = new List<object?[]>();
            while (reader.Read())
            {
                if (reader.FieldCount > MostColumns) throw new NotASharedWorkbookException(TooLarge);
                var row = new object?[reader.FieldCount];
                for (var i = 0; i < row.Length; i++) row[i] = reader.GetValue(i);
                rows.Add(row);
                if (rows.Count > MostRows) throw new NotASharedWorkbookException(TooLarge);
            }

            sheets.Add(new PlainSheet(reader.Name, rows));
        }
        while (reader.NextResult());
        return sheets;
    }

    private static void WriteSheet(WorksheetPart part, PlainSheet sheet)
    {
        using var writer = OpenXmlWriter.Create(part);
        writer.WriteStartElement(new Worksheet());
        if (sheet.Widths.Count > 0) writer.WriteElement(new Columns(sheet.Widths.Select((w, i) => new Column { Min = (uint)i + 1, Max = (uint)i + 1, Width = w, CustomWidth = true })));
        writer.WriteStartElement(new SheetData());
        for (var r = 0; r < sheet.Rows.Count; r++) WriteRow(writer, sheet, r);
        writer.WriteEndElement();
        writer.WriteEndElement();
    }

    private static void WriteRow(OpenXmlWriter writer, PlainSheet sheet, int r)
    {
        writer.WriteStartElement(new Row { RowIndex = (uint)r + 1 });
        var style = r == 0 && sheet.HasHeading ? Bold : sheet.Widths.Count > 0 ? Wrapped : Plain;
        for (var c = 0; c < sheet.Rows[r].Length; c++)
            if (sheet.Rows[r][c] is { } value) writer.WriteElement(CellOf(value, Place(r, c), style));
        writer.WriteEndElement();
    }

    private const uint Plain = 0;
    private const uint Bold = 1;
    private const uint Wrapped = 2;

    private static Cell CellOf(object value, string place, uint style)
    {
        var cell = new Cell { CellReference = place };
        if (style != Plain) cell.StyleIndex = style;
        switch (value)
        {
            case bool yes:
                cell.DataType = CellValues.Boolean;
                cell.CellValue = new CellValue(yes ? "1" : "0");
                break;
            case double number:
                cell.CellValue = new CellValue(number.ToString("R", CultureInfo.InvariantCulture));
                break;
            default:
                cell.DataType = CellValues.InlineString;
                cell.InlineString = new InlineString(new DocumentFormat.OpenXml.Spreadsheet.Text((string)value));
                break;
        }

        return cell;
    }

    private static string Place(int row, int column)
    {
        var letters = column < 26 ? $"{(char)('A' + column)}" : $"{(char)('A' + (column / 26) - 1)}{(char)('A' + (column % 26))}";
        return string.Create(CultureInfo.InvariantCulture, $"{letters}{row + 1}");
    }

    private static Stylesheet Styles() => new(
        new Fonts(new Font(), new Font(new Bold())),
        new Fills(new Fill(new PatternFill { PatternType = PatternValues.None }), new Fill(new PatternFill { PatternType = PatternValues.Gray125 })),
        new Borders(new Border()),
        new CellStyleFormats(new CellFormat()),
        new CellFormats(
            new CellFormat(),
            new CellFormat { FontId = 1, ApplyFont = true },
            new CellFormat(new Alignment { WrapText = true, Vertical = VerticalAlignmentValues.Top }) { ApplyAlignment = true }));

    private static void PackWithoutTraces(Stream package, Stream output)
    {
        using var from = new ZipArchive(package, ZipArchiveMode.Read);
        using var to = new ZipArchive(output, ZipArchiveMode.Create, leaveOpen: true);
        foreach (var part in from.Entries.OrderBy(e => e.FullName == "[Content_Types].xml" ? "" : e.FullName, StringComparer.Ordinal))
        {
            var entry = to.CreateEntry(part.FullName, CompressionLevel.Optimal);
            entry.LastWriteTime = FixedTime;
            entry.ExternalAttributes = 0;
            using var source = part.Open();
            using var target = entry.Open();
            source.CopyTo(target);
        }
    }
}
