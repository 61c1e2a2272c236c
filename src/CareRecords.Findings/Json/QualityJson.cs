using System.Text.Json;

namespace CareRecords.Findings;

/// <summary>Quality in findings.json.</summary>
internal static class QualityJson
{
    public static void Write(Utf8JsonWriter json, QualityFindings quality)
    {
        json.WriteNumber("days", quality.Days);
        json.WriteNumber("daysWithRecords", quality.DaysWithRecords);
        json.Objects("byKind", quality.ByKind, k =>
        {
            json.WriteString("kind", k.Kind);
            json.WriteNumber("entries", k.Entries);
            json.WriteNumber("days", k.Days);
            json.WriteNumber("approximate", k.Approximate);
        });
        json.Object("digitPreference", quality.ClockMinutes, d =>
        {
            json.WriteNumber("times", d.Times);
            json.Number("multiplesOfFive", d.MultiplesOfFive);
            json.Number("multiplesOfFifteen", d.MultiplesOfFifteen);
            json.Number("index", d.Index);
        });
        json.Strings("lateEntries", quality.LateEntries);
        json.WriteNumber("readingsWithoutOxygen", quality.ReadingsWithoutOxygen);
        json.Strings("missing", quality.Missing);
    }
}
