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

    /// <summary>Settles every dated line in order.</summary>
    public static ResolvedDays Resolve(string file, IReadOnlyList<DatedLine> lines, ReadingContext context, (LocalDate Day, bool IsDay)? hint)
    {
        var order = context.DateOrder ?? Answered(context, file);
        var near = context.Date ?? hint?.Day;
        order ??= DateReader.OrderOf([.. lines.Select(l => l.Date)], near ?? context.NotAfter);
        var days = new Dictionary<int, LocalDate?>(lines.Count);
        var oneOff = new HashSet<int>();
        var doubts = new List<Doubt>();
        LocalDate? current = null;
        foreach (var line in lines)
        {
            var reading = DateReader.Settle(line.Date, order, current ?? near, current is null ? context.NotAfter : null, current is not null || (context.Date is null && hint is { IsDay: true }));
            if (reading.Outcome == Outcome.Certain)
            {
                var day = reading.Value;
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

    private static DateOrder? Answered(ReadingContext context, string file) => context.Answers.TryGetValue($"day-order:{file}", out var answer)
        ? answer.StartsWith("day", StringComparison.OrdinalIgnoreCase) ? DateOrder.DayMonthYear : answer.StartsWith("month", StringComparison.OrdinalIgnoreCase) ? DateOrder.MonthDayYear : null
        : null;
}
