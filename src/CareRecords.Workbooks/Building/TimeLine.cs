using NodaTime;

namespace CareRecords.Workbooks.Building;

/// <summary>Minutes on the time line, counted as the sheet's formulas count them: local seconds since <see cref="Start"/>, less the zone's offset.</summary>
internal sealed class TimeLine(IReadOnlyList<ClockStretch> stretches, LocalTime dayStarts)
{
    public IReadOnlyList<ClockStretch> Stretches => stretches;

    /// <summary>The local time that minutes are counted from.</summary>
    public LocalDateTime Start => stretches[0].EarliestFrom;

    public double Earliest(LocalDateTime at) => Minutes(at, stretches.Last(s => s.EarliestFrom <= at || s == stretches[0]));

    public double Latest(LocalDateTime at) => Minutes(at, stretches.Last(s => s.LatestFrom <= at || s == stretches[0]));

    public LocalDate CareDay(LocalDateTime at) => Records.CareDay.Of(at, dayStarts);

    private double Minutes(LocalDateTime at, ClockStretch stretch) =>
        (Period.Between(Start, LocalDateTime.Min(at, stretch.Until), PeriodUnits.Seconds).Seconds / 60.0) - stretch.OffsetMinutes;
}
