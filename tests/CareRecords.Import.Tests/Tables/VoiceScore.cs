using System.Globalization;
using System.Text.Json;

namespace CareRecords.Import.Tests.Tables;

/// <summary>How the reading of a table compares with the reading fixed for it before (Voices/README.md): compared through records.json, as an outsider sees it.</summary>
internal sealed class VoiceScore
{
    private readonly JsonElement _expected;
    private readonly List<JsonElement> _left;
    private readonly HashSet<string> _problemRows;

    private VoiceScore(JsonElement expected, JsonElement read)
    {
        _expected = expected;
        _left = [.. read.GetProperty("records").EnumerateArray()];
        Read = _left.Count;
        _problemRows = [.. read.GetProperty("problems").EnumerateArray().Select(p => Row(Source(p.GetProperty("source"))))];
    }

    public int Expected { get; private set; }
    public int Found { get; private set; }
    public int Read { get; }
    public int False { get; private set; }
    public int Values { get; private set; }
    public int ValuesRight { get; private set; }
    public int Swallowed { get; private set; }
    public List<string> Missing { get; } = [];

    public static VoiceScore Of(JsonElement expected, JsonElement read)
    {
        var score = new VoiceScore(expected, read);
        foreach (var record in List(expected, "expect")) score.Take(record);
        foreach (var record in score._left.Where(r => !score.IsAllowed(r)))
        {
            score.False++;
            score.Missing.Add("false: " + Short(record));
        }

        foreach (var due in List(expected, "asks").Concat(List(expected, "impossible")))
            if (!score._problemRows.Contains(Row(due.GetProperty("source").GetString()!)))
                score.Missing.Add("no problem at " + Short(due));
        return score;
    }

    public int ProblemsMissing => Missing.Count(m => m.StartsWith("no problem", StringComparison.Ordinal));

    private void Take(JsonElement wanted)
    {
        Expected++;
        var row = Row(wanted.GetProperty("source").GetString()!);
        var candidates = _left.Where(g => IsSame(wanted, g)).ToList();
        var here = candidates.Where(g => g.GetProperty("sources").EnumerateArray().Any(s => Row(Source(s)) == row)).ToList();
        if (here.Count == 0)
        {
            var asked = _problemRows.Contains(row);
            if (!asked) Swallowed++;
            Missing.Add((asked ? "asked: " : "swallowed: ") + Short(wanted));
            return;
        }

        var best = here.MaxBy(g => Right(wanted, g).Count(r => r.Right));
        _left.Remove(best);
        Found++;
        foreach (var (name, right) in Right(wanted, best))
        {
            Values++;
            if (right) ValuesRight++;
            else Missing.Add($"{name} of {Short(wanted)} is wrong in {Short(best)}");
        }
    }

    private bool IsAllowed(JsonElement record)
    {
        var kind = Text(record, "kind");
        if (kind == "sign" && Text(record, "what") != "temperature") return true;
        var rows = record.GetProperty("sources").EnumerateArray().Select(s => Row(Source(s))).ToHashSet();
        return List(_expected, "optional").Any(o => Text(o, "kind") == kind && rows.Contains(Row(Text(o, "source")!))
            && (kind != "session" || Accepted(o, "start").Any(s => TimeFits(s, Text(record, "start")))));
    }

    private static bool IsSame(JsonElement wanted, JsonElement got)
    {
        if (Text(wanted, "kind") != Text(got, "kind") || !Accepted(wanted, "start").Any(s => TimeFits(s, Text(got, "start")))) return false;
        if (Text(wanted, "start") is null && !TimeFits(Text(wanted, "end"), Text(got, "end"))) return false;
        return Text(wanted, "kind") switch
        {
            "dose" => Accepted(wanted, "medicine").Contains(Text(got, "medicine")),
            "check" => Near(Number(wanted, "spo2"), Number(got, "spo2")) && (Number(wanted, "spo2") is not null || Near(Number(wanted, "pulse"), Number(got, "pulse"))),
            "sign" => (Text(wanted, "what") == Text(got, "what") || Text(wanted, "what") == "breathing" && Text(got, "what") == "distress") && (Text(wanted, "what") != "temperature" || Near(InCelsius(wanted), Number(got, "value"))),
            _ => true,
        };
    }

    // Some writers keep Fahrenheit as their value, where the convention is Celsius with the words beside it.
    private static double? InCelsius(JsonElement temperature) => Number(temperature, "value") is not { } value || Text(temperature, "unit") != "F" ? Number(temperature, "value") : Math.Round((value - 32) / 1.8, 1, MidpointRounding.AwayFromZero);

    private static IEnumerable<(string Name, bool Right)> Right(JsonElement wanted, JsonElement got)
    {
        var approximate = got.GetProperty("approximate").GetBoolean();
        yield return ("approximate", wanted.GetProperty("approximate").GetBoolean() == approximate || List(wanted, "approximateAccept").Any(a => a.ValueKind is JsonValueKind.True or JsonValueKind.False && a.GetBoolean() == approximate));
        if (Text(wanted, "start") is not null) yield return ("end", Accepted(wanted, "end").Any(e => TimeFits(e, Text(got, "end"))));
        switch (Text(wanted, "kind"))
        {
            case "session":
                yield return ("areas", AreasFit(List(wanted, "areas"), got) || List(wanted, "areasAccept").Any(other => other.ValueKind == JsonValueKind.Array && AreasFit(other.EnumerateArray(), got)));
                break;
            case "feed":
                yield return ("ml", Numbers(wanted, "ml").Any(n => Near(n, Number(got, "ml"))));
                yield return ("route", Accepted(wanted, "route").Contains(Text(got, "route")));
                break;
            case "dose":
                yield return ("amount", Accepted(wanted, "amount").Any(a => Squeeze(a) == Squeeze(Text(got, "amount"))));
                break;
            case "check":
                yield return ("pulse", Numbers(wanted, "pulse").Any(n => Near(n, Number(got, "pulse"))));
                yield return ("oxygen", Numbers(wanted, "oxygen").Any(n => Near(n, Number(got, "oxygen"))));
                yield return ("phase", Accepted(wanted, "phase").Contains(Text(got, "phase")));
                break;
            case "sign" when Text(wanted, "what") == "temperature":
                yield return ("asWritten", Accepted(wanted, "asWritten").Any(a => Degrees(a) == Degrees(Text(got, "asWritten")) || Text(wanted, "unit") == "F" && Degrees(a + "f") == Degrees(Text(got, "asWritten"))));
                break;
        }
    }

    private static bool AreasFit(JsonElement.ArrayEnumerator wanted, JsonElement got)
    {
        var left = List(got, "areas").Where(a => Number(a, "minutes") != 0).ToList();
        foreach (var area in wanted.Where(a => Number(a, "minutes") != 0))
        {
            var at = left.FindIndex(a => Text(a, "side") == Text(area, "side") && Text(a, "area") == Text(area, "area")
                && Accepted(area, "technique").Contains(Text(a, "technique")) && Near(Number(area, "minutes"), Number(a, "minutes")));
            if (at < 0) return false;
            left.RemoveAt(at);
        }

        return left.Count == 0;
    }

    private static bool TimeFits(string? wanted, string? got) => wanted is null ? got is null : got is not null && got.StartsWith(wanted, StringComparison.Ordinal);

    // A twentieth: 1 oz is 29.57 ml, rounded to a tenth in the expected readings.
    private static bool Near(double? a, double? b) => a is null ? b is null : b is not null && Math.Abs(a.Value - b.Value) <= 0.051;

    private static string Source(JsonElement source) =>
        source.TryGetProperty("line", out var line) ? $"{Text(source, "file")}:{line.GetInt32().ToString(CultureInfo.InvariantCulture)}" : $"{Text(source, "file")}:{Text(source, "sheet")}!{Text(source, "cell")}";

    // A cell stands for its row.
    private static string Row(string source)
    {
        var mark = source.LastIndexOf('!');
        return mark < 0 ? source : source[..(mark + 1)] + source[(mark + 1)..].TrimStart("ABCDEFGHIJKLMNOPQRSTUVWXYZ".ToCharArray());
    }

    private static JsonElement.ArrayEnumerator List(JsonElement json, string name) => json.TryGetProperty(name, out var list) ? list.EnumerateArray() : default;

    private static IEnumerable<string?> Accepted(JsonElement json, string name) =>
        List(json, name + "Accept").Select(a => a.ValueKind == JsonValueKind.String ? a.GetString() : null).Prepend(Text(json, name));

    private static IEnumerable<double?> Numbers(JsonElement json, string name) =>
        List(json, name + "Accept").Select(a => a.ValueKind == JsonValueKind.Number ? a.GetDouble() : (double?)null).Prepend(Number(json, name));

    private static string? Text(JsonElement json, string name) => json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private static double? Number(JsonElement json, string name) => json.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number ? value.GetDouble() : null;

    // On one line and without what says nothing.
    private static string Short(JsonElement json) => json.ValueKind switch
    {
        JsonValueKind.Object => "{" + string.Join(' ', json.EnumerateObject().Where(p => p.Value.ValueKind is not (JsonValueKind.Null or JsonValueKind.False) && p.Name is not ("startEarliest" or "startLatest" or "file")).Select(p => $"{p.Name}={Short(p.Value)}")) + "}",
        JsonValueKind.Array => string.Join('+', json.EnumerateArray().Select(Short)),
        _ => json.ToString(),
    };

    // The convention writes "37,4" as "37.4 C": the sets are written both ways.
    private static string? Degrees(string? text)
    {
        var squeezed = Squeeze(text)?.Replace(',', '.').TrimEnd('c', '°');
        return squeezed is null ? null : squeezed.EndsWith('f') ? squeezed.Replace(".0f", "f", StringComparison.Ordinal) : squeezed.EndsWith(".0", StringComparison.Ordinal) ? squeezed[..^2] : squeezed;
    }

    private static string? Squeeze(string? text) => text?.Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant();
}
