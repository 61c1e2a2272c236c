using System.Globalization;
using ClosedXML.Excel;

namespace CareRecords.Workbooks.Building;

/// <summary>Writes one table with its title, headings, filter, widths, checks and page set-up. One row at least is always there, blank when nothing was written.</summary>
internal static class TableSheet
{
    /// <summary>
    /// Adds the table to a sheet at <see cref="WorkbookLayout.HeadingRow"/> or further down.
    /// </summary>
    /// <returns>The address of the rows.</returns>
    public static TablePlace Write<T>(
        Book book, IXLWorksheet sheet, string tableName, IReadOnlyList<Column<T>> columns, IReadOnlyList<T> rows, int headingRow = WorkbookLayout.HeadingRow, bool setWidths = true)
    {
        var last = headingRow + Math.Max(rows.Count, 1);
        for (var c = 0; c < columns.Count; c++) WriteHeading(sheet, columns[c], headingRow, c + 1, setWidths);
        for (var c = 0; c < columns.Count; c++)
        {
            StyleColumn(sheet.Cell(headingRow + 1, c + 1).Style, columns[c]);
            if (columns[c] is { Role: ColumnRole.Editable, Check: { } check }) AddCheck(sheet.Range(headingRow + 1, c + 1, last, c + 1), check);
        }

        book.Later(new TableRows<T>(sheet.Name, tableName, headingRow + 1, columns, rows));
        var table = sheet.Range(headingRow, 1, headingRow + 1, columns.Count).CreateTable(tableName);
        table.Theme = XLTableTheme.None;
        table.ShowAutoFilter = true;
        Look.TableHeading(sheet.Range(headingRow, 1, headingRow, columns.Count));
        var longest = columns.Where(c => c.Role != ColumnRole.Working).Max(c => LinesOf(c.Heading, c.Width - 1.5));
        sheet.Row(headingRow).Height = 3 + (13.5 * Math.Max(longest, 1));
        FoldWorkings(sheet, columns);
        return new TablePlace(sheet.Name, tableName, headingRow + 1, last, [.. columns.Select(c => c.Heading)], [.. columns.Where(c => c.Role == ColumnRole.Editable).Select(c => c.Heading)]);
    }

    /// <summary>Title, a line on use, frozen headings, landscape pages one page wide with repeated headings.</summary>
    public static void Dress(IXLWorksheet sheet, string title, string use, int frozenColumns = 1, int headingRow = WorkbookLayout.HeadingRow)
    {
        sheet.Cell(1, 1).SetValue<string>(title);
        Look.Title(sheet.Cell(1, 1));
        sheet.Row(1).Height = 22;
        sheet.Cell(2, 1).SetValue<string>(use);
        sheet.Cell(2, 1).Style.Font.Italic = true;
        // Headings further down are not frozen: they would take the rows above with them.
        sheet.SheetView.Freeze(headingRow == WorkbookLayout.HeadingRow ? headingRow : 2, frozenColumns);
        sheet.PageSetup.SetRowsToRepeatAtTop(headingRow, headingRow);
    }

    private static void WriteHeading<T>(IXLWorksheet sheet, Column<T> column, int row, int index, bool setWidth)
    {
        var cell = sheet.Cell(row, index);
        cell.SetValue<string>(column.Heading);
        if (IsNumber(column)) cell.Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Right;
        else cell.Style.Alignment.Indent = 1;
        if (setWidth) sheet.Column(index).Width = column.Width;
        if (column.Remark is { } remark)
        {
            var check = cell.SetDataValidation();
            check.AllowedValues = XLAllowedValues.AnyValue;
            check.InputTitle = column.Heading.Length <= 32 ? column.Heading : column.Heading[..32];
            check.InputMessage = remark.Length <= 255 ? remark : throw new ArgumentException("A remark holds 255 characters at most.", nameof(column));
            check.ShowInputMessage = true;
            check.ShowErrorMessage = false;
        }
    }

    private static void StyleColumn<T>(IXLStyle style, Column<T> column)
    {
        if (column.Format is { } format) style.NumberFormat.Format = format;
        style.Alignment.Vertical = XLAlignmentVerticalValues.Top;
        style.Alignment.WrapText = column.Wrap;
        if (IsNumber(column)) style.Alignment.Horizontal = XLAlignmentHorizontalValues.Right;
        else style.Alignment.Indent = 1;
        style.Border.BottomBorder = XLBorderStyleValues.Hair;
        style.Border.BottomBorderColor = Look.Line;
        if (column.Role == ColumnRole.Trace) style.Font.FontColor = XLColor.FromHtml("#404040");
        if (column.Role != ColumnRole.Editable) return;
        style.Fill.BackgroundColor = Look.PaleYellow;
        style.Protection.Locked = false;
    }

    private static bool IsNumber<T>(Column<T> column) => column.Format is not null;

    private static void AddCheck(IXLRange range, CellCheck check)
    {
        var validation = range.SetDataValidation();
        validation.IgnoreBlanks = true;
        switch (check)
        {
            case CellCheck.Number(var low, var high, var unit):
                validation.Decimal.Between(low, high);
                validation.ErrorTitle = "A number";
                validation.ErrorMessage = string.Create(CultureInfo.InvariantCulture, $"From {low} to {high} {unit}. If you are sure, keep it: the next review will ask about it.");
                validation.ErrorStyle = XLErrorStyle.Warning;
                break;
            case CellCheck.Time:
                validation.Date.Between(new DateTime(1990, 1, 1), new DateTime(2100, 1, 1));
                validation.ErrorTitle = "A date and a time";
                validation.ErrorMessage = "Year-month-day hour:minute, for example 2026-03-09 07:10. Words (\"about 7\") are kept too: the next review reads them.";
                validation.ErrorStyle = XLErrorStyle.Warning;
                break;
            case CellCheck.OneOf(var words):
                validation.List("\"" + string.Join(',', words) + "\"", true);
                validation.ErrorTitle = "Usual words";
                validation.ErrorMessage = "Usually one of: " + string.Join(", ", words) + ". Other words are kept as they are.";
                validation.ErrorStyle = XLErrorStyle.Information;
                break;
        }
    }

    /// <summary>How many lines words take in a column of that many characters, broken between words where they can be.</summary>
    public static int LinesOf(string words, double width)
    {
        var most = Math.Max(width, 4) / 1.02;
        var lines = 0;
        foreach (var line in words.AsSpan().EnumerateLines())
        {
            var (taken, used) = (1, 0.0);
            foreach (var range in line.Split(' '))
            {
                double length = line[range].Length;
                if (used > 0 && used + 1 + length > most) (taken, used) = (taken + 1, 0);
                used += (used > 0 ? 1 : 0) + length;
                while (used > most) (taken, used) = (taken + 1, used - most);
            }

            if ((lines += taken) > 200) break;
        }

        return lines;
    }

    private static void FoldWorkings<T>(IXLWorksheet sheet, IReadOnlyList<Column<T>> columns)
    {
        var first = columns.ToList().FindIndex(c => c.Role == ColumnRole.Working);
        if (first < 0) return;
        sheet.Columns(first + 1, columns.Count).Group();
        sheet.Columns(first + 1, columns.Count).Hide();
    }
}

/// <summary>Where a table stands.</summary>
/// <param name="Sheet">Sheet name.</param>
/// <param name="Table">Table name.</param>
/// <param name="FirstRow">One-based row of the first record.</param>
/// <param name="LastRow">One-based row of the last record (the blank row when there is none).</param>
/// <param name="Headings">Headings from the first column on.</param>
/// <param name="Editable">Of them, those whose cells may be mended.</param>
internal sealed record TablePlace(string Sheet, string Table, int FirstRow, int LastRow, IReadOnlyList<string> Headings, IReadOnlyList<string> Editable)
{
    /// <summary>A link to a record by its position from 0.</summary>
    public string LinkTo(int index) => FormattableString.Invariant($"'{Sheet}'!A{FirstRow + index}");

    /// <summary>The absolute range of a column's records, for charts: 'Days'!$C$5:$C$32.</summary>
    public string Range(string heading)
    {
        var column = Headings.ToList().IndexOf(heading);
        if (column < 0) throw new ArgumentException($"The table {Table} has no column '{heading}'.", nameof(heading));
        var letter = XLHelper.GetColumnLetterFromNumber(column + 1);
        return FormattableString.Invariant($"'{Sheet}'!${letter}${FirstRow}:${letter}${LastRow}");
    }
}
