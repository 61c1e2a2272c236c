using NodaTime;

namespace CareRecords.Workbooks.Building;

/// <summary>Calendar weeks of care days, Monday first.</summary>
internal static class Weeks
{
    public static LocalDate MondayOf(LocalDate day) => day.DayOfWeek == IsoDayOfWeek.Monday ? day : day.Previous(IsoDayOfWeek.Monday);
}
