using System.Globalization;

namespace CareRecords.Workbooks.Building;

/// <summary>Pieces of formulas. Functions newer than the file format carry their prefix here, so that no sheet forgets it.</summary>
internal static class Formula
{
    public const string MaxIfs = "_xlfn.MAXIFS";
    public const string MinIfs = "_xlfn.MINIFS";

    /// <summary>The cell of the same row in a column of the same table.</summary>
    public static string This(string table, string heading) => $"{table}[[#This Row],[{Escape(heading)}]]";

    /// <summary>A whole column.</summary>
    public static string Column(string table, string heading) => $"{table}[{Escape(heading)}]";

    /// <summary>A formula holds no longer words.</summary>
    public const int MostText = 255;

    /// <summary>Words in a formula, with the signs that a cell shows for characters that it cannot hold.</summary>
    public static string Text(string words) => "\"" + CellText.Fit(words).Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";

    public static string Number(double number) => number.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>The value in another table's column, in the row whose key matches.</summary>
    public static string Find(string table, string wanted, string keyHeading, string key) =>
        $"INDEX({Column(table, wanted)},MATCH({key},{Column(table, keyHeading)},0))";

    private static string Escape(string heading) => heading
        .Replace("'", "''", StringComparison.Ordinal).Replace("#", "'#", StringComparison.Ordinal)
        .Replace("[", "'[", StringComparison.Ordinal).Replace("]", "']", StringComparison.Ordinal);
}
