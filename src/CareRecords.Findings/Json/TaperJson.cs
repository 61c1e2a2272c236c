using System.Text.Json;

namespace CareRecords.Findings;

/// <summary>Steps in findings.json: as done under <c>taper</c>, the plan's under <c>taperPlanned</c>.</summary>
internal static class TaperJson
{
    public static void Write(Utf8JsonWriter json, TaperFindings taper)
    {
        json.Objects("taper", taper.Done, s => Step(json, s));
        json.Objects("taperPlanned", taper.Planned, s =>
        {
            json.Day("from", s.From);
            json.Day("to", s.To);
            json.Number("sessionsPerDay", s.SessionsPerDay);
            json.Number("minutesPerArea", s.MinutesPerArea);
            if (s.Parts is { } parts) json.Object("minutes", parts, p => { json.Number("lower", p.Lower); json.Number("upper", p.Upper); json.Number("vibration", p.Vibration); });
        });
        json.WriteString("weanInWords", taper.WeanInWords);
    }

    private static void Step(Utf8JsonWriter json, TaperStep step)
    {
        json.WriteString("id", step.Id);
        json.Day("from", step.From);
        json.Day("to", step.To);
        json.WriteNumber("daysHeld", step.DaysHeld);
        json.Number("sessionsPerDay", step.SessionsPerDay);
        json.Number("minutesPerArea", step.MinutesPerArea);
        json.Object("planned", step.PlannedSessionsPerDay is null && step.PlannedMinutesPerArea is null ? null : step, s =>
        {
            json.Number("sessionsPerDay", s.PlannedSessionsPerDay);
            json.Number("minutesPerArea", s.PlannedMinutesPerArea);
        });
        json.WriteString("direction", JsonValues.Lower(step.Direction));
        json.Text("episode", step.Episode);
        json.Number("dayOfEpisode", step.DayOfEpisode);
        json.Number("stableHoursBefore", step.StableHoursBefore);
        json.Text("stableInWords", step.StableInWords);
        json.WriteString("followedBy", JsonValues.Lower(step.FollowedBy));
        json.WriteString("followedWithin14", JsonValues.Lower(step.FollowedWithin14));
        json.WriteString("followedWithin30", JsonValues.Lower(step.FollowedWithin30));
        json.WriteString("followedByWhat", step.FollowedByWhat);
        json.Text("differsFromPlan", step.DiffersFromPlan);
    }
}
