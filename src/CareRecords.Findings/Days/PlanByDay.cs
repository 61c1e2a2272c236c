using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>A plan number in force.</summary>
/// <param name="Value">The number (the lower end of a range).</param>
/// <param name="IsDefault">True: "default, not your plan".</param>
internal readonly record struct PlanNumber(double Value, bool IsDefault);

/// <summary>The plan asked day by day; between two dates of an item's rows the answer is looked up once.</summary>
internal sealed class PlanByDay(CarePlan plan)
{
    private readonly Dictionary<PlanItem, LocalDate[]> _dates = plan.Rows.Where(r => r.From is not null).GroupBy(r => r.Item)
        .ToDictionary(g => g.Key, g => g.Select(r => r.From!.Value).Distinct().Order().ToArray());

    private readonly Dictionary<(PlanItem, int), PlanValue?> _known = [];

    public LocalTime DayStarts { get; } = plan.DayStarts;

    public LocalDate DayOf(LocalDateTime at) => CareDay.Of(at, DayStarts);

    public LocalDate DayOf(UncertainTime at) => CareDay.Of(at.Stated, DayStarts);

    public PlanValue? Value(PlanItem item, LocalDate day)
    {
        var stretch = Stretch(item, day);
        if (!_known.TryGetValue((item, stretch), out var value))
            _known[(item, stretch)] = value = plan.ValueFor(item, day);
        return value;
    }

    public double? Number(PlanItem item, LocalDate day) => Value(item, day)?.Low;

    /// <summary>A number that always exists: the plan's, else its starting value, else <paramref name="otherwise"/> (a plan row that is no number).</summary>
    public PlanNumber Required(PlanItem item, LocalDate day, double otherwise) =>
        Value(item, day) is { Low: { } number } value ? new(number, value.IsDefault) : new(otherwise, true);

    /// <summary>How many of the item's dates lie on or before the day.</summary>
    private int Stretch(PlanItem item, LocalDate day)
    {
        if (!_dates.TryGetValue(item, out var dates)) return 0;
        var at = Array.BinarySearch(dates, day);
        return at >= 0 ? at + 1 : ~at;
    }
}
