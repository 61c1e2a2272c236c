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

    public override string ToString() => _json.ToString();

    /// <summary>Whether a record is this event: kind, time, and what names it (medicine, saturation, sign).</summary>
    public bool Is(CareEntry entry) => KindOf(entry) == Kind && TimeFits(entry) && Identity(entry);

    private bool TimeFits(CareEntry entry)
    {
        var (name, time) = Text("start") is null ? ("end", entry.Start is null ? entry.End : null) : ("start", entry.Start);
        return time is not null && At(Text(name)!, time);
    }

    private static bool At(string written, UncertainTime time) => written.Length == 10
        ? time.Stated.Date == LocalDatePattern.Iso.Parse(written).Value
        : time.Stated == LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(written).Value;

    private bool Identity(CareEntry entry) => entry switch
    {
        Dose dose => dose.Medicine == Text("medicine"),
        Check check => Range("spo2Range") is { } range ? check.SpO2 == range.Low && check.SpO2High == range.High
            : check.SpO2 == Number("spo2") && check.SpO2High is null && (check.SpO2 is not null || check.OxygenLitresPerMinute == Number("oxygen")),
        Sign sign => CareRecords.Import.Tables.SignWords.InJson(sign) == Text("what") && (Text("what") != "temperature" || sign.Number == Number("value")),
        _ => true,
    };

    /// <summary>The values that the conventions compare, with what they are; each false one is named.</summary>
    public IEnumerable<(string Name, bool Right)> Values(CareEntry entry)
    {
        yield return ("approximate", entry.When.IsApproximate == _json.GetProperty("approximate").GetBoolean());
        if (Text("start") is not null) yield return ("end", Text("end") is { } end ? entry.End is { } e && At(end, e) : entry.End is null);
        switch (entry)
        {
            case Session session:
                yield return ("areas", AreasFit(session));
                break;
            case Feed feed:
                yield return ("ml", feed.Millilitres == Number("ml"));
                yield return ("rate", feed.MillilitresPerHour == Number("rateMlPerHour"));
                yield return ("route", Route(feed.Route) == Text("route"));
                break;
            case Dose dose:
                yield return ("amount", Squeeze(dose.Amount) == Squeeze(Text("amount")));
                if (Text("medicineAsWritten") is { } written) yield return ("medicineAsWritten", string.Equals(dose.MedicineAsWritten, written, StringComparison.OrdinalIgnoreCase));
                break;
            case Check check:
                yield return ("pulse", _json.TryGetProperty("pulseRange", out _) || check.Pulse == Number("pulse"));
                yield return ("oxygen", check.OxygenLitresPerMinute == Number("oxygen"));
                yield return ("phase", string.Equals(check.Phase.ToString(), Text("phase"), StringComparison.OrdinalIgnoreCase));
                break;
            case Sign sign when Text("what") == "temperature":
                yield return ("asWritten", sign.Value == Text("asWritten"));
                break;
            case Sign sign when Text("what") == "breathingRate":
                yield return ("value", sign.Number == Number("value"));
                break;
        }
    }

    private bool AreasFit(Session session)
    {
        var expected = _json.GetProperty("areas").EnumerateArray().Select(a => string.Join('.', a.GetProperty("side").GetString(), a.GetProperty("area").GetString(), a.GetProperty("technique").GetString(),
            a.TryGetProperty("minutesRange", out var r) ? r[0].GetDouble() + "-" + r[1].GetDouble() : a.GetProperty("minutes").ValueKind == JsonValueKind.Null ? "null" : a.GetProperty("minutes").GetDouble().ToString(System.Globalization.CultureInfo.InvariantCulture))).Order().ToList();
        return expected.SequenceEqual(Areas(session));
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
