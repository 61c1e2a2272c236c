using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Takes the day of each row from the moment at which it was typed in ("Timestamp"), where no column has the day (or one only where it "was not today") and one has the time of the event ("When").
/// A time later than the stamp of an early hour is of the evening before; where the time is left blank, the event was about when it was typed.
/// </summary>
internal static class StampDays
{
    private static readonly LocalTime EarlyUntil = new(10, 0);
    private const int TypedAheadMinutes = 60;

    /// <summary>The block with the stamps as its days; as it is where it has a day of its own, or no time.</summary>
    /// <param name="block">The block.</param>
    /// <param name="order">The source's order of day and month; null when not known.</param>
    /// <param name="near">A day known to be near; null when none is.</param>
    public static Block Taken(Block block, DateOrder? order, LocalDate? near)
    {
        var other = Enumerable.Range(0, block.Columns.Count).FirstOrDefault(i => block.Columns[i].Role == Role.Date && StampColumns.IsOptional(block, i), -1);
        if (Enumerable.Range(0, block.Columns.Count).Any(i => i != other && block.Columns[i].Role == Role.Date && !(other >= 0 && StampColumns.IsStamp(block, i)))) return block;
        var stamp = Enumerable.Range(0, block.Columns.Count).FirstOrDefault(i => block.Columns[i].Role is Role.Unknown or Role.Time or Role.Start or Role.Kind or Role.Date && i != other && StampColumns.IsStamp(block, i) && StampColumns.Holds(block, i, w => w is { Date: not null, Clock: not null }), -1);
        var time = Enumerable.Range(0, block.Columns.Count).FirstOrDefault(i => i != stamp && block.Columns[i].Role is Role.Time or Role.Start or Role.Unknown && StampColumns.Holds(block, i, w => w is { Date: null, Clock: not null }), -1);
        if (stamp < 0 || time < 0) return block;
        var columns = block.Columns.Select((c, i) => i == stamp ? c with { Role = Role.Date } : i == time ? c with { Role = Role.Time } : i == other ? c with { Role = Role.Ignore } : c);
        return block with { Columns = [.. columns], Rows = [.. block.Rows.Select(r => Taken(r, stamp, time, other, order, near))] };
    }

    private static BlockRow Taken(BlockRow row, int stamp, int time, int other, DateOrder? order, LocalDate? near)
    {
        if (CellTimes.Read(row[stamp].Cell) is not { Outcome: Outcome.Certain, Date: { } written, Clock.Start.Time: var typed } || !DateReader.Settle(written, order, near).TryGet(out var day)) return row;
        // "Date (if not today)": the day of the row where it is filled in.
        if (other >= 0 && !row[other].Cell.IsEmpty)
        {
            var told = row[stamp].Row.Cells.ToArray();
            told[stamp] = row[other].Cell;
            return new BlockRow([.. row.Cells.Select(c => c with { Row = c.Row with { Cells = told } })]);
        }

        var at = CellTimes.Read(row[time].Cell);
        var evening = at is { Clock.Start: { Half: HalfOfDay.Pm, Time: var clock } } && typed < EarlyUntil && Period.Between(typed, clock, PeriodUnits.Minutes).Minutes > TypedAheadMinutes;
        var cells = row[stamp].Row.Cells.ToArray();
        cells[stamp] = new Cell(CellKind.Date, row[stamp].Cell.Text, 0, (evening ? day.PlusDays(-1) : day).AtMidnight());
        // "6.15" typed in at 18:40 was at a quarter past six in the evening.
        if (at is { Clock: { End: null, Start: { Half: HalfOfDay.Unknown, DayPart: null, Time: var bare } } })
        {
            var evenings = bare.PlusHours(bare.Hour < 12 ? 12 : 0);
            var last = Period.Between(typed, evenings, PeriodUnits.Minutes).Minutes <= TypedAheadMinutes ? evenings : bare.PlusHours(bare.Hour >= 12 ? -12 : 0);
            cells[time] = Cell.Of(last.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture));
        }

        if (row[time].Cell.IsEmpty) cells[time] = Cell.Of("about " + typed.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture));
        return new BlockRow([.. row.Cells.Select(c => c with { Row = c.Row with { Cells = cells } })]);
    }
}
