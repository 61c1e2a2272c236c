using NodaTime;

namespace CareRecords.Pooling;

/// <summary>Turns care days into day numbers; a day before day 0 (an uncertain onset) is negative.</summary>
internal readonly record struct DayNumbers(LocalDate DayZero)
{
    public int Of(LocalDate day) => Period.DaysBetween(DayZero, day);
}
