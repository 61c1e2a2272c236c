using System.Text.Json;
using CareRecords.Records;
using NodaTime.Text;

namespace CareRecords.Import.Tests.Notes;

/// <summary>One expected record or question, as the conventions write it (Examples/CONVENTIONS.md).</summary>
internal sealed class ExpectedReading
{
    private readonly JsonElement _json;

    private ExpectedReading(JsonElement json) => _json = json;

    public string Kind => _json.GetProperty("kind").GetString()!;

    public bool IsAsk => Kind == "ask";

    public bool Optional => _json.TryGetProperty("optional", out var optional) && optional.GetBoolean();

    /// <summary>One-based line.</summary>
    public int Line { get; init; }

    public static List<ExpectedReading> Of(JsonElement list) =>
        [.. list.EnumerateArray().Select(e => new ExpectedReading(e) { Line = e.TryGetProperty("source", out var s) ? int.Parse(s.GetString()!.Split(':')[1], System.Globalization.CultureInfo.InvariantCulture) : 1 })];

    public override string ToString() => JsonSerializer.Serialize(_json);

    /// <summary>Whether a record is this event: kind, time, and what names it (medicine, saturation, sign).</summary>
    public bool Is(CareEntry entry) => KindOf(entry) == Kind && TimeFits(entry) && Identity(entry);

    private bool TimeFits(CareEntry entry)
    {
        var (name, time) = Text("start") is null ? ("end", entry.Start is null ? entry.End : null) : ("start", entry.Start);
        // A session that was just finished when its message was written may be told by either moment.
        if (name == "end" && entry.Start is { } begun && Allowed("start").Exists(a => a.ValueKind == JsonValueKind.String && At(a.GetString()!, begun))) return true;
        return time is not null && (At(Text(name)!, time) || Allowed(name).Exists(a => a.ValueKind == JsonValueKind.String && At(a.GetString()!, time)));
    }

    // What the writer of the set allows besides: "amountAccept": ["2 puffs"]. Null stands for "not said".
    private List<JsonElement> Allowed(string name) => _json.TryGetProperty(name + "Accept", out var list) && list.ValueKind == JsonValueKind.Array ? [.. list.EnumerateArray()] : [];

    private bool Is(string name, double? number) => number == Number(name) || Allowed(name).Exists(a => number == (a.ValueKind == JsonValueKind.Number ? a.GetDouble() : null));

    private bool Is(string name, string? text) => Same(text, Text(name)) || Allowed(name).Exists(a => Same(text, a.ValueKind == JsonValueKind.String ? a.GetString() : null));

    private static bool Same(string? one, string? other) => Squeeze(one) == Squeeze(other);

    private static bool At(string written, UncertainTime time) => written.Length == 10
        ? time.Stated.Date == LocalDatePattern.Iso.Parse(written).Value
        : time.Stated == LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(written).Value;

    private bool Identity(CareEntry entry) => entry switch
    {
        Dose dose => Is("medicine", dose.Medicine),
        Check check => Range("spo2Range") is { } range ? check.SpO2 == range.Low && check.SpO2High == range.High
            : Is("spo2", check.SpO2) && check.SpO2High is null && (check.SpO2 is not null || Is("oxygen", check.OxygenLitresPerMinute)),
        Sign sign => (Is("what", CareRecords.Import.Tables.SignWords.InJson(sign)) || Is("what", "breathing") && sign.Kind == SignKind.Distress) && (Text("what") != "temperature" || sign.Number == Number("value")),
        _ => true,
    };

    /// <summary>The values that the conventions compare, with what they are; each false one is named.</summary>
    public IEnumerable<(string Name, bool Right)> Values(CareEntry entry)
    {
        yield return ("approximate", entry.When.IsApproximate == _json.GetProperty("approximate").GetBoolean() || Allowed("approximate").Count > 0);
        if (Text("start") is not null) yield return ("end", (Text("end") is { } end ? entry.End is { } e && At(end, e) : entry.End is null) || Allowed("end").Exists(a => a.ValueKind == JsonValueKind.String ? entry.End is { } other && At(a.GetString()!, other) : entry.End is null));
        switch (entry)
        {
            case Session session:
                yield return ("areas", AreasFit(session));
                break;
            case Feed feed:
                yield return ("ml", Is("ml", feed.Millilitres));
                yield return ("rate", feed.MillilitresPerHour == Number("rateMlPerHour"));
                yield return ("route", Is("route", Route(feed.Route)));
                break;
            case Dose dose:
                yield return ("amount", Is("amount", dose.Amount));
                if (Text("medicineAsWritten") is { } written) yield return ("medicineAsWritten", string.Equals(dose.MedicineAsWritten, written, StringComparison.OrdinalIgnoreCase));
                break;
            case Check check:
                yield return ("pulse", _json.TryGetProperty("pulseRange", out _) || Is("pulse", check.Pulse));
                yield return ("oxygen", Is("oxygen", check.OxygenLitresPerMinute));
                yield return ("phase", Is("phase", check.Phase.ToString()));
                break;
            case Sign sign when Text("what") == "temperature":
                yield return ("asWritten", Is("asWritten", sign.Value) || sign.Value is { } value && Is("asWritten", value.Split(' ')[0])); // Some writers leave the unit out.
                break;
            case Sign sign when Text("what") == "breathingRate":
                yield return ("value", sign.Number == Number("value"));
                break;
        }
    }

    private bool AreasFit(Session session) => Areas(_json.GetProperty("areas")).SequenceEqual(Areas(session)) || Allowed("areas").Exists(a => a.ValueKind == JsonValueKind.Array && Areas(a).SequenceEqual(Areas(session)));

    private static List<string> Areas(JsonElement areas)
    {
        // One wholly unknown part says the same as none.
        if (areas.GetArrayLength() == 1 && areas[0].GetProperty("minutes").ValueKind == JsonValueKind.Null && new[] { "side", "area", "technique" }.All(n => areas[0].GetProperty(n).GetString() == "unknown")) return [];
        return [.. areas.EnumerateArray().Select(a => string.Join('.', a.GetProperty("side").GetString(), a.GetProperty("area").GetString(), a.GetProperty("technique").GetString(),
            a.TryGetProperty("minutesRange", out var r) ? r[0].GetDouble() + "-" + r[1].GetDouble() : a.GetProperty("minutes").ValueKind == JsonValueKind.Null ? "null" : a.GetProperty("minutes").GetDouble().ToString(System.Globalization.CultureInfo.InvariantCulture))).Order()];
    }

    public static List<string> Areas(Session session) => [.. session.Areas.Select(a => string.Join('.', Lower(a.Side), Lower(a.Area), Lower(a.Technique),
        a.MinutesHigh is { } high ? FormattableString.Invariant($"{a.Minutes}-{high}") : a.Minutes?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "null")).Order()];

    private static string Lower<T>(T value) where T : struct, Enum => value.ToString().ToLowerInvariant();

    private static string Route(FeedRoute route) => route switch { FeedRoute.Oral => "oral", FeedRoute.Unknown => "unknown", _ => "tube" };

    private static string? Squeeze(string? text) => text?.Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant();

    private string? Text(string name) => _json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private double? Number(string name) => _json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number ? value.GetDouble() : null;

    private (double Low, double High)? Range(string name) => _json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Array ? (value[0].GetDouble(), value[1].GetDouble()) : null;

    public static string KindOf(CareEntry entry) => entry switch { Session => "session", Feed => "feed", Dose => "dose", Check => "check", Sign => "sign", _ => "?" };

    /// <summary>A record in one line, for messages.</summary>
    public static string Show(CareEntry entry)
    {
        var rest = entry switch
        {
            Session s => "[" + string.Join(' ', Areas(s)) + "]",
            Feed f => $"ml={f.Millilitres} rate={f.MillilitresPerHour} {Route(f.Route)}",
            Dose d => $"{d.Medicine} '{d.MedicineAsWritten}' {d.Amount}",
            Check c => $"spo2={c.SpO2}{(c.SpO2High is { } h ? "-" + h : "")} hr={c.Pulse} o2={c.OxygenLitresPerMinute} {c.Phase}",
            Sign s => $"{s.What} '{s.Value}' {s.Number}",
            _ => "",
        };
        return FormattableString.Invariant($"{KindOf(entry)} {entry.Start?.Stated:uuuu-MM-ddTHH:mm}..{entry.End?.Stated:uuuu-MM-ddTHH:mm} {entry.When.Precision} {rest}");
    }
}
