using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Finds rows after midnight that stand under the date on which the night began: under a heading or beside a cell that says night or shift, or, in a table
/// whose rows run forward in time, again and again below an evening of the same date.
/// </summary>
internal static class NightShifts
{
    private const int Evening = 18 * 60;
    private const int Morning = 6 * 60;
    private const int EndOfNight = 10 * 60;
    private const int FewestWithoutWords = 2;

    /// <summary>Lines whose day is the one after the date written; with <c>Open</c> the lines that may be, where the table does not tell.</summary>
    public static (HashSet<int> Next, HashSet<int> Open) Of(Block block)
    {
        var (date, time, part) = (Find(block, Role.Date), Find(block, Role.Time, Role.Start), Find(block, Role.Part));
        if (date < 0 || time < 0 || block.IsAcross) return ([], []);
        // "OVERNIGHT (night of)" above the table: each of its mornings is of the night that began the evening before.
        var titled = block.Titles.Count > 0 && Lexicon.Split(block.Titles[^1]) is { Count: <= 6 } title && title.Any(w => w is "overnight" or "night" or "nights") && title.All(w => w is "overnight" or "night" or "nights" or "of" or "checks" or "table" or "sats" or "readings" or "the" or "shift");
        var says = titled || Lexicon.Split(block.Columns[date].Heading).Any(w => w is "shift" or "night" or "nights");
        var (nights, later) = (new List<int>(), new HashSet<int>());
        var (evening, backwards, calendar, last) = (false, 0, 0, -1);
        string? written = null, ofNight = null;
        foreach (var row in block.Rows)
        {
            var dated = row[date].Cell.Words;
            if (dated is not null && dated != written) (written, evening, last) = (dated, false, -1);
            if (dated is null || Minutes(row[time].Cell) is not { } minutes) continue;
            var isNight = titled || IsNight(row[part].Cell.Words);
            if (minutes < (isNight ? EndOfNight : Morning) && (evening || isNight))
            {
                nights.Add(row[0].Row.Line);
                ofNight = written;
                if (evening) later.Add(row[0].Row.Line);
                continue;
            }

            // A night of the calendar's own date stands above the day that follows it.
            if (!evening && nights.Count > 0 && !later.Contains(nights[^1]) && last < 0 && ofNight == written && !isNight) calendar++;
            if (minutes < last) backwards++;
            last = minutes;
            evening |= minutes >= Evening;
        }

        if (nights.Count == 0) return ([], []);
        var hasParts = part >= 0 && block.Rows.Any(r => IsNight(r[part].Cell.Words));
        if ((says || hasParts) && calendar == 0 && (says || later.Count > 0)) return ([.. nights], []);
        if (later.Count >= FewestWithoutWords && backwards == 0 && calendar == 0) return (later, []);
        return ([], later);
    }

    /// <summary>True for "N", "night".</summary>
    public static bool IsNight(string? words) => words?.Trim().TrimEnd('.').ToLowerInvariant() is "n" or "night" or "nights" or "nite" or "overnight" or "night shift";

    /// <summary>True for "D", "N", "day", "night": which shift.</summary>
    public static bool IsShift(string? words) => IsNight(words) || words?.Trim().TrimEnd('.').ToLowerInvariant() is "d" or "day" or "days" or "day shift" or "l" or "late" or "e" or "early";

    private static int Find(Block block, params Role[] roles) => block.Columns.ToList().FindIndex(c => roles.Contains(c.Role));

    private static int? Minutes(Cell cell) =>
        CellTimes.Read(cell).Clock is { Start: { Half: not HalfOfDay.Unknown, DayPart: null } start } ? start.Time.Hour * 60 + start.Time.Minute : null;
}
