using ClosedXML.Excel;

namespace CareRecords.Workbooks.Building;

/// <summary>The workbook while it is built, with the value of every formula cell kept for the package pass.</summary>
internal sealed class Book : IDisposable
{
    private readonly Dictionary<(string Sheet, string Address), StoredValue> _stored = [];
    private readonly List<PendingRows> _later = [];

    public Book()
    {
        Workbook = new XLWorkbook();
        Workbook.Style.Font.FontName = Look.Font;
        Workbook.Style.Font.FontSize = Look.Size;
        Workbook.FullCalculationOnLoad = true;
    }

    public XLWorkbook Workbook { get; }

    /// <summary>The value of every formula cell that the library holds, by sheet and address.</summary>
    public IReadOnlyDictionary<(string Sheet, string Address), StoredValue> Stored => _stored;

    /// <summary>The rows that the package pass writes.</summary>
    public IReadOnlyList<PendingRows> Pending => _later;

    /// <summary>Leaves rows to the package pass.</summary>
    public void Later(PendingRows rows) => _later.Add(rows);

    /// <summary>The cells of a table.</summary>
    public ICellSource Table(string name) => _later.OfType<ICellSource>().Single(t => ((PendingRows)t).Table == name);

    public IXLWorksheet Add(string name) => Workbook.Worksheets.Add(name);

    /// <summary>Puts content into a cell; words always as text.</summary>
    public void Put(IXLCell cell, CellContent content)
    {
        if (content.Formula is { } formula)
        {
            cell.FormulaA1 = formula;
            _stored[(cell.Worksheet.Name, cell.Address.ToString() ?? "")] = new StoredValue(content.Value, content.IsArray);
        }
        else
        {
            PutValue(cell, content.Value);
        }

        if (content.Link is { } place) Link(cell, place);
    }

    public void Put(IXLCell cell, string words) => Put(cell, CellContent.Of(words));

    private static void PutValue(IXLCell cell, object? value)
    {
        switch (value)
        {
            case null: break;
            case string words:
                var fit = CellText.Fit(words);
                cell.SetValue<string>(fit);
                if (CellText.LooksLikeFormula(fit)) cell.Style.IncludeQuotePrefix = true;
                break;
            case double number: cell.SetValue(number); break;
            case DateTime at: cell.SetValue(at); break;
            default: throw new ArgumentException($"A cell holds words, a number or a time, not {value.GetType()}.", nameof(value));
        }
    }

    private static void Link(IXLCell cell, string place)
    {
        var (colour, size) = (cell.Style.Font.FontColor, cell.Style.Font.FontSize);
        cell.Hyperlink = new XLHyperlink(place);
        cell.Style.Font.FontColor = colour;
        cell.Style.Font.FontSize = size;
        cell.Style.Font.FontName = Look.Font;
        cell.Style.Font.Underline = XLFontUnderlineValues.Single;
    }

    public void Dispose() => Workbook.Dispose();
}

/// <summary>A cell that shows "not available": charts leave it out, where they would draw empty words as nought.</summary>
internal sealed record NotAvailable
{
    public static NotAvailable Here { get; } = new();
}

/// <summary>The value that a formula cell is stored with.</summary>
/// <param name="Value">Words, a number, a time; null shows as empty words.</param>
/// <param name="IsArray">Whether the formula is worked out over whole columns at once.</param>
internal sealed record StoredValue(object? Value, bool IsArray);
