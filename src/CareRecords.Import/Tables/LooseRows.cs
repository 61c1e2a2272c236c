using CareRecords.Import.Accounting;
using CareRecords.Import.Notes;
using CareRecords.Import.Reading;
using CareRecords.Import.Tables.Layouts;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables;

/// <summary>Reads the rows that stand outside the tables: titles, legends, remarks, and notes that tell of an event.</summary>
internal static class LooseRows
{
    private const int MostDaysApart = 60;

    /// <summary>Keeps the words that are explained and the events that are told, asks about what may be one, and sets the rest aside. Gives the order of the areas where a row names one.</summary>
    /// <param name="place">The sheet or file.</param>
    /// <param name="parts">The rows, apart.</param>
    /// <param name="into">Added to.</param>
    /// <param name="context">Of the source.</param>
    /// <param name="order">Of day and month; null when it is not settled.</param>
    /// <param name="near">A day about which the table is; null when none is known.</param>
    /// <param name="from">The day that the title names; null when it names none.</param>
    public static IReadOnlyList<AreaName> Read(Place place, SheetParts parts, Gathered into, SourceContext context, DateOrder? order, LocalDate? near, LocalDate? from)
    {
        // A form of one day: its table has no days of its own.
        var day = parts.Blocks is [{ IsAcross: false } only] && !only.Columns.Any(c => c.Role == Role.Date) ? from : null;
        IReadOnlyList<AreaName> areaOrder = [];
        foreach (var (row, why) in parts.Loose)
        {
            var text = string.Join(" ", row.Cells.Where(c => !c.IsEmpty).Select(c => c.Words));
            var words = why is null ? Legends.Words(text) : [];
            if (why is null && words.Count == 0 && HasClock(text))
            {
                if ((WithItsDay(place, text, context, order, near) ?? OfTheForm(place, row, text, context, day)) is { } told)
                {
                    into.Entries.AddRange(told.Select(e => e with { Sources = [place.Of(row)] }));
                    into.Ledger.Mark(row.Line, row.LineCount, LineFate.InRecords);
                    continue;
                }

                if (LeftOvers.HoldsEvent(text))
                {
                    into.Problems.Add(new ImportProblem(place.Of(row), "This line stands outside the table; it may tell of something that happened.", "Move it under the headings, with its date and time, if it does.", ProblemSeverity.Ask));
                    continue;
                }
            }

            into.Words.AddRange(words);
            if (why is null && Legends.AreaOrder(text) is { Count: > 0 } found) areaOrder = found;
            into.SetAside.Add(new SetAsideLine(place.Of(row), why ?? (words.Count > 0 ? "the family's own words explained" : "a title or remark outside the table")));
            into.Ledger.Mark(row.Line, row.LineCount, LineFate.NotRecord);
        }

        return areaOrder;
    }

    // "10/7 8:00 PM temp 101.8 F" below the table: a note with its own day.
    private static IReadOnlyList<CareEntry>? WithItsDay(Place place, string text, SourceContext context, DateOrder? order, LocalDate? near) =>
        CellTimes.Read(Cell.Of(text.Split(' ')[0])) is { Date: not null, Clock: null }
        && NotesReader.Read(new SourceText(place.File, [text]), context.ForNotes(place.File, context.NotAfter ?? near) with { DateOrder = order }) is { Problems.Count: 0, Entries: { Count: > 0 } told }
        && told.All(e => e.When.IsExact && (near is not { } about || Math.Abs(Period.DaysBetween(about, e.When.Stated.Date)) < MostDaysApart)) ? told : null;

    // "Pump | ran 21:00–06:00 at 70 mL/hr" above the one table of a night: of its day.
    private static IReadOnlyList<CareEntry>? OfTheForm(Place place, GridRow row, string text, SourceContext context, LocalDate? day) =>
        day is { } of && row.Cells.Count(c => !c.IsEmpty) > 1
        && NotesReader.ReadCell(place.Of(row) with { Text = text }, new CellContext { Date = of }, context.ForNotes(place.File, null) with { Date = of }) is { Problems.Count: 0, Entries: { Count: > 0 } told }
        && told.All(e => e.When.IsExact) ? told : null;

    // "0710" beside the times that words of a table hold.
    private static bool HasClock(string text) => FreeWords.HasClock(text) || text.Split([' ', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries)
        .Any(w => w.Length == 4 && w.All(char.IsAsciiDigit) && !w.StartsWith("20", StringComparison.Ordinal) && CellTimes.Clock(w).Outcome == Outcome.Certain);
}
