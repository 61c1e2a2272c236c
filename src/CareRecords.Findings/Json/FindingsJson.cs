using System.Text.Encodings.Web;
using System.Text.Json;
using CareRecords.Records;

namespace CareRecords.Findings;

/// <summary>Writes findings as findings.json (docs/file-formats.md).</summary>
public static class FindingsJson
{
    /// <summary>Writes UTF-8 JSON; what is unknown is null. The stream stays open.</summary>
    /// <param name="findings">The findings.</param>
    /// <param name="output">Where to.</param>
    public static void Write(ChildFindings findings, Stream output)
    {
        ArgumentNullException.ThrowIfNull(findings);
        ArgumentNullException.ThrowIfNull(output);
        using var json = new Utf8JsonWriter(output, new JsonWriterOptions { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        json.WriteStartObject();
        json.WriteString("definitions", ChildFindings.DefinitionsVersion);
        json.Object("span", findings.Span, s => Span(json, s));
        json.Objects("plan", findings.Plan, p => Plan(json, p));
        json.Objects("sessions", findings.Sessions, s => SessionJson.Write(json, s));
        json.Objects("days", findings.Days, d => DayJson.Write(json, d));
        json.Object("adherence", findings.Adherence, a => AdherenceJson.Write(json, a));
        json.Object("baseline", findings.Baseline, b => Baseline(json, b));
        json.Text("baselineMissing", findings.BaselineMissing);
        EpisodeJson.Write(json, findings.Illness);
        TaperJson.Write(json, findings.Taper);
        json.Object("recovery", findings.Recovery, r => Recovery(json, r));
        json.Object("sessionEffect", findings.SessionEffect, e => Effect(json, e));
        json.Objects("saturationByFlow", findings.SaturationByFlow, f => ByFlow(json, f));
        json.Object("quality", findings.Quality, q => QualityJson.Write(json, q));
        json.Object("sinceLastReview", findings.SinceLastReview, s => Since(json, s));
        json.Objects("flags", findings.Flags, f => Flag(json, f));
        json.WriteEndObject();
    }

    private static void Span(Utf8JsonWriter json, ReviewSpan span)
    {
        var any = span.DaysWithRecords + span.DaysMissing.Count > 0;
        json.Day("from", any ? span.From : null);
        json.Day("to", any ? span.To : null);
        json.WriteString("zone", span.Zone);
        json.WriteString("dayStarts", NodaTime.Text.LocalTimePattern.CreateWithInvariantCulture("HH:mm").Format(span.DayStarts));
        json.WriteNumber("daysWithRecords", span.DaysWithRecords);
        json.WriteNumber("daysMissing", span.DaysMissing.Count);
        json.Strings("missingDays", span.DaysMissing.Select(NodaTime.Text.LocalDatePattern.Iso.Format));
    }

    private static void Plan(Utf8JsonWriter json, PlanValueInForce value)
    {
        json.WriteString("item", value.Name);
        json.Day("from", value.From);
        json.WriteString("value", value.Value);
        json.WriteString("unit", value.Unit);
        json.WriteBoolean("isDefault", value.IsDefault);
        json.WriteString("defaultSource", value.DefaultSource);
    }

    private static void Baseline(Utf8JsonWriter json, Baseline baseline)
    {
        json.Number("spo2", baseline.SpO2);
        json.Number("spo2Low", baseline.SpO2Low);
        json.Number("spo2High", baseline.SpO2High);
        json.Number("centreLow", baseline.CentreLow);
        json.Number("centreHigh", baseline.CentreHigh);
        json.Number("oxygen", baseline.Oxygen);
        json.WriteBoolean("oxygenFromPlan", baseline.OxygenFromPlan);
        json.WriteNumber("daysUsed", baseline.DaysUsed);
        json.WriteNumber("readings", baseline.Readings);
        json.WriteBoolean("provisional", baseline.Provisional);
        json.WriteString("method", baseline.Method);
    }

    private static void Recovery(Utf8JsonWriter json, RecoveryOverEpisodes recovery)
    {
        json.Objects("curve", recovery.Curve, p =>
        {
            json.Number("day", p.Day);
            json.Number("stillRecovering", p.Value);
            json.Number("low", p.Low);
            json.Number("high", p.High);
        });
        json.Number("median", recovery.Median);
        json.Number("medianLow", recovery.MedianLow);
        json.Number("medianHigh", recovery.MedianHigh);
        json.WriteNumber("episodes", recovery.Episodes);
        json.WriteNumber("censored", recovery.Censored);
        json.WriteString("method", recovery.Method);
    }

    private static void Effect(Utf8JsonWriter json, SessionEffect effect)
    {
        json.WriteNumber("pairs", effect.Pairs);
        json.WriteNumber("pairsLeftOut", effect.PairsLeftOut);
        json.Number("medianChange", effect.MedianChange);
        json.Number("low", effect.Low);
        json.Number("high", effect.High);
        json.Number("level", effect.Level);
        json.WriteString("method", effect.Method);
        json.WriteString("oximeter", effect.OximeterNote);
        json.Objects("byFlow", effect.ByFlow, f =>
        {
            json.Number("oxygen", f.OxygenLitresPerMinute);
            json.WriteNumber("pairs", f.Pairs);
            json.Number("medianChange", f.MedianChange);
            json.Number("low", f.Low);
            json.Number("high", f.High);
        });
    }

    private static void ByFlow(Utf8JsonWriter json, SaturationAtFlow flow)
    {
        json.Number("oxygen", flow.OxygenLitresPerMinute);
        json.WriteNumber("readings", flow.Readings);
        json.WriteNumber("days", flow.Days);
        json.Number("median", flow.Median);
        json.Number("lowerQuartile", flow.LowerQuartile);
        json.Number("upperQuartile", flow.UpperQuartile);
        json.Number("lowest", flow.Lowest);
        json.Number("highest", flow.Highest);
    }

    private static void Since(Utf8JsonWriter json, SinceLastReview since)
    {
        json.Day("lastDay", since.LastDay);
        json.WriteNumber("newDays", since.NewDays);
        json.WriteNumber("newDaysWritten", since.NewDaysWritten);
        json.Strings("newEpisodes", since.NewEpisodes);
        json.Object("feedGapThen", since.FeedGapThen, s => AdherenceJson.Share(json, s));
        json.Object("feedGapSince", since.FeedGapSince, s => AdherenceJson.Share(json, s));
        json.Object("inhalerGapThen", since.InhalerGapThen, s => AdherenceJson.Share(json, s));
        json.Object("inhalerGapSince", since.InhalerGapSince, s => AdherenceJson.Share(json, s));
        json.WriteNumber("corrections", since.Corrections);
        json.WriteNumber("answers", since.Answers);
    }

    private static void Flag(Utf8JsonWriter json, Flag flag)
    {
        json.Time("when", flag.When);
        json.WriteString("kind", JsonValues.Lower(flag.Kind));
        json.WriteString("what", flag.What);
        json.WriteString("why", flag.Why);
        SourceJson.Write(json, "sources", flag.Sources);
    }
}

/// <summary>Where something was written, as in records.json.</summary>
internal static class SourceJson
{
    public static void Write(Utf8JsonWriter json, string name, IReadOnlyList<SourceLine> sources) => json.Objects(name, sources, s =>
    {
        json.WriteString("file", s.File);
        if (s.Line is { } line) json.WriteNumber("line", line);
        if (s.Sheet is not null) json.WriteString("sheet", s.Sheet);
        if (s.Cell is not null) json.WriteString("cell", s.Cell);
        json.WriteString("text", s.Text);
    });
}
