using System.Text.Json;
using CareRecords.Findings;

namespace CareRecords.Pooling;

/// <summary>Pooled findings as JSON: plain numbers in the unit named, null for what is unknown or kept back, never NaN.</summary>
public static class PooledJson
{
    /// <summary>Writes the JSON, indented, to a stream that stays open.</summary>
    public static void Write(PooledFindings findings, Stream output)
    {
        ArgumentNullException.ThrowIfNull(findings);
        using var json = new Utf8JsonWriter(output, new JsonWriterOptions { Indented = true, NewLine = "\n" });
        json.WriteStartObject();
        json.Number("children", findings.Children);
        json.WriteStartObject("adherence");
        Gap(json, "feedGap", findings.FeedGap);
        Gap(json, "inhalerGap", findings.InhalerGap);
        json.WriteEndObject();
        Recovery(json, findings.Recovery);
        Setbacks(json, findings.Setbacks);
        json.List("groups", findings.GroupTests, test => Test(json, test));
        Completeness(json, findings.Completeness);
        json.WriteStartObject("disclosure");
        json.WriteNumber("smallestGroup", findings.Disclosure.SmallestGroup);
        json.List("suppressed", findings.Disclosure.Suppressed, cell =>
        {
            json.WriteString("table", cell.Table);
            json.WriteString("row", cell.Row);
            json.WriteString("why", cell.Why);
        });
        json.WriteEndObject();
        json.List("refused", findings.Refused, refused =>
        {
            json.WriteString("file", refused.File);
            json.WriteString("why", refused.Why);
        });
        json.Words("notes", findings.Notes);
        json.WriteStartObject("options");
        json.WriteNumber("seed", findings.Options.Seed);
        json.WriteNumber("bootstrapSamples", findings.Options.BootstrapSamples);
        json.WriteNumber("permutations", findings.Options.Permutations);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Gap(Utf8JsonWriter json, string name, PooledGap gap)
    {
        json.WriteStartObject(name);
        Share(json, gap.Model);
        json.WriteStartObject("twoStep");
        Share(json, gap.TwoStep);
        json.WriteEndObject();
        json.Number("children", gap.Counts?.Children);
        json.Number("kept", gap.Counts?.Kept);
        json.Number("judged", gap.Counts?.Judged);
        json.Number("unknown", gap.Counts?.Unknown);
        json.List("rows", gap.Forest, row =>
        {
            json.WriteString("row", row.Label);
            json.Number("children", row.Children);
            json.Number("judged", row.Judged);
            json.Number("proportion", row.Share);
            json.Number("low", row.Low);
            json.Number("high", row.High);
        });
        json.WriteEndObject();
    }

    private static void Share(Utf8JsonWriter json, PooledShare share)
    {
        json.Number("pooled", share.Pooled);
        json.Number("low", share.Low);
        json.Number("high", share.High);
        json.Number("tau2", share.Tau2);
        json.Number("i2", share.I2);
        json.Number("predictionLow", share.PredictionLow);
        json.Number("predictionHigh", share.PredictionHigh);
        json.WriteString("method", share.Method);
    }

    private static void Recovery(Utf8JsonWriter json, PooledRecovery recovery)
    {
        json.WriteStartObject("recovery");
        Curve(json, recovery.All);
        json.List("byGroup", recovery.ByStudyGroup, curve => Curve(json, curve));
        json.List("byAgeBand", recovery.ByAgeBand, curve => Curve(json, curve));
        json.List("byStability", recovery.ByStability, curve => Curve(json, curve));
        json.WriteEndObject();
    }

    private static void Curve(Utf8JsonWriter json, RecoveryCurve curve)
    {
        json.WriteString("label", curve.Label);
        json.Number("children", curve.Children);
        json.Number("episodes", curve.Episodes);
        json.Number("censored", curve.Censored);
        json.Number("median", curve.Median);
        json.Number("medianLow", curve.MedianLow);
        json.Number("medianHigh", curve.MedianHigh);
        json.WriteString("method", curve.Method);
        json.List("curve", curve.Curve, (CurvePoint point) =>
        {
            json.WriteNumber("day", point.Day);
            json.WriteNumber("stillRecovering", point.Value);
            json.Number("low", point.Low);
            json.Number("high", point.High);
        });
        if (curve.Weibull is not { } weibull)
        {
            json.WriteNull("weibull");
            return;
        }

        json.WriteStartObject("weibull");
        json.WriteNumber("shape", weibull.Shape);
        json.WriteNumber("scale", weibull.Scale);
        json.WriteNumber("median", weibull.Median);
        json.Number("medianLow", weibull.MedianLow);
        json.Number("medianHigh", weibull.MedianHigh);
        json.WriteEndObject();
    }

    private static void Setbacks(Utf8JsonWriter json, PooledSetbacks setbacks)
    {
        json.WriteStartObject("setbacks");
        json.List("byStableHours", setbacks.Bands, band =>
        {
            json.WriteString("stableHours", band.Label);
            json.Number("children", band.Children);
            json.Number("steps", band.Steps);
            json.Number("setbacks", band.Setbacks);
            json.Number("proportion", band.Share);
            json.Number("low", band.Low);
            json.Number("high", band.High);
            json.Number("unknown", band.Unknown);
            json.WriteString("method", band.Method);
        });
        json.WriteStartObject("trend");
        Test(json, setbacks.Trend);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Test(Utf8JsonWriter json, GroupTest test)
    {
        json.WriteString("test", test.What);
        json.Words("groups", test.Groups);
        json.Number("p", test.PValue);
        json.WriteString("method", test.Method);
    }

    private static void Completeness(Utf8JsonWriter json, PooledCompleteness completeness)
    {
        json.WriteStartObject("completeness");
        json.Number("days", completeness.Days);
        json.Number("daysWithRecords", completeness.DaysWithRecords);
        json.Number("medianShareOfDays", completeness.MedianShareOfDays);
        json.List("funnel", completeness.Funnel, point =>
        {
            json.WriteString("gap", point.Gap);
            json.WriteNumber("children", point.Children);
            json.WriteNumber("judgedShare", point.Completeness);
            json.WriteNumber("proportion", point.Share);
            json.WriteNumber("standardError", point.StandardError);
        });
        json.WriteEndObject();
    }
}
