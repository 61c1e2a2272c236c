using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>A line of the text with a date of its own.</summary>
/// <param name="Line">Zero-based line.</param>
/// <param name="Date">As written.</param>
/// <param name="Written">The words.</param>
/// <param name="HasContent">Whether words of care follow on the line.</param>
/// <param name="Late">Whether it leads to an entry made later, for its day alone.</param>
internal sealed record DatedLine(int Line, DateWritten Date, string Written, bool HasContent, bool Late = false);

/// <summary>The day of each dated line.</summary>
/// <param name="Days">By line; null where the date is impossible or cannot be told.</param>
/// <param name="OneOff">Lines whose date is theirs alone: an older day told among newer ones.</param>
/// <param name="Doubts">Questions and refusals.</param>
internal sealed record ResolvedDays(Dictionary<int, LocalDate?> Days, HashSet<int> OneOff, List<Doubt> Doubts);

/// <summary>Settles the days of a whole text: one order of day and month for the source, years and weekdays from the neighbours.</summary>
internal static class DayResolver
{
    private const int FarAway = 60;
    private const int YearsBack = 6;

    /// <summary>Settles every dated line in order. Where no year is written, the weekdays tell it: the file may have been saved years after its days.</summary>
    public static ResolvedDays Resolve(string file, IReadOnlyList<DatedLine> lines, ReadingContext context, (LocalDate Day, bool IsDay)? hint)
    {
        var order = context.DateOrder ?? Answered(context, file);
        var first = Settled(file, lines, context, hint, order, context.Date ?? hint?.Day);
        var (fewest, telling) = Wrong(lines, first, hint?.Day);
        if (context.Date is not null || context.NotAfter is not { } saved || fewest * 5 <= telling || lines.Any(l => l.Date.Year is not null)) return first;
        var best = first;
        for (var back = 0; back <= YearsBack; back++)
        {
            var near = (hint?.Day ?? new LocalDate(saved.Year, 7, 1)).PlusYears(-back);
            var other = Settled(file, lines, context, hint, order, near);
            if (Wrong(lines, other, hint is null ? null : near).Wrong is var now && now < fewest) (best, fewest) = (other, now);
        }

        return fewest * 5 <= telling ? best : first;
    }

    // Days that cannot be told, whose weekday is another than the written one, or that lie far from the day before them or from the title's; of those with a weekday.
    private static (int Wrong, int Telling) Wrong(IReadOnlyList<DatedLine> lines, ResolvedDays resolved, LocalDate? title)
    {
        var (wrong, telling, last) = (0, 0, (LocalDate?)null);
        foreach (var line in lines.Where(l => l.Date.DayOfWeek != IsoDayOfWeek.None && (l.Date.Day is not null || l.Date.Second is not null)))
        {
            telling++;
            if (resolved.Days.GetValueOrDefault(line.Line) is not { } day) { wrong++; continue; }
            if (day.DayOfWeek != line.Date.DayOfWeek || last is { } before && Math.Abs(Period.DaysBetween(before, day)) > FarAway) wrong++;
            if (last is null && title is { } named && Math.Abs(Period.DaysBetween(named, day)) > FarAway) return (lines.Count, lines.Count);
            last = day;
        }

        return (wrong, telling);
    }

    private static ResolvedDays Settled(string file, IReadOnlyList<DatedLine> lines, ReadingContext context, (LocalDate Day, bool IsDay)? hint, DateOrder? order, LocalDate? near)
    {
        order ??= DateReader.OrderOf([.. lines.Select(l => l.Date)], near ?? context.NotAfter);
        var days = new Dictionary<int, LocalDate?>(lines.Count);
        var oneOff = new HashSet<int>();
        var doubts = new List<Doubt>();
        LocalDate? current = null;
        var next = NextWhole(lines, order, near);
        for (var l = 0; l < lines.Count; l++)
        {
            var line = lines[l];
            var reading = DateReader.Settle(line.Date, order, current ?? near, current is null ? context.NotAfter : null, current is not null || (context.Date is null && hint is { IsDay: true }));
            if (reading.Outcome == Outcome.Certain)
            {
                var day = reading.Value;
                // "Sat: …" written up under Sunday, before Monday's heading: the Saturday before.
                if (current is { } sofar && IsWeekdayAlone(line.Date) && day > sofar && (next[l] ?? context.NotAfter) is { } limit && day > limit)
                {
                    day = sofar.DayOfWeek == line.Date.DayOfWeek ? sofar : sofar.Previous(line.Date.DayOfWeek);
                    days[line.Line] = day;
                    if (day < sofar && line.HasContent) oneOff.Add(line.Line);
                    continue;
                }

                // "1/2" alone, months away from the days around it, is no day.
                if (current is { } held && line.Date is { Month: null, Year: null, DayOfWeek: IsoDayOfWeek.None, First: <= 9, Second: <= 9 } && Math.Abs(Period.DaysBetween(held, day)) > FarAway)
                {
                    days[line.Line] = held;
                    doubts.Add(Doubts.Unclear(line.Line, file, $"'{line.Written}' could be a date or a fraction.", "a date", "a fraction"));
                    continue;
                }
                days[line.Line] = day;
                if (current is { } now && day < now && line.HasContent && (line.Late || line.Date.DayOfWeek == IsoDayOfWeek.None)) oneOff.Add(line.Line);
                else current = day;
                continue;
            }
            days[line.Line] = null;
            doubts.Add(reading.Outcome == Outcome.Impossible ? Doubts.BadDate(line.Line, line.Written)
                : near is null && context.NotAfter is null && current is null && line.Date.First is null ? Doubts.NoDay(line.Line, file) : Doubts.DayOrder(line.Line, file, line.Written));
        }
        return new ResolvedDays(days, oneOff, doubts);
    }

    private static bool IsWeekdayAlone(DateWritten date) => date is { DayOfWeek: not IsoDayOfWeek.None, Day: null, First: null, Month: null };

    // For each line the day of the next line that names day and month; null where none follows.
    private static LocalDate?[] NextWhole(IReadOnlyList<DatedLine> lines, DateOrder? order, LocalDate? near)
    {
        var next = new LocalDate?[lines.Count];
        LocalDate? whole = null;
        for (var l = lines.Count - 1; l >= 0; l--)
        {
            next[l] = whole;
            if ((lines[l].Date.Second is not null || lines[l].Date is { Day: not null, Month: not null }) && DateReader.Settle(lines[l].Date, order, near, null, false).TryGet(out var day)) whole = day;
        }

        return next;
    }

    private static DateOrder? Answered(ReadingContext context, string file) => context.Answers.TryGetValue($"day-order:{file}", out var answer)
        ? answer.StartsWith("day", StringComparison.OrdinalIgnoreCase) ? DateOrder.DayMonthYear : answer.StartsWith("month", StringComparison.OrdinalIgnoreCase) ? DateOrder.MonthDayYear : null
        : null;
}
