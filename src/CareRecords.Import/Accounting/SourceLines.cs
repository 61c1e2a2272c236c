using System.Globalization;
using CareRecords.Records;

namespace CareRecords.Import.Accounting;

/// <summary>The line or row that a source names.</summary>
internal static class SourceLines
{
    /// <summary>The one-based line of a text, or row of a sheet ("R7", "C7"); 0 for a whole file.</summary>
    public static int NumberOf(SourceLine source) =>
        source.Line ?? (int.TryParse(source.Cell.AsSpan().TrimStart("ABCDEFGHIJKLMNOPQRSTUVWXYZ"), NumberStyles.None, CultureInfo.InvariantCulture, out var row) ? row : 0);
}
