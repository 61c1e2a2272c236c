using System.Globalization;

namespace CareRecords.Workbooks.Finishing;

/// <summary>Cell addresses: letters for the column, digits for the row, both from 1.</summary>
internal static class Address
{
    public static string Letters(int column) =>
        column <= 26 ? ((char)('A' + column - 1)).ToString() : Letters((column - 1) / 26) + (char)('A' + ((column - 1) % 26));

    public static string Of(int row, int column) => string.Create(CultureInfo.InvariantCulture, $"{Letters(column)}{row}");

    /// <summary>The row and the column of "B7" or of the last cell of "A1:B7".</summary>
    public static (int Row, int Column) LastOf(string reference)
    {
        var last = reference.AsSpan(reference.IndexOf(':', StringComparison.Ordinal) + 1);
        var (row, column) = (0, 0);
        foreach (var c in last)
        {
            if (char.IsAsciiDigit(c)) row = (row * 10) + (c - '0');
            else if (char.IsAsciiLetterUpper(c)) column = (column * 26) + (c - 'A' + 1);
        }

        return (row, column);
    }
}
