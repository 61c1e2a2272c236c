using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Finds the time that the details of a form's row give to its event, where the row's own time is only when it was typed in: "Percussion LLL 3, RLL 3. Started 7:05, done 7:22",
/// "G-tube bolus 160 mL, 11:40 to 12:05", "by mouth, 90 mL, at 12:15".
/// </summary>
internal static partial class OwnTimes
{
    // What is typed in longer after it happened has its day written too, or is asked about.
    private const int MostHoursLater = 12;

    /// <summary>The row without those words, and when it was; as they are where its details give no time, or its time is no stamp.</summary>
    public static (BlockRow Row, RowWhen When) Taken(BlockRow row, RowWhen when, BlockReading reading)
    {
        var slots = reading.Slots;
        if (slots.Kind < 0 || when.Start is not { } typed || !StampColumns.IsStamp(reading.Block, slots.Time >= 0 ? slots.Time : slots.Date)) return (row, when);
        for (var i = 0; i < row.Cells.Count; i++)
        {
            if (reading.Block.Columns.ElementAtOrDefault(i)?.Role is not Role.Detail || row[i].Cell.Words is not { } text || Told().Matches(text) is not [var told]) continue;
            if (At(told.Groups["from"].Value, typed.Stated) is not { } start) continue;
            var cells = (Cell[])row[i].Row.Cells.Clone();
            cells[row[i].Column] = Cell.Of((text[..told.Index] + text[(told.Index + told.Length)..]).Trim(' ', ',', ';', '.'));
            var end = told.Groups["to"].Success && CellTimes.Clock(told.Groups["to"].Value).TryGet(out var until) ? RowTimesReader.After(UncertainTime.Exactly(start), until.Start, MostHoursLater) : null;
            var changed = row[i].Row with { Cells = cells };
            return (new BlockRow([.. row.Cells.Select(c => c.Row == row[i].Row ? c with { Row = changed } : c)]), when with { Start = UncertainTime.Exactly(start), End = end });
        }

        return (row, when);
    }

    // The last such time before the moment of typing.
    private static LocalDateTime? At(string clock, LocalDateTime typed)
    {
        if (!CellTimes.Clock(clock).TryGet(out var read) || read.Start.Precision != TimePrecision.Exact) return null;
        var halves = read.Start.Half == HalfOfDay.Unknown && !read.Start.TwentyFourHour ? new[] { HalfOfDay.Am, HalfOfDay.Pm } : [read.Start.Half];
        var before = halves.Select(h => typed.Date.At(read.Start.In(h).Time)).Where(t => t <= typed && t >= typed.PlusHours(-MostHoursLater)).ToList();
        return before.Count > 0 ? before.Max() : null;
    }

    [GeneratedRegex(@"\b(?:(?:started|began|begun|from|at)\s+(?:at\s+)?(?<from>" + Clock + @")(?:\s*(?:,|-|–|to|until|till|;)\s*(?:(?:done|finished|ended|stopped)\s+(?:at\s+)?)?(?<to>" + Clock + @"))?|(?<from>" + Clock + @")\s*(?:-|–|to|until|till)\s*(?<to>" + Clock + @"))", RegexOptions.IgnoreCase)]
    private static partial Regex Told();

    private const string Clock = @"\d{1,2}[:.h]\d{2}\s*(?:am|pm|a\.m\.|p\.m\.)?|\d{1,2}\s*(?:am|pm)";
}
