using System.Text.RegularExpressions;
using CareRecords.Records;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using Sheet = CareRecords.Workbooks.WorkbookLayout.Sheet;

namespace CareRecords.Workbooks.Tests;

/// <summary>From a figure of the front page two clicks reach a row behind it and its words as written.</summary>
public sealed partial class TwoClicksTests
{
    private static readonly CareLog Log = SampleMonth.Log(9);
    private static readonly Package Book = new(ReviewWorkbookTests.Bytes(Log));

    [Theory]
    [InlineData("Feed stopped in time", Sheet.Gaps)]
    [InlineData("Inhaler in time", Sheet.Gaps)]
    [InlineData("Sessions", Sheet.Days)]
    [InlineData("Minutes, where written", Sheet.Gaps)]
    [InlineData("E1", Sheet.Illness)]
    [InlineData("0.5 L/min", Sheet.Saturation)]
    [InlineData("1.5 L/min", Sheet.Saturation)]
    [InlineData("S2: up, day 1 of E1", Sheet.Taper)]
    public void Two_clicks_reach_the_words_as_written(string label, string through)
    {
        var (sheet, row) = Book.Follow(Sheet.Summary, Book.Rows(Sheet.Summary).Single(r => Book.Cell(Sheet.Summary, "A", r) == label)).First();
        Assert.Equal(through, sheet);
        var from = row < WorkbookLayout.HeadingRow ? WorkbookLayout.HeadingRow + 1 : row;
        var ends = Book.Follow(sheet, from).ToList();
        Assert.NotEmpty(ends);
        var written = Log.Entries.SelectMany(e => e.Sources).Select(s => s.Text).ToHashSet();
        Assert.All(ends, end => Assert.Contains(Book.RowCells(end.Sheet, end.Row), c => c.Split(WorkbookLayout.SourceSeparator).Any(written.Contains)));
    }

    /// <summary>A workbook's cells and links, by sheet and address.</summary>
    private sealed class Package
    {
        private readonly Dictionary<(string Sheet, string Address), string> _cells = [];
        private readonly Dictionary<(string Sheet, string Address), string> _links = [];

        public Package(byte[] bytes)
        {
            using var stream = new MemoryStream(bytes);
            using var document = SpreadsheetDocument.Open(stream, false);
            var book = document.WorkbookPart!;
            var shared = book.SharedStringTablePart!.SharedStringTable.Elements<SharedStringItem>().Select(i => i.InnerText).ToList();
            foreach (var sheet in book.Workbook.Descendants<DocumentFormat.OpenXml.Spreadsheet.Sheet>())
            {
                var worksheet = ((WorksheetPart)book.GetPartById(sheet.Id!.Value!)).Worksheet;
                foreach (var cell in worksheet.Descendants<Cell>().Where(c => c.CellValue is not null || c.InlineString is not null))
                    _cells[(sheet.Name!.Value!, cell.CellReference!.Value!)] = cell.InlineString is { } inline ? inline.InnerText : cell.DataType?.Value == CellValues.SharedString
                        ? shared[int.Parse(cell.CellValue!.Text, System.Globalization.CultureInfo.InvariantCulture)] : cell.CellValue!.Text;
                foreach (var link in worksheet.Descendants<Hyperlink>()) _links[(sheet.Name!.Value!, link.Reference!.Value!)] = link.Location!.Value!;
            }
        }

        public string Cell(string sheet, string column, int row) => _cells.GetValueOrDefault((sheet, FormattableString.Invariant($"{column}{row}")), "");

        public IEnumerable<int> Rows(string sheet) => _cells.Keys.Where(k => k.Sheet == sheet).Select(k => RowOf(k.Address)).Distinct();

        public IEnumerable<string> RowCells(string sheet, int row) => _cells.Where(c => c.Key.Sheet == sheet && RowOf(c.Key.Address) == row).Select(c => c.Value);

        /// <summary>Where the links of a row lead.</summary>
        public IEnumerable<(string Sheet, int Row)> Follow(string sheet, int row) =>
            _links.Where(l => l.Key.Sheet == sheet && RowOf(l.Key.Address) == row).OrderBy(l => l.Key.Address, StringComparer.Ordinal)
                .Select(l => Place().Match(l.Value)).Select(m => (m.Groups["sheet"].Value, RowOf(m.Groups["cell"].Value)));

        private static int RowOf(string address) => int.Parse(address.TrimStart([.. Enumerable.Range('A', 26).Select(c => (char)c)]), System.Globalization.CultureInfo.InvariantCulture);
    }

    [GeneratedRegex("^'(?<sheet>[^']+)'!(?<cell>[A-Z]+[0-9]+)$")]
    private static partial Regex Place();
}
