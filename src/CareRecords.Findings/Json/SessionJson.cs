using System.Text.Json;

namespace CareRecords.Findings;

/// <summary>One session in findings.json.</summary>
internal static class SessionJson
{
    public static void Write(Utf8JsonWriter json, SessionFinding session)
    {
        json.WriteNumber("number", session.Number);
        json.Time("start", session.Start);
        json.Day("careDay", session.CareDay);
        json.Number("minutes", session.Minutes);
        json.Number("minutesPerArea", session.MinutesPerArea);
        json.Number("minutesPerAreaPlanned", session.MinutesPerAreaPlanned);
        json.Object("minutesAgainstPlan", session.AgainstPlan, m =>
        {
            json.Number("done", m.Done);
            json.Number("planned", m.Planned);
            json.Number("notWritten", m.NotWritten);
        });
        json.Strings("areasLeftOut", session.AreasLeftOut);
        json.Object("feedGap", session.FeedGap, g =>
        {
            json.Number("low", g.LowMinutes);
            json.Number("high", g.HighMinutes);
            json.WriteString("verdict", JsonValues.Lower(g.Verdict));
            json.Number("limit", g.LimitMinutes);
            json.WriteBoolean("limitIsDefault", g.LimitIsDefault);
            json.WriteBoolean("feedRunning", g.FeedRunning);
            json.WriteString("why", g.Why);
        });
        json.Object("inhalerGap", session.InhalerGap, g =>
        {
            json.Number("low", g.LowMinutes);
            json.Number("high", g.HighMinutes);
            json.Text("medicine", g.Medicine);
            json.WriteString("verdict", JsonValues.Lower(g.Verdict));
            json.Number("limit", g.LimitMinutes);
            json.Number("window", g.WindowMinutes);
            json.WriteBoolean("limitIsDefault", g.LimitIsDefault);
            json.WriteString("why", g.Why);
        });
        json.Objects("order", session.Order, o =>
        {
            json.WriteString("medicine", o.Dose.Medicine);
            json.Time("given", o.Dose.When.Stated);
            json.Flag("inOrder", o.InOrder);
            json.WriteString("why", o.Why);
        });
        json.Object("before", session.Before, r => Reading(json, r));
        json.Object("after", session.After, r => Reading(json, r));
        json.Text("episode", session.Episode);
        json.Text("step", session.Step);
    }

    private static void Reading(Utf8JsonWriter json, SaturationReading reading)
    {
        json.Number("spo2", reading.SpO2);
        json.Number("oxygen", reading.OxygenLitresPerMinute);
    }
}
