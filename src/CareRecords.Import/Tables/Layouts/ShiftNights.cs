using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// A table with a row a shift, whose times stand in the cells: the night row under a day's row of the same date is the night that follows it, so what its
/// cells tell of the small hours is of the next day.
/// </summary>
internal static class ShiftNights
{
    private static readonly LocalTime EndOfNight = new(10, 0);

    /// <summary>Lines of night rows that begin on the date above them.</summary>
    public static HashSet<int> Of(Block block)
    {
        var columns = block.Columns.ToList();
        var (date, part) = (columns.FindIndex(c => c.Role == Role.Date), columns.FindIndex(c => c.Role == Role.Part));
        var found = new HashSet<int>();
        if (date < 0 || part < 0 || block.IsAcross || columns.Exists(c => c.Role is Role.Time or Role.Start)) return found;
        var afterDay = false;
        string? written = null;
        foreach (var row in block.Rows)
        {
            if (row[date].Cell.Words is { } dated && dated != written) (written, afterDay) = (dated, false);
            if (!NightShifts.IsNight(row[part].Cell.Words)) afterDay |= NightShifts.IsShift(row[part].Cell.Words);
            else if (afterDay) found.Add(row[0].Row.Line);
        }

        return found;
    }

    /// <summary>The entry with its small hours moved to the day after <paramref name="day"/>.</summary>
    public static CareEntry Moved(CareEntry entry, LocalDate day) => entry with { Start = Moved(entry.Start, day), End = Moved(entry.End, day) };

    private static UncertainTime? Moved(UncertainTime? time, LocalDate day) =>
        time is null || time.Precision == TimePrecision.DayOnly || time.Stated.Date != day || time.Stated.TimeOfDay >= EndOfNight ? time
        : UncertainTime.Between(time.Earliest.PlusDays(1), time.Stated.PlusDays(1), time.Latest.PlusDays(1), time.Precision);
}
