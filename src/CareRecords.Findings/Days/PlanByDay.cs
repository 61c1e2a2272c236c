using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>A plan number in force.</summary>
/// <param name="Value">The number (the lower end of a range).</param>
/// <param name="IsDefault">True: "default, not your plan".</param>
internal readonly record struct PlanNumber(double Value, bool IsDefault);

/// <summary>The plan asked day by day, each answer looked up once.</summary>
internal sealed class PlanByDay(CarePlan plan)
{
    private readonly Dictionary<(PlanItem, LocalDate), PlanValue?> _known = [];

    public CarePlan Plan => plan;

    public LocalTime DayStarts { get; } = plan.DayStarts;

    public LocalDate DayOf(LocalDateTime at) => CareDay.Of(at, DayStarts);

    public LocalDate DayOf(UncertainTime at) => CareDay.Of(at.Stated, DayStarts);

    public PlanValue? Value(PlanItem item, LocalDate day)
    {
        if (!_known.TryGetValue((item, day), out var value))
            _known[(item, day)] = value = plan.ValueFor(item, day);
        return value;
    }

    public double? Number(PlanItem item, LocalDate day) => Value(item, day)?.Low;

    /// <summary>A number that always exists: the plan's, else its starting value, else <paramref name="otherwise"/> (a plan row that is no number).</summary>
    public PlanNumber Required(PlanItem item, LocalDate day, double otherwise) =>
        Value(item, day) is { Low: { } number } value ? new(number, value.IsDefault) : new(otherwise, true);
}
