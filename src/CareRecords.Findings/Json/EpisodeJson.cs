using System.Text.Json;

namespace CareRecords.Findings;

/// <summary>Illness episodes in findings.json: the main definition's under <c>episodes</c>, each definition's under its own key.</summary>
internal static class EpisodeJson
{
    public static void Write(Utf8JsonWriter json, IllnessFindings illness)
    {
        json.Objects("episodes", illness.Episodes, e => Episode(json, e));
        json.Objects("episodesByRecord", illness.ByRecord, e => Episode(json, e));
        json.Objects("episodesByModel", illness.ByModel, e => Episode(json, e));
        json.Objects("course", illness.Course, e =>
        {
            json.WriteString("episode", e.Episode);
            json.Day("day", e.Day);
            json.Text("clock", e.Clock is { } clock ? NodaTime.Text.LocalTimePattern.CreateWithInvariantCulture("HH:mm").Format(clock) : null);
            json.WriteString("kind", JsonValues.Lower(e.Kind));
            json.WriteString("what", e.What);
            SourceJson.Write(json, "sources", e.Sources);
        });
        json.Object("illness", illness, i =>
        {
            json.WriteString("mainDefinition", i.MainDefinition);
            json.Text("modelMissing", i.ModelMissing);
            json.WriteNumber("daysByRecord", i.IllnessDays.ByRecord);
            json.WriteNumber("daysByModel", i.IllnessDays.ByModel);
            json.WriteNumber("daysByBoth", i.IllnessDays.ByBoth);
            json.WriteString("spread", i.Spread);
        });
    }

    private static void Episode(Utf8JsonWriter json, EpisodeFinding episode)
    {
        json.WriteString("id", episode.Id);
        json.Day("onset", episode.Onset);
        json.Day("onsetLow", episode.OnsetLow);
        json.Day("onsetHigh", episode.OnsetHigh);
        json.WriteString("evidence", episode.Evidence);
        json.Day("peak", episode.Peak);
        json.Number("lowestSpo2", episode.LowestSpO2);
        json.Number("highestOxygen", episode.HighestOxygen);
        json.WriteNumber("mostSessions", episode.MostSessions);
        json.Text("relapseOf", episode.RelapseOf);
        json.Number("daysSincePreviousRecovery", episode.DaysSincePreviousRecovery);
        json.Object("recovery", episode.Recovery, r => Recovery(json, r));
        json.Number("backToMaintenanceDays", episode.BackToMaintenanceDays);
        SourceJson.Write(json, "sources", episode.Sources);
    }

    private static void Recovery(Utf8JsonWriter json, RecoveryFinding recovery)
    {
        json.Number("daysLow", recovery.DaysLow);
        json.Number("daysHigh", recovery.DaysHigh);
        json.Number("estimate", recovery.Estimate);
        json.Number("low", recovery.Low);
        json.Number("high", recovery.High);
        json.Number("level", recovery.Level);
        json.WriteBoolean("censored", recovery.Censored);
        json.WriteString("method", recovery.Method);
        json.Objects("curve", recovery.Curve, p =>
        {
            json.Number("day", p.Day);
            json.Number("spo2", p.Value);
            json.Number("low", p.Low);
            json.Number("high", p.High);
        });
    }
}
