using CareRecords.Findings;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Steps as done beside the plan, and what followed; the plan's own steps below.</summary>
internal static class TaperSheet
{
    public const string Table = "Steps";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Taper);
        var taper = rows.Findings.Taper;
        IReadOnlyList<Column<TaperStep>> columns = Columns(rows);
        TableSheet.Dress(
            sheet, "Steps up and down", "Steps as done, found in the daily sessions and minutes. What followed is what was written in the 7, 14 and 30 days after ('cannot tell': the record ends sooner or is too thin); it does not say why.");
        var place = TableSheet.Write(book, sheet, Table, columns, taper.Done);
        book.Put(sheet.Cell(place.LastRow + 1, 1), taper.WeanInWords);
        var at = place.LastRow + 4;
        book.Put(sheet.Cell(at - 1, 1), "The plan's own steps");
        sheet.Cell(at - 1, 1).Style.Font.Bold = true;
        IReadOnlyList<Column<(int Number, PlannedStep Step)>> planned =
        [
            new("planned step", 8, p => CellContent.Of(FormattableString.Invariant($"P{p.Number}"))),
            new("plan from", 12, p => CellContent.Of(p.Step.From)) { Format = Format.ShortDay },
            new("plan to", 12, p => CellContent.Of(p.Step.To)) { Format = Format.ShortDay },
            new("days", 8, p => CellContent.Of(NodaTime.Period.DaysBetween(p.Step.From, p.Step.To) + 1).By($"{Formula.This("PlannedSteps", "plan to")}-{Formula.This("PlannedSteps", "plan from")}+1")) { Format = Format.Whole },
            new("sessions a day, plan", 9, p => CellContent.Of(p.Step.SessionsPerDay)) { Format = Format.UpToTwo },
            new("minutes per area, plan", 9, p => CellContent.Of(p.Step.MinutesPerArea)) { Format = Format.UpToTwo },
        ];
        TableSheet.Write(book, sheet, "PlannedSteps", planned, [.. taper.Planned.Select((p, i) => (i + 1, p))], at, setWidths: false);
        PageDress.Apply(sheet, landscape: true, Blue);
        return place;
    }

    private static IReadOnlyList<Column<TaperStep>> Columns(ReviewRows rows) =>
    [
        new("step", 8, s => CellContent.Of(s.Id).To(rows.FirstSessionOn(s.From))),
        new("from", 12, s => CellContent.Of(s.From)) { Format = Format.ShortDay },
        new("to", 12, s => CellContent.Of(s.To)) { Format = Format.ShortDay },
        new("days held", 8, s => CellContent.Of(s.DaysHeld).By($"{Formula.This(Table, "to")}-{Formula.This(Table, "from")}+1")) { Format = Format.Whole },
        new("sessions a day", 9, s => CellContent.Of(s.SessionsPerDay)) { Format = Format.UpToTwo },
        new("minutes per area", 9, s => CellContent.Of(s.MinutesPerArea)) { Format = Format.UpToTwo },
        new("sessions a day planned", 9, s => CellContent.Of(s.PlannedSessionsPerDay)) { Format = Format.UpToTwo },
        new("minutes per area planned", 9, s => CellContent.Of(s.PlannedMinutesPerArea)) { Format = Format.UpToTwo },
        new("direction", 9, s => CellContent.Of(FindingWords.Direction(s))) { Wrap = true },
        new("episode", 8, s => CellContent.Of(s.Episode)),
        new("day of episode", 8, s => CellContent.Of(s.DayOfEpisode)) { Format = Format.Whole },
        new("hours stable before", 9, s => CellContent.Of(s.StableHoursBefore)) { Format = Format.Whole },
        new("followed by", 11, s => CellContent.Of(FindingWords.Outcome(s.FollowedBy))),
        new("followed by, 14 days", 11, s => CellContent.Of(FindingWords.Outcome(s.FollowedWithin14))),
        new("followed by, 30 days", 11, s => CellContent.Of(FindingWords.Outcome(s.FollowedWithin30))),
        new("what followed, as written", 32, s => CellContent.Of(s.FollowedByWhat)) { Wrap = true },
        new("differs from the plan", 28, s => CellContent.Of(s.DiffersFromPlan)) { Wrap = true },
    ];
}
