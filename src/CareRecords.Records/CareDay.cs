using NodaTime;

namespace CareRecords.Records;

/// <summary>The care day: it starts at a set clock time, so that a session at 00:30 belongs to the evening before.</summary>
public static class CareDay
{
    /// <summary>The care day that a local time belongs to; a time exactly at <paramref name="dayStarts"/> opens the new day.</summary>
    public static LocalDate Of(LocalDateTime at, LocalTime dayStarts) =>
        at.TimeOfDay < dayStarts ? at.Date.PlusDays(-1) : at.Date;
}
