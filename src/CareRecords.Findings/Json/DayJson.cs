using System.Text.Json;

namespace CareRecords.Findings;

/// <summary>One care day in findings.json.</summary>
internal static class DayJson
{
    public static void Write(Utf8JsonWriter json, DayFinding day)
    {
        json.Day("day", day.Day);
        json.WriteBoolean("hasRecords", day.HasRecords);
        json.WriteNumber("sessionsDone", day.SessionsDone);
        json.Number("sessionsPlanned", day.SessionsPlanned);
        json.WriteNumber("omittedWithReason", day.SessionsOmittedWithReason);
        json.WriteNumber("omittedWithoutReason", day.SessionsOmittedWithoutReason);
        json.Number("minutes", day.Minutes);
        json.WriteNumber("sessionsWithoutMinutes", day.SessionsWithoutMinutes);
        json.Number("minutesPerArea", day.MinutesPerArea);
        json.Number("minutesPerAreaPlanned", day.MinutesPerAreaPlanned);
        json.WriteNumber("readings", day.Readings);
        json.Number("medianSpo2AtUsualOxygen", day.MedianSpO2AtUsualOxygen);
        json.Number("lowestSpo2", day.LowestSpO2);
        json.Number("highestOxygen", day.HighestOxygen);
        json.WriteNumber("feeds", day.Feeds);
        json.WriteNumber("doses", day.Doses);
        json.Strings("signs", day.Signs);
        json.Text("episode", day.Episode);
        json.Text("step", day.Step);
    }
}
