using CareRecords.Findings;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Steps as done beside the plan, and what followed; the plan's own steps below.</summary>
internal static class TaperSheet
{
    public const string Table = "Steps";

    public const string Within7 = "within 7 days";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Taper);
        var taper = rows.Findings.Taper;
        IReadOnlyList<Column<TaperStep>> columns = Columns(rows);
        TableSheet.Dress(
            sheet, "Steps up and down", "Steps as done, found in the daily sessions and minutes. Under 'within 7, 14, 30 days' a step down is 'setback' or 'steady' by what was written then ('cannot tell': the record ends sooner or is too thin); it does not say why.");
        var place = TableSheet.Write(book, sheet, Table, columns, taper.Done);
        book.Put(sheet.Cell(place.LastRow + 1, 1), taper.WeanInWords);
        var at = place.LastRow + 4;
        book.Put(sheet.Cell(at - 1, 1), "The plan's own steps");
        sheet.Cell(at - 1, 1).Style.Font.Bold = true;
        IReadOnlyList<Column<(int Number, PlannedStep Step)>> planned =
        [
            new("plan step", 8, p => CellContent.Of(FormattableString.Invariant($"P{p.Number}"))),
            new("plan from", 12, p => CellContent.Of(p.Step.From)) { Format = Format.ShortDay },
            new("plan to", 12, p => CellContent.Of(p.Step.To)) { Format = Format.ShortDay },
            new("days", 8, p => CellContent.Of(NodaTime.Period.DaysBetween(p.Step.From, p.Step.To) + 1).By($"{Formula.This("PlannedSteps", "plan to")}-{Formula.This("PlannedSteps", "plan from")}+1")) { Format = Format.Whole },
            new("sessions a day, plan", 9, p => CellContent.Of(p.Step.SessionsPerDay)) { Format = Format.UpToTwo },
            new("minutes per area, plan", 9, p => CellContent.Of(p.Step.MinutesPerArea)) { Format = Format.UpToTwo, Remark = "Where the plan sets lower, upper or vibration apart, the median over the parts usually treated." },
            .. taper.Planned.Any(p => p.Parts is not null) ? PlannedParts : [],
        ];
        TableSheet.Write(book, sheet, "PlannedSteps", planned, [.. taper.Planned.Select((p, i) => (i + 1, p))], at, setWidths: false);
        PageDress.Apply(sheet, landscape: true, Blue);
        return place;
    }

    private static IReadOnlyList<Column<(int Number, PlannedStep Step)>> PlannedParts =>
    [
        new("lower, plan", 9, p => CellContent.Of(Part(p.Step, m => m.Lower))) { Format = Format.UpToTwo },
        new("upper, plan", 9, p => CellContent.Of(Part(p.Step, m => m.Upper))) { Format = Format.UpToTwo },
        new("vibration, plan", 10, p => CellContent.Of(Part(p.Step, m => m.Vibration))) { Format = Format.UpToTwo },
    ];

    /// <summary>A part's minutes; the median over the usual parts stands for it only while the plan sets no part apart.</summary>
    private static double? Part(PlannedStep step, Func<PartMinutes, double?> minutes) => step.Parts is { } parts ? minutes(parts) : step.MinutesPerArea;

    private static CellContent Plan(double? most, string? inWords) => inWords is null ? CellContent.Of(most) : CellContent.Of(inWords);

    private static IReadOnlyList<Column<TaperStep>> Columns(ReviewRows rows) =>
    [
        new("step", 9, s => CellContent.Of(s.Id).To(rows.FirstSessionOn(s.From))),
        new("from", 11, s => CellContent.Of(s.From)) { Format = Format.ShortDay },
        new("to", 11, s => CellContent.Of(s.To)) { Format = Format.ShortDay },
        new("days held", 6, s => CellContent.Of(s.DaysHeld).By($"{Formula.This(Table, "to")}-{Formula.This(Table, "from")}+1")) { Format = Format.Whole },
        new("sessions a day", 9, s => CellContent.Of(s.SessionsPerDay)) { Format = Format.UpToTwo },
        new("minutes per area", 9, s => CellContent.Of(s.MinutesPerArea)) { Format = Format.UpToTwo, Remark = "The median over all parts treated, vibration too; lower, upper and vibration stand apart at the right." },
        new("sessions a day planned", 9, s => Plan(s.PlannedSessionsPerDay, s.PlannedSessionsInWords)) { Format = Format.UpToTwo, Wrap = true },
        new("minutes per area planned", 9, s => Plan(s.PlannedMinutesPerArea, s.PlannedMinutesInWords)) { Format = Format.UpToTwo, Wrap = true },
        new("direction", 10, s => CellContent.Of(FindingWords.Direction(s))) { Wrap = true },
        new("episode", 9, s => CellContent.Of(s.Episode)),
        new("day of episode", 7.5, s => CellContent.Of(s.DayOfEpisode)) { Format = Format.Whole },
        new("hours stable before", 9, s => CellContent.Of(s.StableHoursBefore)) { Format = Format.Whole },
        new("hours counted from", 23, s => CellContent.Of(s.StableInWords)) { Wrap = true },
        new(Within7, 8.5, s => CellContent.Of(FindingWords.Outcome(s, s.FollowedBy))) { Wrap = true },
        new("within 14 days", 8.5, s => CellContent.Of(FindingWords.Outcome(s, s.FollowedWithin14))) { Wrap = true },
        new("within 30 days", 8.5, s => CellContent.Of(FindingWords.Outcome(s, s.FollowedWithin30))) { Wrap = true },
        new("differs from the plan", 24, s => CellContent.Of(s.DiffersFromPlan)) { Wrap = true },
        new("lower, minutes a side", 7.5, s => CellContent.Of(s.Parts.Lower)) { Format = Format.UpToTwo },
        new("upper, minutes a side", 7.5, s => CellContent.Of(s.Parts.Upper)) { Format = Format.UpToTwo },
        new("vibration, minutes a side", 9, s => CellContent.Of(s.Parts.Vibration)) { Format = Format.UpToTwo },
        new("what followed in 7 days, as written", 32, s => CellContent.Of(s.Direction == StepDirection.Same ? null : s.FollowedByWhat)) { Wrap = true },
    ];
}
