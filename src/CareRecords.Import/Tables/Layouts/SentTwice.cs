using System.Text.RegularExpressions;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Rows that a form or a phone sent twice, as a remark in them says ("pressed send twice, ignore this one"), where an earlier row says the same.</summary>
internal static partial class SentTwice
{
    /// <summary>True where a remark of the row says so and everything but the remarks and the stamp stands in a row above it too.</summary>
    public static bool Is(Block block, BlockRow row)
    {
        var remarks = Enumerable.Range(0, block.Columns.Count).Where(i => block.Columns[i].Role is Role.Note or Role.Unknown or Role.Reason or Role.Detail && row[i].Cell.Words is { } text && Said().IsMatch(text)).ToList();
        if (remarks.Count == 0) return false;
        var told = Enumerable.Range(0, block.Columns.Count).Where(i => !remarks.Contains(i) && block.Columns[i].Role is not Role.Ignore).ToList();
        return block.Rows.TakeWhile(r => !ReferenceEquals(r, row)).Any(r => told.TrueForAll(i => row[i].Cell.IsEmpty || Same(r[i].Cell, row[i].Cell) || StampColumns.IsStamp(block, i)) && told.Exists(i => !row[i].Cell.IsEmpty && Same(r[i].Cell, row[i].Cell)));
    }

    // The day that was taken from a stamp still has the words of the stamp.
    private static bool Same(Cell one, Cell other) => one.Words == other.Words || one.Kind == CellKind.Date && other.Kind == CellKind.Date && one.At == other.At;

    [GeneratedRegex(@"\b(?:sent|send|submit|submitted|hit|entered|logged|saved|posted|pressed|clicked|typed|put)\b.{0,20}\btwice\b|\bduplicate\b|\bdouble (?:entry|submission|post)\b|\bsame entry again\b", RegexOptions.IgnoreCase)]
    private static partial Regex Said();
}
