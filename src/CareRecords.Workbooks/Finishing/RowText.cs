using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Finishing;

/// <summary>Rows of cells as the text of a sheet part. Written by hand, not through an XML writer: they are most of a workbook's bytes.</summary>
internal sealed partial class RowText
{
    private readonly StringBuilder _text = new();
    private readonly string _x;
    private readonly string[] _letters;

    /// <param name="prefix">The part's own prefix with its colon, or nothing.</param>
    /// <param name="columns">Columns of the rows.</param>
    public RowText(string prefix, int columns)
    {
        _x = prefix;
        _letters = [.. Enumerable.Range(1, columns).Select(Address.Letters)];
    }

    /// <summary>The text of one row.</summary>
    /// <param name="row">One-based row.</param>
    /// <param name="height">Height in points; null for the usual.</param>
    /// <param name="cells">The cells from the first column on.</param>
    /// <param name="styles">The style of each.</param>
    /// <param name="beside">Cells right of them, as they are.</param>
    public StringBuilder Of(int row, double? height, CellContent[] cells, ReadOnlySpan<int> styles, string beside)
    {
        _text.Clear();
        _text.Append(CultureInfo.InvariantCulture, $"<{_x}row r=\"{row}\"");
        if (height is { } points) _text.Append(CultureInfo.InvariantCulture, $" ht=\"{points:R}\" customHeight=\"1\"");
        _text.Append('>');
        for (var c = 0; c < cells.Length; c++) Cell(_letters[c], row, cells[c], styles[c]);
        return _text.Append(beside).Append("</").Append(_x).Append("row>");
    }

    private void Cell(string letters, int row, CellContent content, int style)
    {
        _text.Append('<').Append(_x).Append("c r=\"").Append(letters).Append(row).Append("\" s=\"").Append(style).Append('"');
        if (content.Formula is { } formula)
        {
            var (type, value) = CellValueText.Of(content.Value);
            if (type is not null) _text.Append(" t=\"").Append(type).Append('"');
            _text.Append("><").Append(_x).Append('f');
            if (content.IsArray) _text.Append(" t=\"array\" ref=\"").Append(letters).Append(row).Append('"');
            Escaped(_text.Append('>'), formula);
            Escaped(_text.Append("</").Append(_x).Append("f><").Append(_x).Append("v>"), value);
            _text.Append("</").Append(_x).Append("v></").Append(_x).Append("c>");
        }
        else if (content.Value is string words)
        {
            _text.Append(" t=\"inlineStr\"><").Append(_x).Append("is><").Append(_x).Append("t xml:space=\"preserve\">");
            Escaped(_text, LooksEncoded().Replace(CellText.Fit(words), "_x005F$0"));
            _text.Append("</").Append(_x).Append("t></").Append(_x).Append("is></").Append(_x).Append("c>");
        }
        else if (content.Value is { } value)
        {
            _text.Append("><").Append(_x).Append("v>").Append(CellValueText.Of(value).Text).Append("</").Append(_x).Append("v></").Append(_x).Append("c>");
        }
        else
        {
            _text.Append("/>");
        }
    }

    private static void Escaped(StringBuilder text, string words)
    {
        var rest = words.AsSpan();
        for (var at = rest.IndexOfAny('&', '<', '>'); at >= 0; at = rest.IndexOfAny('&', '<', '>'))
        {
            text.Append(rest[..at]).Append(rest[at] switch { '&' => "&amp;", '<' => "&lt;", _ => "&gt;" });
            rest = rest[(at + 1)..];
        }

        text.Append(rest);
    }

    /// <summary>Words that the format would take for an encoded character.</summary>
    [GeneratedRegex("_(?=x[0-9A-Fa-f]{4}_)")]
    private static partial Regex LooksEncoded();
}
