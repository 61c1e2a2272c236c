using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Records;

/// <summary>The plan as understood: dated rows in the order of their dates. Where no row holds, a labelled starting value may.</summary>
public sealed record CarePlan
{
    /// <summary>A plan that states nothing.</summary>
    public static CarePlan Empty { get; } = new() { Rows = [] };

    /// <summary>The rows, undated first, then by date; rows that disagree were left out by the reader and listed as problems.</summary>
    public required IReadOnlyList<PlanRow> Rows { get; init; }

    /// <summary>The row that holds on a care day; null when the plan states nothing for that day.</summary>
    public PlanRow? RowFor(PlanItem item, LocalDate day) =>
        Rows.Where(r => r.Item == item && (r.From is null || r.From <= day))
            .MaxBy(r => r.From ?? LocalDate.MinIsoValue);

    /// <summary>The value in words on a care day: the plan's, else the labelled starting value, else null.</summary>
    public PlanValue? ValueFor(PlanItem item, LocalDate day) =>
        RowFor(item, day) is { } row
            ? new PlanValue(row.Value, row.Low, row.High, IsDefault: false, row)
            : PlanItems.Describe(item).Default is { } start
                ? new PlanValue(start, ReadNumber(start), ReadNumber(start), IsDefault: true, null)
                : null;

    /// <summary>The number on a care day, in the item's unit (the lower end of a range): the plan's or the starting value; null when there is none.</summary>
    public double? NumberFor(PlanItem item, LocalDate day) => ValueFor(item, day)?.Low;

    /// <summary>The clock time at which a care day starts: the plan's latest row, else 04:00.</summary>
    public LocalTime DayStarts =>
        Rows.LastOrDefault(r => r.Item == PlanItem.DayStarts) is { } row
        && LocalTimePattern.CreateWithInvariantCulture("H:mm").Parse(row.Value.Trim()).TryGetValue(LocalTime.Midnight, out var time)
            ? time
            : new LocalTime(4, 0);

    private static double? ReadNumber(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;
}

/// <summary>A plan value in force.</summary>
/// <param name="Text">As written.</param>
/// <param name="Low">Its number or the lower end of a range; null when not a number.</param>
/// <param name="High">The upper end; null when not a number.</param>
/// <param name="IsDefault">True when it is a starting value of the program and not the plan's.</param>
/// <param name="Row">The plan's row; null for a starting value.</param>
public sealed record PlanValue(string Text, double? Low, double? High, bool IsDefault, PlanRow? Row);
